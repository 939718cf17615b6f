/** Where things stand on the window strip. Pure, so that it can be tested without a screen. */
import type { Picture, StripRow } from '../../calc/types.ts'
import { type Span, textWidth } from './axis.ts'

export type StripPicture = Extract<Picture, { is: 'strip' }>
export type Piece = {
  readonly fromF: number
  readonly toF: number
  readonly is: 'open' | 'half' | 'hole' | 'shut' | 'taken'
}

/** The capacitance axis: whole decades, grown until every bound, mark and pin is on it. */
export function stripSpan(picture: StripPicture): Span {
  const values = [
    picture.chosenF,
    ...picture.marks.map((mark) => mark.atF),
    ...picture.rows.flatMap((row) => [row.leastF, row.mostF, row.takenToF, row.permittedF, row.proposedF]),
  ].filter((value): value is number => value !== undefined && value > 0 && Number.isFinite(value))
  const low = Math.max(1e-15, Math.min(picture.minF, ...values))
  const high = Math.min(1, Math.max(picture.maxF, ...values, low * 10))
  return { min: 10 ** Math.floor(Math.log10(low) + 1e-9), max: 10 ** Math.ceil(Math.log10(high) - 1e-9) }
}

/** What a row paints over its hatched ground, left to right. */
export function rowPieces(row: StripRow, span: Span): readonly Piece[] {
  if (row.state === 'none') return []
  const least = row.leastF
  const most = row.mostF
  const taken = takenPiece(row, span)
  if (row.state === 'harmed') return taken
  if (row.state === 'shut') {
    if (least === undefined || most === undefined) return taken
    // nothing may be left at all: a log axis begins above that
    const fromF = Math.max(span.min, Math.min(least, most))
    return [...taken, { fromF, toF: Math.max(fromF, least, most), is: 'shut' }]
  }
  const ground: Piece = {
    fromF: Math.max(span.min, least ?? span.min),
    toF: Math.max(span.min, Math.min(span.max, most ?? span.max)),
    is: row.state,
  }
  const holes = row.holes
    .map(
      ([fromF, toF]): Piece => ({ fromF: Math.max(fromF, ground.fromF), toF: Math.min(toF, ground.toF), is: 'hole' }),
    )
    .filter((hole) => hole.toF > hole.fromF)
  return [...taken, ground, ...holes]
}

/** What is taken: from what is left (perhaps nothing) to the ceiling itself. */
function takenPiece({ mostF, takenToF }: StripRow, span: Span): Piece[] {
  if (mostF === undefined || takenToF === undefined || takenToF <= mostF) return []
  return [{ fromF: Math.max(span.min, mostF), toF: takenToF, is: 'taken' }]
}

export type WordPlace = { readonly xPx: number; readonly anchor: 'start' | 'middle' | 'end' }

/** Puts a word inside its piece when it fits, else beside it, else on the other side: never over the edge. */
export function placeWord(piece: {
  readonly fromPx: number
  readonly toPx: number
  readonly edgesPx: readonly [number, number]
  readonly word: string
  readonly sizePx: number
}): WordPlace {
  const width = textWidth(piece.word, piece.sizePx)
  const gap = 6
  if (piece.toPx - piece.fromPx >= width + gap) return { xPx: (piece.fromPx + piece.toPx) / 2, anchor: 'middle' }
  if (piece.toPx + gap + width <= piece.edgesPx[1]) return { xPx: piece.toPx + gap, anchor: 'start' }
  return { xPx: Math.max(piece.edgesPx[0] + width, piece.fromPx - gap), anchor: 'end' }
}

const STATE_WORDS: Readonly<Record<StripRow['state'], string>> = {
  open: 'open',
  shut: 'shut',
  half: 'one side known',
  none: 'no bound on a capacitor',
  harmed: 'the inductor harms the signal',
}

export function stateWord(row: StripRow): string {
  return STATE_WORDS[row.state]
}

/** The row the words under the strip speak of: the best, or the first that has a bound. */
export function spokenRow(picture: StripPicture): StripRow | undefined {
  return picture.rows.find((row) => row.best) ?? picture.rows.find((row) => row.state !== 'none') ?? picture.rows[0]
}
