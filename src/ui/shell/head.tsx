import { signal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Icon } from '../parts/icon.tsx'

export const isAboutOpen = signal(false)

/** Counts the screens shown: focus stays where the browser put it on the first one and moves to the heading later. */
let shownCount = 0

/** The head of a screen: its one h1, what it is about, and the way to About. */
export function Head(given: {
  readonly title: string
  readonly large?: boolean
  /** what the window is called, where the heading is a sentence */
  readonly windowTitle?: string
  readonly children?: ComponentChildren
}) {
  const heading = useRef<HTMLHeadingElement>(null)
  const { title, large = false, windowTitle = title, children } = given
  useEffect(() => {
    shownCount += 1
    if (shownCount < 2) return
    scrollTo(0, 0)
    heading.current?.focus({ preventScroll: true })
  }, [])
  useEffect(() => {
    document.title = `${windowTitle} · Stillpin`
  }, [windowTitle])
  return (
    <header class="head">
      <div class="head-words">
        <h1 ref={heading} tabIndex={-1} class={large ? 'large' : undefined}>
          {title}
        </h1>
        {children}
      </div>
      <button
        type="button"
        class="icon-button"
        onClick={() => {
          isAboutOpen.value = true
        }}
      >
        <Icon name="about" />
        <span class="unseen">About, theme and offline state</span>
      </button>
    </header>
  )
}
