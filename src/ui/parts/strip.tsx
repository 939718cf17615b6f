import { useId } from 'preact/hooks'
import type { SaidBound, StripRow } from '../../calc/types.ts'
import { decades, logScale, type Scale, type Span, shortSi, textWidth } from './axis.ts'
import { printed } from './figure.ts'
import { StripLegend } from './strip-legend.tsx'
import { type Piece, placeWord, rowPieces, type StripPicture, stateWord, stripSpan } from './strip-shape.ts'
import { StripTable, StripWords } from './strip-words.tsx'
import { useWidth } from './width.ts'

const LETTER_PX = 12
const TOP_PX = 30
const PITCH_PX = 32
const BAND_PX = 20
const AXIS_PX = 24

type Frame = { readonly x: Scale; readonly leftPx: number; readonly rightPx: number; readonly hatch: string }

/** The window: one row a topology, hatched where the bounds exclude, solid where they leave room, dashed where they cross. */
export function Strip({
  picture,
  bounds = [],
}: {
  readonly picture: StripPicture
  readonly bounds?: readonly SaidBound[]
}) {
  const { box, widthPx } = useWidth<HTMLElement>()
  const hatch = useId()
  const span = stripSpan(picture)
  const labelPx = Math.max(28, ...picture.rows.map((row) => textWidth(row.label, 14)))
  const leftPx = Math.min(labelPx, widthPx * 0.3) + 8
  const rightPx = widthPx - 2
  const frame: Frame = { x: logScale(span, [leftPx, rightPx]), leftPx, rightPx, hatch: `url(#${hatch})` }
  const trials = picture.marks.length > 0 ? 1 : 0
  const rowsEndPx = TOP_PX + (picture.rows.length + trials) * PITCH_PX
  return (
    <figure class="picture strip" ref={box}>
      <figcaption>{picture.title}</figcaption>
      <svg viewBox={`0 0 ${widthPx} ${rowsEndPx + AXIS_PX}`} role="img" aria-label={spoken(picture)}>
        <defs>
          <pattern id={hatch} width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path class="hatch" d="M0 0V5" />
          </pattern>
        </defs>
        <Axis span={span} frame={frame} atPx={rowsEndPx} />
        {picture.rows.map((row, index) => (
          <Row key={row.topology} row={row} frame={frame} span={span} topPx={TOP_PX + index * PITCH_PX} />
        ))}
        {trials > 0 && <Trials picture={picture} frame={frame} topPx={TOP_PX + picture.rows.length * PITCH_PX} />}
        {picture.chosenF !== undefined && <Pin atF={picture.chosenF} frame={frame} endPx={rowsEndPx} />}
      </svg>
      <StripLegend picture={picture} hatch={frame.hatch} />
      <StripWords picture={picture} bounds={bounds} />
      <StripTable picture={picture} />
    </figure>
  )
}

function Axis({ span, frame, atPx }: { readonly span: Span; readonly frame: Frame; readonly atPx: number }) {
  const ticks = decades(span, Math.floor((frame.rightPx - frame.leftPx) / 40))
  return (
    <g class="axis">
      <path class="rule" d={`M${frame.leftPx} ${atPx}H${frame.rightPx}`} />
      {ticks.map((tick) => {
        const xPx = frame.x(tick)
        const anchor = xPx > frame.rightPx - 14 ? 'end' : xPx < frame.leftPx + 10 ? 'start' : 'middle'
        return (
          <g key={tick}>
            <path class="rule" d={`M${xPx} ${atPx}v5`} />
            <text x={xPx} y={atPx + 19} text-anchor={anchor} font-size={LETTER_PX}>
              {shortSi(tick)}
              {tick === ticks.at(-1) ? 'F' : ''}
            </text>
          </g>
        )
      })}
    </g>
  )
}

function Row(given: { readonly row: StripRow; readonly frame: Frame; readonly span: Span; readonly topPx: number }) {
  const { row, frame, span, topPx } = given
  const bandPx = topPx + (PITCH_PX - BAND_PX) / 2
  const widthPx = frame.rightPx - frame.leftPx
  return (
    <g class={row.best ? 'row best' : 'row'}>
      <text class="row-label" x="0" y={bandPx + 15} font-size="14">
        {row.label}
      </text>
      {row.state === 'none' ? (
        <>
          <path class="rule dotted" d={`M${frame.leftPx} ${bandPx + BAND_PX / 2}h${widthPx}`} />
          <text class="halo" x={frame.leftPx + 6} y={bandPx + 14} font-size="12">
            no bound
          </text>
        </>
      ) : (
        <>
          <rect class="ground" x={frame.leftPx} y={bandPx} width={widthPx} height={BAND_PX} />
          <rect fill={frame.hatch} x={frame.leftPx} y={bandPx} width={widthPx} height={BAND_PX} />
        </>
      )}
      {rowPieces(row, span).map((piece) => (
        <PieceMark key={`${piece.is}${piece.fromF}`} piece={piece} frame={frame} bandPx={bandPx} row={row} />
      ))}
      {row.permittedF !== undefined && (
        <path class="permitted" d={`M${frame.x(row.permittedF)} ${bandPx - 4}v${BAND_PX + 8}`} />
      )}
      {row.proposedF !== undefined && (
        <circle class="proposed" cx={frame.x(row.proposedF)} cy={bandPx + BAND_PX / 2} r="4" />
      )}
    </g>
  )
}

function PieceMark(given: {
  readonly piece: Piece
  readonly frame: Frame
  readonly bandPx: number
  readonly row: StripRow
}) {
  const { piece, frame, bandPx, row } = given
  const fromPx = frame.x(piece.fromF)
  const toPx = Math.max(frame.x(piece.toF), fromPx + 3)
  if (piece.is === 'hole') {
    return (
      <>
        <rect class="hole" x={fromPx} y={bandPx} width={toPx - fromPx} height={BAND_PX} />
        <rect fill={frame.hatch} x={fromPx} y={bandPx} width={toPx - fromPx} height={BAND_PX} />
      </>
    )
  }
  const rect = <rect class={piece.is} x={fromPx} y={bandPx} width={toPx - fromPx} height={BAND_PX} />
  if (piece.is === 'half') {
    const wallPx = row.leastF === undefined ? toPx : fromPx
    return (
      <>
        {rect}
        <path class="wall" d={`M${wallPx} ${bandPx}v${BAND_PX}`} />
      </>
    )
  }
  if (piece.is === 'open' || piece.is === 'taken') return rect
  const edgesPx: readonly [number, number] = [frame.leftPx, frame.rightPx]
  const place = placeWord({ fromPx, toPx, edgesPx, word: 'shut', sizePx: LETTER_PX })
  return (
    <>
      {rect}
      <text class="halo shut-word" x={place.xPx} y={bandPx + 14} text-anchor={place.anchor} font-size={LETTER_PX}>
        shut
      </text>
    </>
  )
}

function Trials(given: { readonly picture: StripPicture; readonly frame: Frame; readonly topPx: number }) {
  const middlePx = given.topPx + PITCH_PX / 2
  return (
    <g class="row">
      <text class="row-label" x="0" y={middlePx + 5} font-size="14">
        tried
      </text>
      {given.picture.marks.map((mark) => {
        const xPx = given.frame.x(mark.atF)
        if (mark.kind === 'harmed') {
          return <path key={mark.label} class="harmed" d={`M${xPx - 6} ${middlePx - 6}l12 12m0-12l-12 12`} />
        }
        return <circle key={mark.label} class={mark.kind} cx={xPx} cy={middlePx} r="6" />
      })}
    </g>
  )
}

function Pin({ atF, frame, endPx }: { readonly atF: number; readonly frame: Frame; readonly endPx: number }) {
  const word = printed(atF, 'capacitance')
  const xPx = frame.x(atF)
  const halfPx = textWidth(word, 14) / 2
  const shiftPx = Math.max(0, halfPx - xPx) - Math.max(0, xPx + halfPx - frame.rightPx)
  return (
    <g class="pin" transform={`translate(${xPx} 0)`}>
      <path d={`M0 22V${endPx}`} />
      <circle cx="0" cy="24" r="5" />
      <text x={shiftPx} y="13" text-anchor="middle" font-size="14">
        {word}
      </text>
    </g>
  )
}

function spoken(picture: StripPicture): string {
  const rows = picture.rows.map((row) => {
    const least = row.leastF === undefined ? '' : `, at least ${printed(row.leastF, 'capacitance')}`
    const most = row.mostF === undefined ? '' : `, at most ${printed(row.mostF, 'capacitance')}`
    return `${row.label} ${stateWord(row)}${least}${most}`
  })
  const pin = picture.chosenF === undefined ? '' : ` Chosen ${printed(picture.chosenF, 'capacitance')}.`
  return `${picture.title}. ${rows.join('; ')}.${pin}`
}
