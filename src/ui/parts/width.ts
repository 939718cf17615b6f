import type { RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

/** Inner width of a phone card, used until the real width is known. */
const PHONE_WIDTH_PX = 296

/** The width a picture has, in whole pixels: pictures are drawn for it, so that their letters keep their size. */
export function useWidth<E extends Element>(): { readonly box: RefObject<E | null>; readonly widthPx: number } {
  const box = useRef<E>(null)
  const [widthPx, setWidthPx] = useState(PHONE_WIDTH_PX)
  useLayoutEffect(() => {
    const element = box.current
    if (!element) return
    const measure = () => {
      const width = Math.floor(element.getBoundingClientRect().width)
      if (width > 0) setWidthPx(width)
    }
    measure()
    if (typeof ResizeObserver === 'undefined') return
    const watcher = new ResizeObserver(measure)
    watcher.observe(element)
    return () => watcher.disconnect()
  }, [])
  return { box, widthPx }
}
