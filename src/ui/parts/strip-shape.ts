/** Where things stand on the window strip. Pure, so that it can be tested without a screen. */
import type { Picture, StripRow } from '../../calc/types.ts'
import { type Span, textWidth } from './axis.ts'

export type StripPicture = Extract<Picture, { is: 'strip' }>

/**
 * What a stretch of capacitance means: too `small` for the need, `allowed`, with `care` (above what a document allows,
 * below what the signal stands, or met by a resonance or without a proof), `excluded`, `half` (not too small, but nobody
 * knows what the signal stands), `hole` (the need is lost again), `shut` (excluded and too small at once), `taken` by what is on the line already.
 */
export type Zone = 'small' | 'allowed' | 'care' | 'excluded' | 'half' | 'hole' | 'shut' | 'taken'
export type Piece = { readonly fromF: number; readonly toF: number; readonly is: Zone }

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

/** Whether anything is known that divides the row into zones. */
export const hasZones = (row: StripRow): boolean => row.state !== 'none' || row.permittedF !== undefined

/**
 * A row from end to end in zones, left to right; what is taken and where the need is lost lie over them. A document's
 * figure never lies inside what is excluded unless the signal itself stands less.
 */
export function rowPieces(row: StripRow, span: Span): readonly Piece[] {
  if (!hasZones(row)) return []
  const { min, max } = span
  const most = row.mostF === undefined ? max : clamp(row.mostF, span)
  const least = row.leastF === undefined ? min : clamp(row.leastF, span)
  const all: readonly Piece[] = [
    ...zonesOf(row, { least, most, span }),
    ...takenPiece(row, span),
    ...holesOf(row, span),
  ]
  return all.filter(({ fromF, toF }) => toF > fromF)
}

const clamp = (valueF: number, { min, max }: Span): number => Math.min(max, Math.max(min, valueF))

type Ends = { readonly least: number; readonly most: number; readonly span: Span }

function zonesOf(row: StripRow, { least, most, span }: Ends): readonly Piece[] {
  const { min, max } = span
  if (row.state === 'harmed') return [{ fromF: min, toF: max, is: 'excluded' }]
  if (row.state === 'shut') {
    const low = Math.min(least, most)
    const high = Math.max(least, most)
    return [
      { fromF: min, toF: low, is: 'small' },
      { fromF: low, toF: high, is: 'shut' },
      { fromF: high, toF: max, is: 'excluded' },
    ]
  }
  const care = row.permittedF === undefined ? most : Math.min(most, Math.max(least, clamp(row.permittedF, span)))
  const isCeilingKnown = row.mostF !== undefined
  const allowed = row.isWithCare ? 'care' : 'allowed'
  return [
    { fromF: min, toF: least, is: 'small' },
    { fromF: least, toF: care, is: isCeilingKnown || row.permittedF !== undefined ? allowed : 'half' },
    { fromF: care, toF: most, is: isCeilingKnown ? 'care' : 'half' },
    { fromF: most, toF: max, is: 'excluded' },
  ]
}

function holesOf(row: StripRow, span: Span): Piece[] {
  if (row.state !== 'open' && row.state !== 'half') return []
  const from = row.leastF ?? span.min
  const to = Math.min(span.max, row.mostF ?? span.max)
  return row.holes.map(([fromF, toF]) => ({ fromF: Math.max(fromF, from), toF: Math.min(toF, to), is: 'hole' }))
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
  open: 'leaves room',
  shut: 'leaves no room, the bounds cross',
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

export type Limit = { readonly is: 'least' | 'permitted' | 'most' | 'chosen'; readonly atF: number }

/** The limits that run across the whole plot: those of the row the words speak of, and the value asked about. */
export function limitsOf(picture: StripPicture): readonly Limit[] {
  const row = spokenRow(picture)
  const limits: readonly { readonly is: Limit['is']; readonly atF: number | undefined }[] = [
    { is: 'least', atF: row?.leastF },
    { is: 'permitted', atF: row?.permittedF },
    { is: 'most', atF: row?.mostF },
    { is: 'chosen', atF: picture.chosenF },
  ]
  return limits.filter((limit): limit is Limit => limit.atF !== undefined && Number.isFinite(limit.atF))
}
