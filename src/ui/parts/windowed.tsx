import type { ComponentChild } from 'preact'
import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks'
import { drawnPieces, PIECE, type Seen } from './windowed-shape.ts'

/** Up to this many rows are simply there. */
const FEW = 40
/** A row before any was drawn. */
const GUESS_PX = 64

type Given<T> = {
  readonly label: string
  readonly items: readonly T[]
  readonly keyOf: (item: T) => string
  /** `at`: its place in the list */
  readonly row: (item: T, at: number) => ComponentChild
  /** of every row */
  readonly rowClass?: string
}

/**
 * A list of any length, of which only the rows near the screen are in the page. The others' place is kept, as high as
 * they were when last seen, so that the page scrolls as if they were all there.
 */
export function Windowed<T>({ label, items, keyOf, row, rowClass = '' }: Given<T>) {
  const list = useRef<HTMLUListElement>(null)
  const heights = useRef(new Map<number, number>())
  const [seen, setSeen] = useState<Seen>({ topPx: 0, viewPx: innerHeight })
  const isWindowed = items.length > FEW
  const drawn = isWindowed
    ? drawnPieces(Math.ceil(items.length / PIECE), heights.current, GUESS_PX * PIECE, seen)
    : { from: 0, to: Math.ceil(items.length / PIECE), abovePx: 0, belowPx: 0 }
  useLayoutEffect(() => {
    if (!isWindowed) return
    let asked = 0
    const look = () => {
      asked = 0
      const topPx = list.current?.getBoundingClientRect().top
      if (topPx === undefined) return
      setSeen((now) => (now.topPx === topPx && now.viewPx === innerHeight ? now : { topPx, viewPx: innerHeight }))
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
  }, [isWindowed])
  // Rows of another list are of other heights.
  const first = items[0]
  const firstKey = first === undefined ? '' : keyOf(first)
  useLayoutEffect(() => () => heights.current.clear(), [firstKey, items.length])
  // After the page is laid out and painted, when it costs nothing to ask how high the rows are: the next drawing reads it.
  useEffect(() => {
    const rows = list.current?.children ?? []
    for (let piece = drawn.from; isWindowed && piece < drawn.to; piece++) {
      const at = (piece - drawn.from) * PIECE
      const [top, bottom] = [rows[at], rows[Math.min(at + PIECE, rows.length) - 1]]
      if (top === undefined || bottom === undefined) continue
      const px = bottom.getBoundingClientRect().bottom - top.getBoundingClientRect().top
      if (px > 0) heights.current.set(piece, px)
    }
  })
  const from = drawn.from * PIECE
  return (
    <ul
      ref={list}
      class="rows"
      aria-label={label}
      style={isWindowed ? { paddingBlock: `${drawn.abovePx}px ${drawn.belowPx}px` } : {}}
    >
      {items.slice(from, drawn.to * PIECE).map((item, i) => (
        <li key={keyOf(item)} class={rowClass} aria-setsize={items.length} aria-posinset={from + i + 1}>
          {row(item, from + i)}
        </li>
      ))}
    </ul>
  )
}
