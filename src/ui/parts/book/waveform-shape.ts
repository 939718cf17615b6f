/** Where everything of a waveform stands: curves, ticks, levels, named times, and no letters over others. Pure. */
import { formatQuantity } from '../../../calc/quantity/format.ts'
import type { Waveform } from '../../../guide/book/types.ts'
import { axisUnit, linearScale, linearTicks, type Scale, type Span, textWidth, tickText } from '../axis.ts'
import { spread, wrapLabel } from '../spread.ts'

export const SHEET_WIDTH = 320
export const LETTER_PX = 12
/** Height of a line of letters, and of a row of the picture. */
const LINE = 14
const ROW = 18
const AIR = 6
/** A figure is a little wider in some letters than counted: it may not begin before the sheet does. */
const EDGE = 4
/** A level is said beside the plot, at the end of a line that bends to it. */
const BEND = 12
const WIDEST_LABEL = 13
const LEAST_PLOT = 88

export type Letters = {
  readonly text: string
  readonly x: number
  readonly y: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly is: 'name' | 'tick' | 'level' | 'mark'
}
export type Path = {
  readonly d: string
  readonly look: 'frame' | 'grid' | 'zero' | 'level' | 'mark' | 'guide' | `wire-${number}`
}
export type WaveformShape = {
  readonly height: number
  readonly letters: readonly Letters[]
  readonly paths: readonly Path[]
}

const wide = (text: string): number => textWidth(text, LETTER_PX)
const at = (x: number, y: number): string => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`
const line = (...points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'}${at(x, y)}`).join('')

/** Names of the wires with a piece of their line, in rows from the left. */
function legendOf({ wires }: Waveform): {
  readonly letters: Letters[]
  readonly paths: Path[]
  readonly height: number
} {
  const SAMPLE = 22
  const letters: Letters[] = []
  const paths: Path[] = []
  let [x, row] = [0, 0]
  for (const [index, { label }] of wires.entries()) {
    const width = SAMPLE + AIR + wide(label)
    if (x > 0 && x + width > SHEET_WIDTH) [x, row] = [0, row + 1]
    const y = row * ROW + LINE
    paths.push({ d: line([x, y - 4], [x + SAMPLE, y - 4]), look: `wire-${index}` })
    letters.push({ text: label, x: x + SAMPLE + AIR, y, anchor: 'start', is: 'name' })
    x += width + 2 * AIR
  }
  return { letters, paths, height: (row + 1) * ROW + AIR }
}

type LevelLines = { readonly volt: number; readonly lines: readonly string[] }

/** Each level's name and volts, the highest first; a no-break space keeps number and unit together. */
const levelLines = ({ levels }: Waveform): readonly LevelLines[] =>
  levels
    .map(({ label, volt }) => ({ volt, lines: wrapLabel(`${label} ${formatQuantity(volt, 'voltage')}`, WIDEST_LABEL) }))
    .toSorted((a, b) => b.volt - a.volt)

const heightOf = ({ lines }: LevelLines): number => lines.length * LINE + 2

function voltSpan({ wires, levels }: Waveform): Span {
  const volts = [...wires.flatMap(({ points }) => points.map(([, volt]) => volt)), ...levels.map(({ volt }) => volt)]
  const [min, max] = [Math.min(...volts), Math.max(...volts)]
  const pad = (max - min || 1) * 0.06
  return { min: min - pad, max: max + pad }
}

/** As many ticks as stand beside each other without touching. */
function timeTicks(span: Span, widthPx: number): readonly number[] {
  for (const most of [5, 4, 3, 2]) {
    const ticks = linearTicks(span, most)
    const unit = axisUnit(span, 'time')
    const widest = Math.max(...ticks.map((tick) => wide(tickText(tick, unit))))
    if (ticks.length * (widest + AIR) <= widthPx) return ticks
  }
  return [span.min, span.max]
}

/** A bracket under the plot with its words right of it, left of it, or in a row of their own. */
function markRow(mark: NonNullable<Waveform['marks']>[number], toX: Scale, y: number) {
  const text = `${mark.label} ${formatQuantity(mark.toSec - mark.fromSec, 'time')}`
  const [from, to] = [toX(mark.fromSec), toX(mark.toSec)]
  const bracket: Path = {
    d: `${line([from, y - 9], [from, y + 1])}${line([from, y - 4], [to, y - 4])}${line([to, y - 9], [to, y + 1])}`,
    look: 'mark',
  }
  const fitsRight = to + AIR + wide(text) <= SHEET_WIDTH
  const fitsLeft = from - AIR - wide(text) >= 0
  const letters: Letters = fitsRight
    ? { text, x: to + AIR, y, anchor: 'start', is: 'mark' }
    : fitsLeft
      ? { text, x: from - AIR, y, anchor: 'end', is: 'mark' }
      : { text, x: 0, y: y + LINE, anchor: 'start', is: 'mark' }
  return { bracket, letters, height: fitsRight || fitsLeft ? ROW : ROW + LINE, ends: [from, to] as const }
}

/** The whole picture on a sheet 320 units wide. */
export function waveformShape(waveform: Waveform): WaveformShape {
  const legend = legendOf(waveform)
  const volts = voltSpan(waveform)
  const times: Span = { min: 0, max: waveform.spanSec }
  const [voltUnit, timeUnit] = [axisUnit(volts, 'voltage'), axisUnit(times, 'time')]
  const sides = levelLines(waveform)

  const voltTicks = linearTicks(volts, 4)
  const left = Math.max(...voltTicks.map((tick) => wide(tickText(tick, voltUnit))), wide(voltUnit.unit)) + AIR + EDGE
  const widestSide = Math.max(0, ...sides.flatMap(({ lines }) => lines.map(wide)))
  // half of the last tick reaches past the plot, and the unit stands behind it
  const unitOffset = wide('0000') / 2 + AIR
  const right = SHEET_WIDTH - Math.max(widestSide + BEND + 2, unitOffset + wide(timeUnit.unit))
  const top = legend.height + ROW
  const bottom =
    top +
    Math.max(
      LEAST_PLOT,
      sides.reduce((sum, side) => sum + heightOf(side), 0),
    )

  const toX = linearScale(times, [left, right])
  const toY = linearScale(volts, [bottom, top])
  const centres = spread(
    sides.map((side) => ({ at: toY(side.volt), size: heightOf(side) })),
    top,
    bottom,
  )

  const letters: Letters[] = [
    ...legend.letters,
    { text: voltUnit.unit, x: left - AIR, y: top - 9, anchor: 'end', is: 'tick' },
    ...voltTicks.map(
      (tick): Letters => ({
        text: tickText(tick, voltUnit),
        x: left - AIR,
        y: toY(tick) + 4,
        anchor: 'end',
        is: 'tick',
      }),
    ),
  ]
  const paths: Path[] = [
    ...legend.paths,
    ...voltTicks.map(
      (tick): Path => ({ d: line([left, toY(tick)], [right, toY(tick)]), look: tick === 0 ? 'zero' : 'grid' }),
    ),
    { d: line([left, top], [left, bottom], [right, bottom]), look: 'frame' },
  ]
  for (const [index, side] of sides.entries()) {
    const [y, centre] = [toY(side.volt), centres[index] ?? 0]
    paths.push({ d: line([left, y], [right, y], [right + BEND - 2, centre]), look: 'level' })
    for (const [row, text] of side.lines.entries())
      letters.push({
        text,
        x: right + BEND,
        y: centre - ((side.lines.length - 1) * LINE) / 2 + row * LINE + 4,
        anchor: 'start',
        is: 'level',
      })
  }

  const tickY = bottom + LINE
  for (const tick of timeTicks(times, right - left)) {
    paths.push({ d: line([toX(tick), bottom], [toX(tick), bottom + 3]), look: 'frame' })
    letters.push({ text: tickText(tick, timeUnit), x: toX(tick), y: tickY, anchor: 'middle', is: 'tick' })
  }
  letters.push({ text: timeUnit.unit, x: right + unitOffset, y: tickY, anchor: 'start', is: 'tick' })

  let y = tickY + ROW
  for (const mark of waveform.marks ?? []) {
    const { bracket, letters: words, height, ends } = markRow(mark, toX, y)
    paths.push(bracket, ...ends.map((x): Path => ({ d: line([x, top], [x, bottom]), look: 'guide' })))
    letters.push(words)
    y += height
  }

  const wires = waveform.wires.map(
    ({ points }, index): Path => ({
      d: line(...points.map(([sec, volt]) => [toX(sec), toY(volt)] as const)),
      look: `wire-${index}`,
    }),
  )
  return { height: Math.ceil(y - ROW + AIR), letters, paths: [...paths, ...wires.toReversed()] }
}
