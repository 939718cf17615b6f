import { useContext, useMemo } from 'preact/hooks'
import type { LimitSide } from '../../calc/quantity/format.ts'
import type { SaidBound, StripRow } from '../../calc/types.ts'
import { decades, logScale, type Scale, type Span, textWidth } from './axis.ts'
import { COMING, usePartsDrawn } from './coming.tsx'
import { limitText, printed } from './figure.ts'
import { type FlagPlace, placeFlags } from './strip-labels.ts'
import { StripLegend, ZoneMark } from './strip-legend.tsx'
import { HATCHED, Patterns } from './strip-patterns.tsx'
import {
  hasZones,
  type Limit,
  limitsOf,
  type Piece,
  placeWord,
  rowPieces,
  type StripPicture,
  stateWord,
  stripSpan,
  type Zone,
} from './strip-shape.ts'
import { StripInWords } from './strip-words.tsx'
import { KnownWidth, usePictureId, useWidth } from './width.ts'

const LETTER_PX = 12
const FLAG_PX = 16
const TICK_PX = 54
/** From row to row: for a finger on a screen, closer on a sheet. */
const PITCH_PX = { screen: 32, sheet: 25 } as const
const BAND_PX = 20
const AXIS_PX = 24

const LIMIT_WORDS: Readonly<Record<Limit['is'], string>> = {
  least: 'at least',
  permitted: 'document',
  most: 'at most',
  chosen: '',
}

/** What follows its place, its axis and its first rows: the other rows, limits and words, the legend. */
const [ALL_ROWS, WORDS, PARTS] = [1, 2, 3] as const

type Frame = {
  readonly x: Scale
  readonly leftPx: number
  readonly rightPx: number
  readonly topPx: number
  readonly pitchPx: number
  readonly fillOf: (zone: Zone) => string | undefined
}

/**
 * The window: one row a topology, each in zones from end to end: too small for the need, allowed, with care above what a
 * document allows, excluded. The limits of the row that is spoken of run across the plot.
 */
export function Strip({
  picture,
  bounds = [],
  bare = false,
}: {
  readonly picture: StripPicture
  readonly bounds?: readonly SaidBound[]
  /** its words stand elsewhere */
  readonly bare?: boolean
}) {
  const { box, widthPx } = useWidth<HTMLElement>()
  const id = usePictureId()
  const span = stripSpan(picture)
  const labelPx = Math.max(28, ...picture.rows.map((row) => textWidth(row.label, 14)))
  const leftPx = Math.min(labelPx, widthPx * 0.3) + 8
  const rightPx = widthPx - 2
  const x = logScale(span, [leftPx, rightPx])
  // all their orders are tried: not anew for each part that is drawn
  const flags = useMemo(() => flagsOf(picture, x, [leftPx - 4, rightPx]), [picture, leftPx, rightPx])
  const topPx = (Math.max(-1, ...flags.map(({ place }) => place.tier)) + 1) * FLAG_PX + 8
  const pitchPx = useContext(KnownWidth) === undefined ? PITCH_PX.screen : PITCH_PX.sheet
  const frame: Frame = {
    x,
    leftPx,
    rightPx,
    topPx,
    pitchPx,
    fillOf: (zone) => HATCHED[zone] && `url(#${id}${HATCHED[zone]})`,
  }
  const trials = picture.marks.length > 0 ? 1 : 0
  const rowsEndPx = topPx + (picture.rows.length + trials) * pitchPx
  const drawn = usePartsDrawn(PARTS)
  const rows = drawn < ALL_ROWS ? picture.rows.slice(0, Math.ceil(picture.rows.length / 2)) : picture.rows
  return (
    <figure class="picture strip" ref={box}>
      <figcaption>{picture.title}</figcaption>
      <svg viewBox={`0 0 ${widthPx} ${rowsEndPx + AXIS_PX}`} role="img" aria-label={spoken(picture)}>
        <Patterns id={id} />
        <Axis span={span} frame={frame} atPx={rowsEndPx} />
        {rows.map((row, index) => (
          <Row key={row.topology} row={row} frame={frame} span={span} topPx={topPx + index * pitchPx} />
        ))}
        {trials > 0 && drawn >= ALL_ROWS && (
          <Trials picture={picture} frame={frame} topPx={topPx + picture.rows.length * pitchPx} />
        )}
        {drawn >= WORDS &&
          flags.map((flag) => <LimitLine key={flag.limit.is} flag={flag} frame={frame} endPx={rowsEndPx} />)}
        {drawn >= WORDS &&
          picture.rows.map((row, index) => (
            <RowWords key={row.topology} row={row} frame={frame} span={span} topPx={topPx + index * pitchPx} />
          ))}
      </svg>
      {drawn >= PARTS && <StripLegend picture={picture} fillOf={frame.fillOf} />}
      {drawn >= PARTS && !bare && <StripInWords picture={picture} bounds={bounds} />}
      {drawn < PARTS && COMING}
    </figure>
  )
}

/** The legend alone, of several strips that stand together. */
export function StripKey({ pictures }: { readonly pictures: readonly StripPicture[] }) {
  const id = usePictureId()
  const [first] = pictures
  if (first === undefined) return null
  const union: StripPicture = {
    ...first,
    rows: pictures.flatMap(({ rows }) => rows),
    marks: pictures.flatMap(({ marks }) => marks),
  }
  return (
    <div class="strip strip-key">
      <svg width="0" height="0" aria-hidden="true">
        <Patterns id={id} />
      </svg>
      <StripLegend picture={union} fillOf={(zone) => HATCHED[zone] && `url(#${id}${HATCHED[zone]})`} />
    </div>
  )
}

type PlacedLimit = { readonly limit: Limit; readonly word: string; readonly xPx: number; readonly place: FlagPlace }

function flagsOf(picture: StripPicture, x: Scale, edgesPx: readonly [number, number]): readonly PlacedLimit[] {
  const wanted = limitsOf(picture).map((limit) => {
    const word =
      `${LIMIT_WORDS[limit.is]} ${limitText(limit.atF, 'capacitance', limit.is === 'least' ? 'least' : 'most')}`.trim()
    const size = limit.is === 'chosen' ? 14 : LETTER_PX
    return { limit, word, xPx: x(limit.atF), widthPx: textWidth(word, size) }
  })
  const places = placeFlags(wanted, edgesPx)
  return wanted.flatMap(({ limit, word, xPx }, index) => {
    const place = places[index]
    return place ? [{ limit, word, xPx, place }] : []
  })
}

type LineGiven = { readonly flag: PlacedLimit; readonly frame: Frame; readonly endPx: number }

/** A limit, or the value asked about, through the whole height. */
function LimitLine({ flag: { limit, word, xPx, place }, frame, endPx }: LineGiven) {
  const baseY = frame.topPx - 10 - place.tier * FLAG_PX
  const nudgePx = place.anchor === 'start' ? 4 : place.anchor === 'end' ? -4 : 0
  const isChosen = limit.is === 'chosen'
  return (
    <g class={isChosen ? 'pin' : 'limits'}>
      <path class={isChosen ? undefined : `limit ${limit.is}`} d={`M${xPx} ${baseY - 9}V${endPx}`} />
      {isChosen && <circle cx={xPx} cy={frame.topPx - 4} r="4" />}
      <text
        class="halo"
        x={place.textPx + nudgePx}
        y={baseY}
        text-anchor={place.anchor}
        font-size={isChosen ? 14 : LETTER_PX}
      >
        {word}
      </text>
    </g>
  )
}

function Axis({ span, frame, atPx }: { readonly span: Span; readonly frame: Frame; readonly atPx: number }) {
  const ticks = decades(span, Math.floor((frame.rightPx - frame.leftPx) / TICK_PX))
  return (
    <g class="axis">
      <path class="rule" d={`M${frame.leftPx} ${atPx}H${frame.rightPx}`} />
      {ticks.map((tick) => {
        const xPx = frame.x(tick)
        const anchor = xPx > frame.rightPx - 22 ? 'end' : xPx < frame.leftPx + 18 ? 'start' : 'middle'
        return (
          <g key={tick}>
            <path class="rule" d={`M${xPx} ${atPx}v5`} />
            <text x={xPx} y={atPx + 19} text-anchor={anchor} font-size={LETTER_PX}>
              {printed(tick, 'capacitance')}
            </text>
          </g>
        )
      })}
    </g>
  )
}

function Row(given: { readonly row: StripRow; readonly frame: Frame; readonly span: Span; readonly topPx: number }) {
  const { row, frame, span, topPx } = given
  const bandPx = topPx + (frame.pitchPx - BAND_PX) / 2
  return (
    <g class={row.best ? 'row best' : 'row'}>
      <text class="row-label" x="0" y={bandPx + 15} font-size="14">
        {row.label}
      </text>
      {!hasZones(row) && <path class="rule dotted" d={`M${frame.leftPx} ${bandPx + BAND_PX / 2}H${frame.rightPx}`} />}
      {rowPieces(row, span).map((piece) => (
        <PieceMark key={`${piece.is}${piece.fromF}`} piece={piece} frame={frame} bandPx={bandPx} />
      ))}
      {row.proposedF !== undefined && (
        <circle class="proposed" cx={frame.x(row.proposedF)} cy={bandPx + BAND_PX / 2} r="4" />
      )}
    </g>
  )
}

function PieceMark(given: { readonly piece: Piece; readonly frame: Frame; readonly bandPx: number }) {
  const { piece, frame, bandPx } = given
  const fromPx = frame.x(piece.fromF)
  const toPx = Math.max(frame.x(piece.toF), fromPx + 3)
  const box = { xPx: fromPx, yPx: bandPx, widthPx: toPx - fromPx, heightPx: BAND_PX }
  return <ZoneMark zone={piece.is} fillOf={frame.fillOf} {...box} />
}

/** What a row says of itself, over zones and lines: that its bounds cross, or why it has none. */
function RowWords(given: {
  readonly row: StripRow
  readonly frame: Frame
  readonly span: Span
  readonly topPx: number
}) {
  const { row, frame, span, topPx } = given
  const edgesPx: readonly [number, number] = [frame.leftPx, frame.rightPx]
  const yPx = topPx + (frame.pitchPx - BAND_PX) / 2 + 14
  if (!hasZones(row)) {
    const fits = row.note !== '' && textWidth(row.note, LETTER_PX) < frame.rightPx - frame.leftPx - 12
    return (
      <text class="halo" x={frame.leftPx + 6} y={yPx} font-size={LETTER_PX}>
        {fits ? row.note : 'no bound'}
      </text>
    )
  }
  const shut = rowPieces(row, span).find((piece) => piece.is === 'shut')
  if (!shut) return null
  const word = 'no room'
  const place = placeWord({ fromPx: frame.x(shut.fromF), toPx: frame.x(shut.toF), edgesPx, word, sizePx: LETTER_PX })
  return (
    <text class="halo shut-word" x={place.xPx} y={yPx} text-anchor={place.anchor} font-size={LETTER_PX}>
      {word}
    </text>
  )
}

function Trials(given: { readonly picture: StripPicture; readonly frame: Frame; readonly topPx: number }) {
  const middlePx = given.topPx + given.frame.pitchPx / 2
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

function spoken(picture: StripPicture): string {
  const said = (word: string, valueF: number | undefined, side: LimitSide = 'most') =>
    valueF === undefined ? '' : `, ${word} ${limitText(valueF, 'capacitance', side)}`
  const rows = picture.rows.map(
    (row) =>
      `${row.label} ${stateWord(row)}${said('at least', row.leastF, 'least')}${said('at most', row.mostF)}` +
      said('above the document’s figure, needs approval, from', row.permittedF),
  )
  const pin = picture.chosenF === undefined ? '' : ` Chosen ${printed(picture.chosenF, 'capacitance')}.`
  return `${picture.title}. ${rows.join('; ')}.${pin}`
}
