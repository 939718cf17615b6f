import { createContext, type RefObject } from 'preact'
import { useContext, useId, useLayoutEffect, useRef, useState } from 'preact/hooks'

/** What stands beside a picture on a phone, and the widest screen that is laid out as one. */
const BESIDE_PX = 32
const WIDEST_PHONE_PX = 900
/** Width of a picture on the narrowest phone, used where nothing better is known. */
const LEAST_PHONE_PX = 328

/** The width a picture is going to have: one that is right is drawn once. */
const likelyPx = (): number =>
  innerWidth < WIDEST_PHONE_PX ? Math.max(LEAST_WIDTH_PX, innerWidth - BESIDE_PX) : LEAST_PHONE_PX

/** A width that is known beforehand, as on paper: pictures under it are drawn for it and nothing is measured. */
export const KnownWidth = createContext<number | undefined>(undefined)

/** Below this a picture would have no room for its words; its letters then grow no further. */
const LEAST_WIDTH_PX = 240
/** Size of a letter that nobody has changed. */
const USUAL_LETTER_PX = 16

/** How much larger than usual the user has set letters. */
function letterScale(): number {
  const letterPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  return Math.max(1, (letterPx || USUAL_LETTER_PX) / USUAL_LETTER_PX)
}

/**
 * The width a picture has, in whole pixels: pictures are drawn for it, so that their letters keep their size. With larger
 * letters it is drawn for less and shown as wide, so that its letters grow too. `isLarge`: drawn anew it would take a
 * frame to itself.
 */
export function useWidth<E extends Element>(
  isLarge = false,
): { readonly box: RefObject<E | null>; readonly widthPx: number } {
  const box = useRef<E>(null)
  const knownPx = useContext(KnownWidth)
  const [widthPx, setWidthPx] = useState(() => knownPx ?? likelyPx())
  useLayoutEffect(() => {
    const element = box.current
    if (!element || knownPx !== undefined) return
    const measure = () => {
      const width = Math.floor(element.getBoundingClientRect().width)
      if (width > 0) setWidthPx(Math.floor(Math.max(Math.min(LEAST_WIDTH_PX, width), width / letterScale())))
    }
    // an observer tells once the page is laid out anyway, before it is painted; asked for here, each picture would lay it
    // out, and a large one, drawn anew in that frame, would hold it up
    if (isLarge || typeof ResizeObserver === 'undefined') measure()
    if (typeof ResizeObserver === 'undefined') return
    const watcher = new ResizeObserver(measure)
    watcher.observe(element)
    return () => watcher.disconnect()
  }, [knownPx, isLarge])
  return { box, widthPx: knownPx ?? widthPx }
}

/** An id for a pattern or a clip of a picture; on a sheet another one than on the screen, which stays in the page. */
export function usePictureId(): string {
  const id = useId()
  return useContext(KnownWidth) === undefined ? id : `sheet-${id}`
}
