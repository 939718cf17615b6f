/**
 * What a pasted table would change in a connector, row by row, before anything is changed: all of it is carried out, or
 * nothing. An empty cell says nothing; contacts the table does not name stay as they are.
 */

import { saySame } from '../line/fields.ts'
import type { Line } from '../types.ts'
import { MOST_CONTACTS } from './contact-ids.ts'
import { type Change, changesOf } from './paste-changes.ts'
import { asSaid, type FoundPair, pairsOf } from './paste-pairs.ts'
import { type ReadRow, type RowsGiven, readRows } from './paste-rows.ts'
import { COLUMN_LABEL } from './pasted-columns.ts'
import { FACT_COLUMNS, inputOfColumn } from './pasted-facts.ts'
import { lineWithCells } from './pasted-line.ts'
import type { Connector, Contact, Leg } from './types.ts'

export type PlannedRow = {
  readonly line: number
  readonly id: string
  readonly state: 'new' | 'changed' | 'same'
  readonly changes: readonly Change[]
  /** the leg of a pair this table makes it, and the other contact */
  readonly pair?: { readonly leg: 'a' | 'b'; readonly mate: string; readonly by: FoundPair['by'] }
}

export type PastePlan =
  | {
      readonly ok: true
      readonly rows: readonly PlannedRow[]
      /** every contact of the connector afterwards */
      readonly contacts: readonly Contact[]
      /** lines that are new or changed */
      readonly lines: readonly Line[]
      /** contacts of the connector the table does not name */
      readonly untouched: readonly string[]
    }
  | { readonly ok: false; readonly refusals: readonly string[] }

export type PasteGiven = Omit<RowsGiven, 'contacts'> & {
  readonly connector: Connector
  /** the lines of the complaint */
  readonly lines: readonly Line[]
  /** whether pairs are also found by the names of their functions */
  readonly pairsByName: boolean
  readonly newLine: (name: string) => Line
}

/** One line of the connector: the row that carries it, or the two. */
type Circuit = { readonly rows: readonly [ReadRow, ...ReadRow[]]; readonly pair?: FoundPair }

export function planPaste(given: PasteGiven): PastePlan {
  const { connector } = given
  const read = readRows({ ...given, contacts: connector.contacts })
  const refusals = [...read.refusals]
  const { circuits, refusals: ofPairs } = circuitsOf(read.rows, given)
  refusals.push(...ofPairs)
  const named = new Set(read.rows.map(({ id }) => id))
  const untouched = connector.contacts.filter(({ id }) => !named.has(id))
  const count = named.size + untouched.length
  if (count > MOST_CONTACTS)
    refusals.push(`The connector would have ${count} contacts with this table; ${MOST_CONTACTS} are the most.`)
  if (refusals.length > 0) return { ok: false, refusals }
  const planned = new Map<string, { readonly row: PlannedRow; readonly contact: Contact }>()
  const now = new Map(given.lines.map((line) => [line.id, line]))
  const changed = new Set<string>()
  for (const circuit of circuits) {
    const { line, before } = carriedBy(circuit, given, now)
    if (line !== undefined && line !== before) {
      now.set(line.id, line)
      changed.add(line.id)
    }
    for (const row of circuit.rows) planned.set(row.id, plannedRow(row, circuit, { line, before }))
  }
  const known = new Set(connector.contacts.map(({ id }) => id))
  const added = read.rows.filter(({ id }) => !known.has(id)).flatMap(({ id }) => planned.get(id)?.contact ?? [])
  return {
    ok: true,
    rows: read.rows.flatMap(({ id }) => planned.get(id)?.row ?? []),
    contacts: [...connector.contacts.map((contact) => planned.get(contact.id)?.contact ?? contact), ...added],
    lines: [...changed].flatMap((id) => now.get(id) ?? []),
    untouched: untouched.map(({ id }) => id),
  }
}

type Circuits = { readonly circuits: readonly Circuit[]; readonly refusals: readonly string[] }

function circuitsOf(rows: readonly ReadRow[], { lines, pairsByName, connector: { contacts } }: PasteGiven): Circuits {
  const found = pairsOf(rows.map((row) => pairRow(row, lines)))
  const byId = new Map(rows.map((row) => [row.id, row]))
  const refusals = [...found.refusals]
  const pairs = new Map<string, Circuit>()
  for (const pair of found.pairs) {
    const [a, b] = [byId.get(pair.a), byId.get(pair.b)]
    if (a === undefined || b === undefined || (pair.by === 'name' && !pairsByName)) continue
    const against = disagreement(a, b)
    if (against === undefined) pairs.set(a.id, { rows: [a, b], pair }).set(b.id, { rows: [a, b], pair })
    else if (pair.by === 'column') refusals.push(against)
  }
  for (const [one, other] of legsThatAre(rows.filter(({ id }) => !pairs.has(id)))) {
    const against = disagreement(one, other)
    if (against !== undefined) refusals.push(against)
    const turned = turnedLegs(one, other)
    const both: Circuit = { rows: [one, other], ...(turned && { pair: turned }) }
    pairs.set(one.id, both).set(other.id, both)
  }
  for (const row of rows) if (!pairs.has(row.id)) refusals.push(...lonelyLeg(row, contacts))
  const circuits = rows.flatMap((row): Circuit[] => {
    const both = pairs.get(row.id)
    if (both === undefined) return [{ rows: [row] }]
    return both.rows[0] === row ? [both] : []
  })
  return { circuits, refusals }
}

/** Rows of two contacts that carry one line already. */
function legsThatAre(rows: readonly ReadRow[]): readonly (readonly [ReadRow, ReadRow])[] {
  const first = new Map<string, ReadRow>()
  return rows.flatMap((row) => {
    const lineId = row.type === 'line' ? row.old?.lineId : undefined
    if (lineId === undefined) return []
    const before = first.get(lineId)
    if (before === undefined) first.set(lineId, row)
    return before === undefined ? [] : [[before, row] as const]
  })
}

/** The pair that two contacts are already, where the table turns it round. */
function turnedLegs(one: ReadRow, other: ReadRow): FoundPair | undefined {
  const [a, b] = one.old?.leg === 'b' ? [other, one] : [one, other]
  const legs = { a: a.id, b: b.id }
  const said = asSaid(legs, [one, other])
  const isNew = one.old?.leg === undefined && (one.leg ?? other.leg) !== undefined
  return isNew || said.a !== legs.a ? { ...said, stem: '', by: 'column' } : undefined
}

/** One leg of a pair that stands is not turned round without the other. */
function lonelyLeg({ line, id, old, leg }: ReadRow, contacts: readonly Contact[]): readonly string[] {
  if (leg === undefined || old?.leg === undefined || leg === old.leg) return []
  const mate = contacts.find((other) => other.lineId === old.lineId && other.id !== id)
  if (mate === undefined) return []
  return [
    `Line ${line}, column “${COLUMN_LABEL.leg}”: contact ${id} is leg ${old.leg} of the pair with ${mate.id}; to turn them round, name both.`,
  ]
}

/** A leg of a pair already, or no line at all, is not paired anew; nor are two lines that are kept apart, by their names. */
function pairRow({ line, id, old, meaning, type, texts, partner, leg }: ReadRow, lines: readonly Line[]) {
  const isFree = type === 'line' && old?.leg === undefined
  const known = lines.find((one) => one.id === old?.lineId)
  const kind = meaning?.is === 'kind' ? meaning.kind : known?.facts.lineKind?.text
  return {
    line,
    id,
    function: texts.function ?? old?.texts.function ?? '',
    partner: isFree ? partner : '',
    leg,
    kind: isFree && known === undefined ? kind : undefined,
  }
}

/** Two legs are one line: what both rows say of it must be the same. */
function disagreement(a: ReadRow, b: ReadRow): string | undefined {
  if (a.leg !== undefined && a.leg === b.leg)
    return `Lines ${Math.min(a.line, b.line)} and ${Math.max(a.line, b.line)}, column “${COLUMN_LABEL.leg}”: both are leg ${a.leg} of one pair; it has one of each.`
  const kindOf = ({ meaning }: ReadRow) => (meaning?.is === 'kind' ? meaning.kind : undefined)
  const said = [kindOf(a), kindOf(b)].filter((kind) => kind !== undefined)
  if (new Set(said).size > 1)
    return `Lines ${a.line} and ${b.line} are the legs of one pair, yet name two kinds of line; a pair is one line.`
  for (const column of FACT_COLUMNS) {
    const [one, other] = [a.facts[column], b.facts[column]]
    if (one !== undefined && other !== undefined && !saySame(inputOfColumn(column), one, other))
      return (
        `Lines ${a.line} and ${b.line}, column “${COLUMN_LABEL[column]}”: the legs of one pair say “${one}” and ` +
        `“${other}”; a pair is one line and has one.`
      )
  }
  return undefined
}

type Carried = { readonly line: Line | undefined; readonly before: Line | undefined }

/** The line a circuit carries afterwards: the one that stands there with what is new, or a new one. */
function carriedBy(
  { rows, pair }: Circuit,
  { connector, newLine }: PasteGiven,
  now: ReadonlyMap<string, Line>,
): Carried {
  if (rows.every(({ type }) => type !== 'line')) return { line: undefined, before: undefined }
  const before = rows.flatMap(({ old }) => now.get(old?.lineId ?? '') ?? [])[0]
  if (before === undefined && pair === undefined && !rows.some(saysOfALine)) return { line: undefined, before }
  const [first] = rows
  const what = pair?.stem || first.texts.function || ''
  const where =
    connector.name === '' ? rows.map(({ id }) => id) : [`${connector.name}-${rows.map(({ id }) => id).join('/')}`]
  const line = before ?? newLine([where.join('/'), what].filter((part) => part !== '').join(' '))
  return { line: rows.reduce(lineWithCells, line), before }
}

/** A contact that is only named, or has a wire alone, gets no empty line. */
const saysOfALine = ({ meaning, facts, texts }: ReadRow): boolean =>
  meaning?.is === 'kind' || Object.keys(facts).length > 0 || texts.function !== undefined

/** Of a pair as it was found; else what the table says of a contact by itself, and what it was. */
function legIn({ id, leg, old }: ReadRow, { rows, pair }: Circuit): Leg | undefined {
  if (pair !== undefined) return pair.a === id ? 'a' : 'b'
  return rows.length === 1 ? (leg ?? old?.leg) : old?.leg
}

function plannedRow(row: ReadRow, circuit: Circuit, { line, before }: Carried) {
  const { rows, pair } = circuit
  const { id, old, type } = row
  const texts = { ...old?.texts, ...row.texts }
  const leg = legIn(row, circuit)
  // a line that is gone can come back
  const lineId = line?.id ?? old?.lineId
  const carries = type === 'line' && lineId !== undefined ? { lineId, ...(leg !== undefined && { leg }) } : {}
  const contact: Contact = { id, type, ...carries, texts }
  const changes = changesOf(row, contact, before)
  const mate = rows.find((other) => other !== row)?.id
  const planned: PlannedRow = {
    line: row.line,
    id,
    state: old === undefined ? 'new' : changes.length > 0 ? 'changed' : 'same',
    changes,
    ...(pair !== undefined && leg !== undefined && mate !== undefined && { pair: { leg, mate, by: pair.by } }),
  }
  return { row: planned, contact: planned.state === 'same' && old !== undefined ? old : contact }
}
