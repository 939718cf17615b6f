/** Which contacts of a table are the two legs of one line: named by a column, or by their functions. */
import { lineKindById } from '../../reference/line-kinds.ts'
import { wordKey } from './pasted.ts'
import type { Leg } from './types.ts'

/** A row as far as pairs go. */
export type PairRow = {
  readonly line: number
  readonly id: string
  readonly function: string
  /** what the column for pairs holds */
  readonly partner: string
  /** what the column for legs says of it */
  readonly leg: Leg | undefined
  /** undefined where nobody said, or where the contact carries no line */
  readonly kind: string | undefined
}

export type FoundPair = {
  readonly a: string
  readonly b: string
  readonly stem: string
  readonly by: 'column' | 'name'
}

export type FoundPairs = {
  readonly pairs: readonly FoundPair[]
  /** sentences about what the column for pairs says and cannot mean */
  readonly refusals: readonly string[]
}

/** How the two legs are told apart at the end of a name, the first leg before the second. */
const ENDS: readonly (readonly [string, string])[] = [
  ['+', '-'],
  ['+', '−'],
  ['+', '–'],
  ['(+)', '(-)'],
  ['pos', 'neg'],
  ['hi', 'lo'],
  ['high', 'low'],
  ['h', 'l'],
  ['a', 'b'],
  ['p', 'n'],
]

type Mark = { readonly stem: string; readonly end: string }

/** A name and its last mark: “Bus 1 A”, “CAN_H”, “TX+”. Letters stand apart from the name, signs need not. */
function legsOf(name: string): readonly Mark[] {
  const said = wordKey(name)
  return ENDS.flat().flatMap((end): Mark[] => {
    if (!said.endsWith(end)) return []
    const stem = said.slice(0, said.length - end.length)
    const isSign = !/[a-z]/.test(end)
    const isApart = isSign ? stem !== '' : /[\s_\-/.]$/.test(stem)
    return isApart ? [{ stem: stem.replace(/[\s_\-/.]+$/, ''), end }] : []
  })
}

/** Pairs by the column first; what it does not name, by functions that differ in their last mark alone, on kinds of two wires. */
export function pairsOf(rows: readonly PairRow[]): FoundPairs {
  const named = byColumn(rows)
  const taken = new Set(named.pairs.flatMap(({ a, b }) => [a, b]))
  const free = rows.filter((row) => !taken.has(row.id) && row.partner === '' && isOfTwoWires(row.kind))
  const byId = new Map(rows.map((row) => [row.id, row]))
  const found = byName(free).map((pair) =>
    asSaid(
      pair,
      [pair.a, pair.b].flatMap((id) => byId.get(id) ?? []),
    ),
  )
  return { pairs: [...named.pairs, ...found], refusals: named.refusals }
}

const isOfTwoWires = (kind: string | undefined) => kind !== undefined && lineKindById(kind)?.isPair === true

/** The first of them is leg a, unless their names say otherwise, or the column for legs before both. */
function inOrder(one: PairRow, other: PairRow): FoundPair {
  const found = byName([one, other])[0] ?? { a: one.id, b: other.id, stem: one.function }
  return { ...asSaid(found, [one, other]), by: 'column' }
}

type Legs = { readonly a: string; readonly b: string }

/** The legs as the column for legs has them; as they are where it says nothing. */
export function asSaid<T extends Legs>(legs: T, rows: readonly Pick<PairRow, 'id' | 'leg'>[]): T {
  const isTurned = rows.some(({ id, leg }) => leg !== undefined && leg !== (id === legs.a ? 'a' : 'b'))
  return isTurned ? { ...legs, a: legs.b, b: legs.a } : legs
}

function byColumn(rows: readonly PairRow[]): FoundPairs {
  const [pairs, refusals]: [FoundPair[], string[]] = [[], []]
  const byId = new Map(rows.map((row) => [row.id, row]))
  const labelled = new Map<string, PairRow[]>()
  const done = new Set<string>()
  for (const row of rows) {
    if (row.partner === '' || done.has(row.id)) continue
    const mate = byId.get(row.partner)
    if (mate === undefined) {
      const label = wordKey(row.partner)
      labelled.set(label, [...(labelled.get(label) ?? []), row])
    } else if (mate.id === row.id) refusals.push(refusal(row, 'a contact is no pair with itself.'))
    else if (done.has(mate.id)) refusals.push(refusal(row, `contact ${mate.id} is in a pair already.`))
    else if (mate.partner !== '' && mate.partner !== row.id)
      refusals.push(
        refusal(row, `contact ${mate.id} names “${mate.partner}” on line ${mate.line}; they must name each other.`),
      )
    else {
      pairs.push(inOrder(row, mate))
      done.add(row.id).add(mate.id)
    }
  }
  for (const group of labelled.values()) {
    const [one, other, third] = group
    if (one === undefined) continue
    if (other === undefined || third !== undefined)
      refusals.push(
        refusal(
          one,
          `“${one.partner}” is no contact of this table and stands on ${group.length} ${group.length === 1 ? 'row' : 'rows'}; a name for a pair stands on two.`,
        ),
      )
    else pairs.push(inOrder(one, other))
  }
  return { pairs, refusals }
}

const refusal = ({ line }: PairRow, why: string) => `Line ${line}, column “Pair with”: ${why}`

/** Where three contacts have the same name, or none of the other end, there is no pair. */
function byName(rows: readonly PairRow[]): readonly FoundPair[] {
  const pairs: FoundPair[] = []
  const taken = new Set<string>()
  for (const [first, second] of ENDS) {
    const at = (end: string) => {
      const found = new Map<string, PairRow | undefined>()
      for (const row of rows) {
        const leg = legsOf(row.function).find((one) => one.end === end)
        if (leg === undefined || taken.has(row.id)) continue
        const key = `${row.kind ?? ''} ${leg.stem}`
        found.set(key, found.has(key) ? undefined : row)
      }
      return found
    }
    const others = at(second)
    for (const [key, a] of at(first)) {
      const b = others.get(key)
      if (a === undefined || b === undefined || a.id === b.id) continue
      const stem = a.function
        .trim()
        .slice(0, -first.length)
        .replace(/[\s_\-/.]+$/, '')
      pairs.push({ a: a.id, b: b.id, stem, by: 'name' })
      taken.add(a.id).add(b.id)
    }
  }
  return pairs
}
