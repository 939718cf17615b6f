/**
 * A complaint of a file laid over the one of this device. Nothing that stands here goes: where both say something else,
 * the text that was written last counts and the other stays beside it, as after two windows on one text.
 */
import { CONNECTOR_TEXTS, type Connector } from '../../calc/connector/types.ts'
import type { Fact, FactKey, Trial } from '../../calc/types.ts'
import { assemble, COMPLAINT_TEXTS, type ComplaintRecord, recordOf } from '../complaint.ts'
import { type ConnectorField, type KeptConnector, SHARED_TEXTS } from '../connector.ts'
import { connectorText, editConnector } from '../connector-edits.ts'
import { inOrder } from '../connector-steps.ts'
import { editComplaint, editFact, editLine } from '../edits.ts'
import type { KeptLine } from '../line.ts'
import { mergeTables, oneHistory, union, unionById } from '../union.ts'
import type { Whole } from './whole.ts'

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b)

function mergeRecord(here: ComplaintRecord, there: ComplaintRecord): ComplaintRecord {
  const at = there.updatedAt
  const patch = Object.fromEntries(
    COMPLAINT_TEXTS.flatMap((field) => ((there[field] ?? '') === '' ? [] : [[field, there[field]]])),
  )
  const typed = editComplaint(
    here,
    { do: 'change', id: here.id, at, patch, base: { title: '', aircraft: '', note: '' } },
    true,
  )
  const { events, tables } = there
  const history = oneHistory(here.events, events)
  return {
    ...typed,
    answers: { ...there.answers, ...here.answers },
    checks: union(here.checks, there.checks),
    kept: union(here.kept, there.kept),
    ...(history.length > 0 && { events: history }),
    ...((here.tables ?? tables) && { tables: mergeTables(here.tables, tables) }),
  }
}

/** One line; what may be tried on it is what was answered here. */
function mergeLine(here: KeptLine, there: KeptLine): KeptLine {
  const { complaintId: id, id: lineId, name } = here
  const named =
    there.name === '' || there.name === name
      ? here
      : editLine(here, { do: 'line', id, lineId, at: there.updatedAt, patch: { name: there.name }, base: '' }, true)
  const all = Object.entries(there.facts) as [FactKey, Fact][]
  const facts = all.filter(([fact, { text }]) => here.facts[fact]?.text !== text)
  const typed = facts.reduce(
    (line, [fact, next]) => editFact(line, { fact, next, base: '' }, { at: there.updatedAt }, true),
    named,
  )
  const trials: readonly Trial[] = unionById(here.trials, there.trials)
  return { ...typed, trials, kept: union(here.kept, there.kept) }
}

const FIELDS: readonly ConnectorField[] = ['name', ...SHARED_TEXTS, ...CONNECTOR_TEXTS]

function mergeConnector(here: KeptConnector, there: KeptConnector): KeptConnector {
  const own = { id: here.complaintId, connectorId: here.id, at: there.updatedAt }
  const typed = FIELDS.reduce((connector, field) => {
    const next = connectorText(there, { field })
    return next === ''
      ? connector
      : editConnector(connector, { do: 'connectorText', ...own, place: { field }, next, base: '' }, true)
  }, here)
  const contacts = { do: 'changeConnector', ...own, patch: { contacts: there.contacts }, base: {} } as const
  const laid = editConnector(typed, contacts, true)
  const adjacent: Connector['adjacent'] = union(here.adjacent, there.adjacent)
  return {
    ...laid,
    suppressors: unionById(here.suppressors, there.suppressors),
    adjacent,
    kept: union(here.kept, there.kept),
  }
}

/** Those of here, each with its counterpart laid over it, then the others of there behind them. */
function mergeAll<T extends { readonly id: string; readonly order: number }>(
  here: readonly T[],
  there: readonly T[],
  merge: (here: T, there: T) => T,
): readonly T[] {
  const last = Math.max(-1, ...here.map(({ order }) => order))
  const added = there.filter(({ id }) => !here.some((one) => one.id === id))
  return [
    ...here.map((one) => {
      const other = there.find(({ id }) => id === one.id)
      return other === undefined || isSame(one, other) ? one : merge(one, other)
    }),
    ...added.map((one, at) => ({ ...one, order: last + 1 + at })),
  ]
}

export function mergeWhole(here: Whole, there: Whole): Whole {
  const record = mergeRecord(recordOf(here.complaint), recordOf(there.complaint))
  const lines = mergeAll(here.complaint.lines, there.complaint.lines, mergeLine)
  const connectors = mergeAll(here.connectors, there.connectors, mergeConnector)
  return { complaint: assemble(record, lines), connectors: [...connectors].sort(inOrder) }
}
