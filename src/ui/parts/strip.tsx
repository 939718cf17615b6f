import { useId } from 'preact/hooks'
import type { Bound, StripRow } from '../../calc/types.ts'
import { decades, logScale, type Scale, type Span, shortSi, textWidth } from './axis.ts'
import { printed } from './figure.ts'
import { ScrollX } from './scroll-x.tsx'
import { type Piece, placeWord, rowPieces, type StripPicture, spokenRow, stateWord, stripSpan } from './strip-shape.ts'
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
  readonly bounds?: readonly Bound[]
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
      <Legend picture={picture} hatch={frame.hatch} />
      <Words picture={picture} bounds={bounds} />
      <AsTable picture={picture} />
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
  if (piece.is === 'open') return rect
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

function Legend({ picture, hatch }: { readonly picture: StripPicture; readonly hatch: string }) {
  const has = (state: StripRow['state']) => picture.rows.some((row) => row.state === state)
  const kinds = new Set(picture.marks.map((mark) => mark.kind))
  const entries: readonly (readonly [string, string, boolean])[] = [
    ['open', 'open', has('open')],
    ['half', 'only one side known', has('half')],
    ['hatched', 'excluded', picture.rows.some((row) => row.state !== 'none')],
    ['shut', 'shut: the bounds cross', has('shut')],
    ['hole', 'need lost again (resonance)', picture.rows.some((row) => row.holes.length > 0)],
    ['permitted', 'permitted by a document', picture.rows.some((row) => row.permittedF !== undefined)],
    ['proposed', 'proposed value', picture.rows.some((row) => row.proposedF !== undefined)],
    ['failed', 'tried, did not clear', kinds.has('failed')],
    ['cleared', 'tried, cleared', kinds.has('cleared')],
    ['harmed', 'tried, harmed the signal', kinds.has('harmed')],
  ]
  return (
    <ul class="legend">
      {entries
        .filter(([, , shown]) => shown)
        .map(([kind, word]) => (
          <li key={kind}>
            <svg viewBox="0 0 20 14" width="20" height="14" aria-hidden="true">
              <Sample kind={kind} hatch={hatch} />
            </svg>
            {word}
          </li>
        ))}
    </ul>
  )
}

function Sample({ kind, hatch }: { readonly kind: string; readonly hatch: string }) {
  if (kind === 'permitted') return <path class="permitted" d="M10 0v14" />
  if (kind === 'proposed') return <circle class="proposed" cx="10" cy="7" r="4" />
  if (kind === 'failed' || kind === 'cleared') return <circle class={kind} cx="10" cy="7" r="5" />
  if (kind === 'harmed') return <path class="harmed" d="M5 2l10 10m0-10L5 12" />
  if (kind === 'hatched' || kind === 'hole') {
    return (
      <>
        <rect class={kind === 'hole' ? 'hole' : 'ground'} x="1" y="1" width="18" height="12" />
        <rect fill={hatch} x="1" y="1" width="18" height="12" />
      </>
    )
  }
  return <rect class={kind} x="1" y="1" width="18" height="12" />
}

/** The bound of one side that binds: the largest least, or the smallest most that physics sets. */
export function binding(bounds: readonly Bound[], row: StripRow, side: Bound['side']): Bound | undefined {
  const fitting = bounds.filter(
    (bound) =>
      bound.side === side &&
      bound.nature !== 'permitted' &&
      (bound.topology === row.topology || bound.topology === 'any'),
  )
  const sign = side === 'least' ? -1 : 1
  return [...fitting].sort((a, b) => sign * (a.markedF - b.markedF))[0]
}

function Words({ picture, bounds }: { readonly picture: StripPicture; readonly bounds: readonly Bound[] }) {
  const row = spokenRow(picture)
  if (!row) return null
  const least = binding(bounds, row, 'least')
  const most = binding(bounds, row, 'most')
  return (
    <div class="strip-words">
      <p>
        <strong>{row.label}</strong>: {row.note || stateWord(row)}
      </p>
      {row.leastF !== undefined && (
        <p>
          <strong>{printed(row.leastF, 'capacitance')} at least</strong>
          {least ? `: ${least.why}` : ''}
        </p>
      )}
      {row.mostF !== undefined && (
        <p>
          <strong>{printed(row.mostF, 'capacitance')} at most</strong>
          {most ? `: ${most.why}` : ''}
        </p>
      )}
      {row.permittedF !== undefined && (
        <p>
          <strong>{printed(row.permittedF, 'capacitance')} permitted</strong>
          {`: ${bounds.find((bound) => bound.nature === 'permitted')?.why ?? 'a document’s figure; above it is marginal'}`}
        </p>
      )}
    </div>
  )
}

function AsTable({ picture }: { readonly picture: StripPicture }) {
  const shown = (value: number | undefined) => (value === undefined ? '–' : printed(value, 'capacitance'))
  return (
    <details class="fold as-table">
      <summary>The strip as a table</summary>
      <ScrollX label={`${picture.title}, as a table`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Topology</th>
              <th scope="col">State</th>
              <th scope="col">At least</th>
              <th scope="col">At most</th>
              <th scope="col">Proposed</th>
            </tr>
          </thead>
          <tbody>
            {picture.rows.map((row) => (
              <tr key={row.topology}>
                <th scope="row">{row.label}</th>
                <td>{stateWord(row)}</td>
                <td>{shown(row.leastF)}</td>
                <td>{shown(row.mostF)}</td>
                <td>{shown(row.proposedF)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </details>
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
