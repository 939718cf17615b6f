import type { RefObject } from 'preact'
import { useEffect } from 'preact/hooks'

/** After the last field is left, a tap under way still has to arrive where it was aimed before anything may move. */
const RELEASE_AFTER_MS = 400

/** What heights in whole pixels may fall short of a position told in parts of one. */
const ROUNDED_PX = 1

type Held = { readonly field: HTMLElement; readonly scroller: Element; yPx: number; scrolledPx: number }

/** What scrolls a field: the pane it stands in, else the page. */
function scrollerOf(field: HTMLElement): Element {
  for (let around = field.parentElement; around !== null; around = around.parentElement) {
    const { overflowY } = getComputedStyle(around)
    if (/auto|scroll/.test(overflowY) && around.scrollHeight > around.clientHeight) return around
  }
  return document.scrollingElement ?? document.documentElement
}

const topOf = (element: Element): number => element.getBoundingClientRect().top

/**
 * Keeps the page still while a field has the focus: panes may grow but not shrink, and what grows above the field is
 * scrolled away in the same frame, so that the field stays where the eye has it. Once no field has the focus the panes
 * take their own height again.
 */
export function useStandStill(panes: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const around = panes.current
    if (around === null || typeof ResizeObserver === 'undefined') return
    const kept = [...around.children].filter((pane): pane is HTMLElement => pane instanceof HTMLElement)
    let held: Held | undefined
    let release: ReturnType<typeof setTimeout> | undefined

    const keepHeights = (isFresh: boolean) => {
      for (const pane of kept) {
        if (isFresh) pane.style.minBlockSize = ''
        const heightPx = pane.getBoundingClientRect().height
        if (heightPx > Number.parseFloat(pane.style.minBlockSize || '0')) pane.style.minBlockSize = `${heightPx}px`
      }
    }
    const correct = () => {
      if (held === undefined) return
      // scrolled already, though the event that tells of it comes with the next frame
      follow()
      keepHeights(false)
      const driftPx = topOf(held.field) - held.yPx
      if (Math.abs(driftPx) < 0.5) return
      held.scroller.scrollBy({ top: driftPx, behavior: 'instant' })
      held.scrolledPx = held.scroller.scrollTop
    }
    const follow = () => {
      if (held === undefined) return
      // the user scrolls, or the keyboard that opens does; where the page became too short, neither
      const { scrollTop, scrollHeight, clientHeight } = held.scroller
      held.yPx -= scrollTop - Math.min(held.scrolledPx, scrollHeight - clientHeight + ROUNDED_PX)
      held.scrolledPx = scrollTop
    }
    const hold = (field: HTMLElement) => {
      clearTimeout(release)
      if (held === undefined) keepHeights(false)
      const scroller = scrollerOf(field)
      held = { field, scroller, yPx: topOf(field), scrolledPx: scroller.scrollTop }
    }
    const letGo = () => {
      held = undefined
      const seen = [...around.querySelectorAll('.field')].find((field) => topOf(field) >= 0)
      const beforePx = seen && topOf(seen)
      for (const pane of kept) pane.style.minBlockSize = ''
      if (seen instanceof HTMLElement && beforePx !== undefined) {
        scrollerOf(seen).scrollBy({ top: topOf(seen) - beforePx, behavior: 'instant' })
      }
    }
    const onFocus = ({ target }: FocusEvent) => {
      if (target instanceof HTMLElement && target.closest('form') !== null) hold(target)
    }
    const onBlur = () => {
      clearTimeout(release)
      release = setTimeout(() => {
        if (!around.querySelector('form')?.contains(document.activeElement)) letGo()
      }, RELEASE_AFTER_MS)
    }
    // a fold the user opens or closes moves what it has to
    const onToggle = () => {
      if (held === undefined) return
      keepHeights(true)
      hold(held.field)
    }
    const watcher = new ResizeObserver(correct)
    for (const pane of kept) watcher.observe(pane)
    // within a pane that keeps its height something may move all the same
    const changes = new MutationObserver(correct)
    changes.observe(around, {
      childList: true,
      characterData: true,
      subtree: true,
      attributeFilter: ['class', 'hidden'],
    })
    around.addEventListener('focusin', onFocus)
    around.addEventListener('focusout', onBlur)
    around.addEventListener('toggle', onToggle, true)
    addEventListener('scroll', follow, true)
    return () => {
      clearTimeout(release)
      watcher.disconnect()
      changes.disconnect()
      around.removeEventListener('focusin', onFocus)
      around.removeEventListener('focusout', onBlur)
      around.removeEventListener('toggle', onToggle, true)
      removeEventListener('scroll', follow, true)
    }
  }, [panes])
}
