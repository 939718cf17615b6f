import type { ComponentChild } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

/** Up to this many rows are simply there. */
const FEW = 40
/** Rows drawn before and behind what is seen: enough for a flick of the thumb between two frames. */
const AHEAD = 12

type Range = { readonly from: number; readonly to: number }

type Given<T> = {
  readonly label: string
  readonly items: readonly T[]
  readonly keyOf: (item: T) => string
  readonly row: (item: T) => ComponentChild
}

/**
 * A list of rows of one height (`.windowed > li` gives it) of which only those near the screen are in the page. The
 * others' place is kept, so that the page scrolls as if they were all there.
 */
export function Windowed<T>({ label, items, keyOf, row }: Given<T>) {
  const list = useRef<HTMLUListElement>(null)
  const [range, setRange] = useState<Range>({ from: 0, to: FEW })
  const isWindowed = items.length > FEW
  useLayoutEffect(() => {
    if (!isWindowed) return
    let asked = 0
    const look = () => {
      asked = 0
      const next = rangeOf(list.current, items.length)
      setRange((now) => (next.from === now.from && next.to === now.to ? now : next))
    }
    const later = () => {
      if (asked === 0) asked = requestAnimationFrame(look)
    }
    look()
    // scrolls do not bubble; the list may stand in a pane of its own
    document.addEventListener('scroll', later, { capture: true, passive: true })
    addEventListener('resize', later)
    return () => {
      cancelAnimationFrame(asked)
      document.removeEventListener('scroll', later, { capture: true })
      removeEventListener('resize', later)
    }
  }, [isWindowed, items.length])
  const { from, to } = isWindowed ? range : { from: 0, to: items.length }
  return (
    <ul
      ref={list}
      class="rows windowed"
      aria-label={label}
      style={{ '--rows-before': from, '--rows-behind': Math.max(0, items.length - to) }}
    >
      {items.slice(from, to).map((item, i) => (
        <li key={keyOf(item)} aria-setsize={items.length} aria-posinset={from + i + 1}>
          {row(item)}
        </li>
      ))}
    </ul>
  )
}

const heightOf = (list: HTMLElement): number => list.querySelector('li')?.getBoundingClientRect().height || 64

function rangeOf(list: HTMLElement | null, count: number): Range {
  if (list === null) return { from: 0, to: FEW }
  const rowPx = heightOf(list)
  const top = list.getBoundingClientRect().top
  const first = Math.floor(-top / rowPx) - AHEAD
  const last = Math.ceil((innerHeight - top) / rowPx) + AHEAD
  const to = Math.min(count, Math.max(last, FEW))
  return { from: Math.max(0, Math.min(first, to - FEW)), to }
}
