/** Where the rungs and their labels stand. Pure. */
import type { LadderRung, Picture } from '../../calc/types.ts'
import { logScale, type Scale } from './axis.ts'
import { limitText, printed, splitFigure } from './figure.ts'
import { spread, wrapLabel } from './spread.ts'

export type LadderPicture = Extract<Picture, { is: 'ladder' }>

export const LINE_PX = 16
const GAP_PX = 8
const TOP_PX = 34

export type PlacedRung = {
  readonly rung: LadderRung
  readonly lines: readonly string[]
  readonly volts: string
  readonly highPx: number
  readonly lowPx: number
  readonly labelPx: number
  readonly faulty: boolean
}

export type LadderLayout = { readonly placed: readonly PlacedRung[]; readonly heightPx: number; readonly y: Scale }

/** Volts of a rung, as short as can be: one figure, or two with one unit. What comes is brought up, as in the sentence. */
export function voltsText(rung: LadderRung): string {
  const say = (si: number) => (rung.side === 'comes' ? limitText(si, 'voltage', 'least') : printed(si, 'voltage'))
  const low = say(rung.minV)
  const high = say(rung.maxV)
  if (low === high) return high
  const [first, last] = [splitFigure(low), splitFigure(high)]
  return first.unit === last.unit ? `${first.number}–${high}` : `${low}–${high}`
}

/** Lays out both rails on one log axis of volts, high volts on top; labels of a rail never overlap. */
export function layOutLadder(picture: LadderPicture, lettersPerLine: number): LadderLayout {
  const volts = picture.rungs.flatMap((rung) => [rung.minV, rung.maxV]).filter((value) => value > 0)
  const low = Math.min(...volts, 1e6)
  const high = Math.max(...volts, low)
  const labels = picture.rungs.map((rung) => ({ rung, lines: wrapLabel(rung.label, lettersPerLine) }))
  const sizeOf = (lines: readonly string[]) => (lines.length + 1) * LINE_PX + GAP_PX
  const neededPx = (side: LadderRung['side']) =>
    labels.filter((label) => label.rung.side === side).reduce((sum, label) => sum + sizeOf(label.lines), 0)
  const heightPx = TOP_PX + Math.max(200, neededPx('comes'), neededPx('holds')) + GAP_PX
  // a share of air above and below, so that the outermost rungs are not on the edge
  const air = Math.max(1.15, (high / low) ** 0.06)
  const y = logScale({ min: low / air, max: high * air }, [heightPx - GAP_PX, TOP_PX])
  const centres = new Map<string, number>()
  for (const side of ['comes', 'holds'] as const) {
    const mine = labels.filter((label) => label.rung.side === side)
    const wanted = mine.map(({ rung, lines }) => ({ at: middlePx(rung, y), size: sizeOf(lines) }))
    const spaced = spread(wanted, TOP_PX, heightPx)
    for (const [index, { rung }] of mine.entries()) centres.set(rung.id, spaced[index] ?? 0)
  }
  const placed = labels.map(({ rung, lines }) => ({
    rung,
    lines,
    volts: voltsText(rung),
    highPx: y(Math.max(rung.maxV, low / air)),
    lowPx: y(Math.max(rung.minV, low / air)),
    labelPx: centres.get(rung.id) ?? 0,
    faulty: rung.exceeds !== undefined,
  }))
  return { placed, heightPx, y }
}

function middlePx(rung: LadderRung, y: Scale): number {
  return (y(rung.minV) + y(rung.maxV)) / 2
}
