/**
 * The connectors of each complaint in memory: read when they are first asked for, changed at once, written behind.
 *
 * `connectorsOf(complaintId)`, `removedConnectorsOf(complaintId)`, `connectorOf(complaintId, id)`
 * `carryOut(step)`              shows a change at once, writes it behind, and tells the other windows
 * `wholeConnectors(ids)`        of several complaints, for a file
 * `readConnectorsAgain(ids)`    after something else has written them
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import type { KeptConnector } from '../store/connector.ts'
import {
  applyConnectorStep,
  type ConnectorStep,
  isConnectorStep,
  type LineStep,
  placeOfStep,
} from '../store/connector-edits.ts'
import { inOrder, readConnectors, readConnectorsOf } from '../store/connector-steps.ts'
import { madeOn } from '../store/edits.ts'
import { StoreError, watchStore } from '../store/trouble.ts'
import { lineOf, show } from './log.ts'
import { onNews, tell } from './other-windows.ts'
import { save, settled, unwritten } from './save-queue.ts'

type Shelf = {
  readonly all: ReturnType<typeof signal<readonly KeptConnector[] | undefined>>
  readonly present: ReadonlySignal<readonly KeptConnector[] | undefined>
  readonly removed: ReadonlySignal<readonly KeptConnector[]>
  /** counts changes made here, so that a slow read never puts an older list over newer typing */
  changes: number
  /** it could not be read: it is read again as soon as the storage answers */
  isUnread: boolean
}

const shelves = new Map<string, Shelf>()

const isPresent = ({ removedAt }: KeptConnector): boolean => removedAt === undefined

export function shelfOf(complaintId: string): Shelf {
  const known = shelves.get(complaintId)
  if (known !== undefined) return known
  const all = signal<readonly KeptConnector[] | undefined>(undefined)
  const shelf: Shelf = {
    all,
    present: computed(() => all.value?.filter(isPresent)),
    removed: computed(() => all.value?.filter(({ removedAt }) => removedAt !== undefined) ?? []),
    changes: 0,
    isUnread: false,
  }
  shelves.set(complaintId, shelf)
  void read(complaintId, shelf)
  return shelf
}

/** The changes to connectors of a complaint that are not on disk yet. */
const waitingFor = (complaintId: string) =>
  unwritten().flatMap(({ step, late }) =>
    isConnectorStep(step) && placeOfStep(step).id === complaintId ? [{ step, late }] : [],
  )

async function read(complaintId: string, shelf: Shelf): Promise<void> {
  await settled()
  const before = shelf.changes
  const waiting = waitingFor(complaintId)
  let stored: readonly KeptConnector[] = []
  try {
    stored = await readConnectors(complaintId)
    shelf.isUnread = false
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
    shelf.isUnread = true
    if (shelf.all.value !== undefined) return
  }
  if (shelf.changes !== before) return read(complaintId, shelf)
  // A step that was written meanwhile changes nothing when it is carried out once more.
  shelf.all.value = waiting.reduce((all, { step, late }) => applyConnectorStep(all, step, late), stored)
}

const readAgain = (complaintId: string): void => {
  const shelf = shelves.get(complaintId)
  if (shelf !== undefined) void read(complaintId, shelf)
}

watchStore((trouble) => {
  if (trouble !== undefined) return
  for (const [id, shelf] of shelves) if (shelf.isUnread) readAgain(id)
})

onNews((news) => {
  if (news.is === 'connector') readAgain(news.id)
})

/** The connectors of a complaint in their order; undefined until they are read. */
export function connectorsOf(complaintId: string): ReadonlySignal<readonly KeptConnector[] | undefined> {
  return shelfOf(complaintId).present
}

/** Connectors that were taken out and can still be brought back. */
export function removedConnectorsOf(complaintId: string): ReadonlySignal<readonly KeptConnector[]> {
  return shelfOf(complaintId).removed
}

/** The connectors of these complaints, as they are on the screen or would be: those not read yet are read in one go. */
export async function wholeConnectors(
  complaintIds: readonly string[],
): Promise<ReadonlyMap<string, readonly KeptConnector[]>> {
  await settled()
  const isShown = (id: string): boolean => shelves.has(id) || waitingFor(id).length > 0
  const others = complaintIds.filter((id) => !isShown(id))
  const found = new Map<string, readonly KeptConnector[]>()
  for (const id of complaintIds.filter(isShown)) {
    const shelf = shelfOf(id)
    if (shelf.all.peek() === undefined) await read(id, shelf)
    found.set(id, shelf.present.peek() ?? [])
  }
  try {
    const stored = await readConnectorsOf(others)
    for (const [id, all] of stored) found.set(id, all.filter(isPresent))
  } catch (error) {
    // without storage there is none but those of this window
    if (!(error instanceof StoreError)) throw error
  }
  return found
}

/** Reads connectors again that were written by something else than this model. */
export function readConnectorsAgain(complaintIds: readonly string[]): void {
  for (const id of complaintIds) readAgain(id)
}

export const connectorOf = (complaintId: string, id: string): KeptConnector | undefined =>
  shelfOf(complaintId).all.value?.find((one) => one.id === id)

const lineOnWhatIsShown = (step: LineStep): LineStep =>
  step.do === 'addLine' ? step : madeOn(step, lineOf(step.id, step.lineId))

/** The step with what is to be known of the records it is made on. */
function onWhatIsShown(step: ConnectorStep): ConnectorStep {
  const { id, connectorId } = placeOfStep(step)
  const own = step.do === 'addConnector' ? step : madeOn(step, connectorOf(id, connectorId))
  return 'lines' in own && own.lines !== undefined ? { ...own, lines: own.lines.map(lineOnWhatIsShown) } : own
}

/** Shows a change at once, writes it behind, and tells the other windows when it is on disk. */
export async function carryOut(change: ConnectorStep, key = ''): Promise<void> {
  const { id, connectorId } = placeOfStep(change)
  const step = onWhatIsShown(change)
  const shelf = shelfOf(id)
  shelf.changes++
  // not read yet: it is shown with what is read
  if (shelf.all.value !== undefined) shelf.all.value = [...applyConnectorStep(shelf.all.value, step)].sort(inOrder)
  const lines = 'lines' in step ? (step.lines ?? []) : []
  if (lines.length > 0) show(step)
  await save(step, key, () => {
    const connector = connectorOf(id, connectorId)
    return connector && { do: 'addConnector', connector, lines }
  })
  tell({ is: 'connector', id })
  if (lines.length > 0) tell({ is: 'changed', id })
}
