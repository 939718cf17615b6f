/**
 * The connectors of the complaints, each complaint's read when they are first asked for.
 *
 * `connectorsOf(complaintId)`      in their order, without removed ones; undefined until read
 * `removedConnectorsOf(complaintId)`  those that can still be brought back, also after a reload (for a day)
 *
 * Doing (each shows at once and is written behind, in order)
 *   `createDesign(title)`          a record of the Log for a new design, without a complaint
 *   `addConnector(complaintId, connector, lines?)`   with lines of the complaint, in one step
 *   `changeConnector(complaintId, id, patch, lines?)`  the connector and new or changed lines in one step
 *   `removeConnector(complaintId, id)`, `bringBack(complaintId, id)`   the undo is offered as that of a line
 *   `writeConnectorText(complaintId, id, field, text, base?)`, `writeContactText(complaintId, id, contactId, field, text, base?)`  at every key
 *   `takeConnectorText(complaintId, id, place, text, left)`   one of several texts is taken, the others (`left`) go
 *   `lastChangeOf(id)`, `undoChange(complaintId, id)`   takes back, as one step, what `addConnector` or `changeConnector` did in this window
 *
 * A key writes the connector's own record only; of a line, that line's. Lines are changed by `changeLine`, taken out by
 * `removeLine` of complaints.ts; contacts that carry a line which was taken out stay, without it.
 */
import { signal } from '@preact/signals'
import type { Connector, ContactText } from '../calc/connector/types.ts'
import type { Line } from '../calc/types.ts'
import type { Complaint } from '../store/complaint.ts'
import { type ConnectorField, type KeptConnector, keptConnector, type TextPlace } from '../store/connector.ts'
import { type ConnectorPatch, type ConnectorStep, connectorText, type LineStep } from '../store/connector-edits.ts'
import { backSteps, lineSteps } from '../store/line-steps.ts'
import { newComplaint } from '../store/new-complaint.ts'
import { add, offerUndo } from './complaints.ts'
import { carryOut, connectorOf, connectorsOf, removedConnectorsOf, shelfOf } from './connector-shelves.ts'
import { find } from './log.ts'

export type { ConnectorField, ConnectorPatch, KeptConnector, TextPlace }
export { connectorsOf, removedConnectorsOf }

/** What this window wrote last into a text, where no field says what it showed. */
const writtenHere = new Map<string, string>()
const now = (): string => new Date().toISOString()

/** A record of the Log for a new design, without a complaint. */
export function createDesign(title: string): Complaint {
  return add(newComplaint({ title, purpose: 'design' }))
}

/** A change of this window that can be taken back as one step. */
export type ConnectorChange = { readonly connectorId: string; readonly back: (at: string) => ConnectorStep }

const MOST_STEPS = 50
const changes = signal<readonly ConnectorChange[]>([])

/** The change of a connector that would be taken back next. */
export const lastChangeOf = (id: string): ConnectorChange | undefined =>
  changes.value.filter(({ connectorId }) => connectorId === id).at(-1)

function noteChange(connectorId: string, back: ConnectorChange['back']): void {
  changes.value = [...changes.peek(), { connectorId, back }].slice(-MOST_STEPS)
}

/** Takes back what was done last to a connector, its lines too; what was typed since in another place stays. */
export function undoChange(complaintId: string, id: string): void {
  const last = lastChangeOf(id)
  if (last === undefined) return
  changes.value = changes.peek().filter((one) => one !== last)
  const step = last.back(now())
  for (const place of writtenHere.keys()) if (place.startsWith(`${complaintId}:${id}:`)) writtenHere.delete(place)
  void carryOut(step)
}

/** What is new about lines of a complaint, as steps; `back`: the steps that take it back. */
function changesOf(complaintId: string, lines: readonly Line[], at: string) {
  const known = find(complaintId)?.lines ?? []
  const steps: readonly LineStep[] = lineSteps(complaintId, known, lines, at)
  return { steps, back: (later: string) => backSteps(known, steps, later) }
}

/** Puts a connector at the end of a complaint, with its lines. `isExample`: it came whole, and there is no change to take back. */
export function addConnector(
  complaintId: string,
  connector: Connector,
  lines: readonly Line[] = [],
  isExample = false,
): void {
  const shelf = shelfOf(complaintId)
  // not read yet: behind whatever there is
  const order = Math.max(-1, ...(shelf.all.value?.map((one) => one.order) ?? [Date.now()])) + 1
  const { steps, back } = changesOf(complaintId, lines, now())
  const takeBack = (at: string): ConnectorStep => ({
    do: 'removeConnector',
    id: complaintId,
    connectorId: connector.id,
    at,
    lines: back(at),
  })
  if (!isExample) noteChange(connector.id, takeBack)
  void carryOut({ do: 'addConnector', connector: keptConnector(connector, complaintId, order), lines: steps })
}

/** Changes a connector, and puts in new or changed lines, in one step. */
export function changeConnector(
  complaintId: string,
  id: string,
  patch: ConnectorPatch,
  lines: readonly Line[] = [],
): void {
  const old = connectorOf(complaintId, id)
  if (old === undefined) return
  const base = partsOf(old, patch)
  const { steps, back } = changesOf(complaintId, lines, now())
  const own = { id: complaintId, connectorId: id }
  noteChange(id, (at) => ({ do: 'changeConnector', ...own, at, patch: base, base: patch, lines: back(at) }))
  void carryOut({ do: 'changeConnector', ...own, at: now(), patch, base, lines: steps })
}

/** The parts of a connector that a patch names. */
function partsOf(old: Connector, patch: ConnectorPatch): ConnectorPatch {
  const { shape, contacts, suppressors, adjacent } = old
  return {
    ...(patch.shape !== undefined && { shape }),
    ...(patch.contacts !== undefined && { contacts }),
    ...(patch.suppressors !== undefined && { suppressors }),
    ...(patch.adjacent !== undefined && { adjacent }),
  }
}

/** Takes a connector out; its lines stay with the complaint. `undoRemove` or `bringBack` brings it back. */
export function removeConnector(complaintId: string, id: string): void {
  const old = connectorOf(complaintId, id)
  if (old === undefined) return
  offerUndo({ id: complaintId, name: old.name || 'connector without a name', back: () => bringBack(complaintId, id) })
  void carryOut({ do: 'removeConnector', id: complaintId, connectorId: id, at: now() })
}

/** Brings a connector back that was taken out. */
export function bringBack(complaintId: string, id: string): void {
  void carryOut({ do: 'undoRemoveConnector', id: complaintId, connectorId: id, at: now() })
}

function write(complaintId: string, id: string, place: TextPlace, next: string, base: string | undefined): void {
  const old = connectorOf(complaintId, id)
  if (old === undefined) return
  const key = `${complaintId}:${id}:${place.contact ?? ''}:${place.field}`
  const readText = base ?? writtenHere.get(key) ?? connectorText(old, place)
  writtenHere.set(key, next)
  void carryOut({ do: 'connectorText', id: complaintId, connectorId: id, at: now(), place, next, base: readText }, key)
}

/** Writes one text of a connector, at every key; `base`: what the field showed before. */
export function writeConnectorText(
  complaintId: string,
  id: string,
  field: ConnectorField,
  text: string,
  base?: string,
): void {
  write(complaintId, id, { field }, text, base)
}

/** Writes one text of a contact, at every key; `base`: what the field showed before. */
export function writeContactText(
  complaintId: string,
  id: string,
  contactId: string,
  field: ContactText,
  text: string,
  base?: string,
): void {
  write(complaintId, id, { contact: contactId, field }, text, base)
}

/** Takes one of several texts; the others that were seen go. */
export function takeConnectorText(
  complaintId: string,
  id: string,
  place: TextPlace,
  text: string,
  left: readonly string[],
): void {
  if (connectorOf(complaintId, id) === undefined) return
  writtenHere.delete(`${complaintId}:${id}:${place.contact ?? ''}:${place.field}`)
  void carryOut({ do: 'settleConnector', id: complaintId, connectorId: id, place, text, left, at: now() })
}
