import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'

/** Higher than a phone's screen, so that a page of many does not open them all at once. */
const GUESS_PX = 600

type Given = {
  readonly heading: string
  /** drawn wherever it stands */
  readonly isAtOnce: boolean
  readonly children: ComponentChildren
}

/**
 * Draws (and works out) what it holds once it comes within a screen of what is seen, and keeps it from then on. Until
 * then its heading stands there.
 */
export function WhenNear({ heading, isAtOnce, children }: Given) {
  const place = useRef<HTMLElement>(null)
  const [isNear, setNear] = useState(isAtOnce || typeof IntersectionObserver !== 'function')
  useEffect(() => {
    if (isNear || place.current === null) return
    const observer = new IntersectionObserver(
      (seen) => {
        if (seen.some(({ isIntersecting }) => isIntersecting)) setNear(true)
      },
      { rootMargin: '100% 0px' },
    )
    observer.observe(place.current)
    return () => observer.disconnect()
  }, [isNear])
  if (isNear) return <>{children}</>
  return (
    <section ref={place} aria-label={heading} style={{ minBlockSize: `${GUESS_PX}px` }}>
      <h2>{heading}</h2>
    </section>
  )
}
