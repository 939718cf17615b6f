import { useId } from 'preact/hooks'
import type { DrawingId } from '../../guide/drawing-ids.ts'
import type { BookDrawingId } from '../../guide/drawings/book-ids.ts'
import { drawingById } from '../../guide/drawings/drawings.ts'
import { type Mark, SHEET_WIDTH } from '../../guide/drawings/types.ts'
import { Text } from './book/terms.tsx'

/**
 * A drawing of a card or note: themed by the variables of the page, read out in words, printed as it is. `under`: the
 * title it stands under, which is not said twice.
 */
export function DrawingView({ id, under }: { readonly id: DrawingId | BookDrawingId; readonly under?: string }) {
  const name = useId()
  const drawing = drawingById(id)
  if (drawing === undefined) return null
  const { title, said, height, marks } = drawing
  return (
    <figure class="picture drawing">
      {title !== under && (
        <figcaption>
          <Text of={title} />
        </figcaption>
      )}
      <svg viewBox={`0 0 ${SHEET_WIDTH} ${height}`} role="img" aria-labelledby={`${name}t ${name}d`}>
        <title id={`${name}t`}>{title}</title>
        <desc id={`${name}d`}>{said}</desc>
        <defs>
          <marker id={`${name}h`} viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" orient="auto">
            <path class="head" d="M0 0 8 4 0 8Z" />
          </marker>
        </defs>
        {marks.map((mark) => (
          <MarkView key={JSON.stringify(mark)} mark={mark} head={`url(#${name}h)`} />
        ))}
      </svg>
    </figure>
  )
}

/** Half circles of 10 units, as a coil is drawn. */
const COIL = 'a5 6 0 0 1 10 0a5 6 0 0 1 10 0a5 6 0 0 1 10 0a5 6 0 0 1 10 0'
/** Down 40 units: two plates, a zigzag, and a diode whose bar has its ends bent. */
const CAPACITOR = 'v16m-10 0h20m-20 8h20m-10 0v16'
const RESISTOR = 'v6l6 3-12 5 12 5-12 5 12 5-6 3v8'
const SUPPRESSOR = 'v12m-12-4 3 4h18l3 4m-12-4-8 16h16zm0 16v12'

function MarkView({ mark, head }: { readonly mark: Mark; readonly head: string }) {
  if ('line' in mark) {
    const { line, look = 'wire' } = mark
    return <polyline class={`m-${look}`} points={line.join(' ')} {...(look === 'path' && { 'marker-end': head })} />
  }
  if ('box' in mark) {
    const [x, y, width, height] = mark.box
    return <rect class={`m-box ${mark.look ?? ''}`} x={x} y={y} width={width} height={height} rx={2} />
  }
  if ('text' in mark) {
    const [x, y] = mark.at
    return (
      <text class={mark.bold ? 'm-bold' : ''} x={x} y={y} text-anchor={mark.anchor ?? 'start'}>
        {mark.text}
      </text>
    )
  }
  if ('ring' in mark) {
    const [x, y, rx, ry] = mark.ring
    return <ellipse class="m-ring" cx={x} cy={y} rx={rx} ry={ry} />
  }
  if ('dot' in mark) return <circle class="m-dot" cx={mark.dot[0]} cy={mark.dot[1]} r={3} />
  const [from, shape] =
    'coil' in mark
      ? [mark.coil, COIL]
      : 'capacitor' in mark
        ? [mark.capacitor, CAPACITOR]
        : 'resistor' in mark
          ? [mark.resistor, RESISTOR]
          : [mark.suppressor, SUPPRESSOR]
  return <path class="m-part" d={`M${from.join(' ')}${shape}`} />
}
