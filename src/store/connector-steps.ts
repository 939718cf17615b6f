/** Connectors on disk; fetched when the first one is read or written. Every function fails with a `StoreError` and nothing else. */
import { addMissing, changeLineAt } from './complaints.ts'
import { type KeptConnector, keptConnector, newConnector, restoreConnector } from './connector.ts'
import { type ConnectorStep, editConnector, type LineStep, placeOfStep } from './connector-edits.ts'
import { type Desk, inOneGo } from './db.ts'
import { editLine, type Late } from './edits.ts'
import { keptLine, newLine } from './line.ts'

/** By their place, then by id: the same on every device. */
export const inOrder = (a: KeptConnector, b: KeptConnector): number => a.order - b.order || a.id.localeCompare(b.id)

/** The connectors of a complaint in their order, removed ones among them. */
export async function readConnectors(complaintId: string): Promise<readonly KeptConnector[]> {
  return (await readConnectorsOf([complaintId])).get(complaintId) ?? []
}

/** The same of several complaints, in one go. */
export function readConnectorsOf(
  complaintIds: readonly string[],
): Promise<ReadonlyMap<string, readonly KeptConnector[]>> {
  const read = async (desk: Desk, id: string) => {
    const raws = await desk.ownedBy('connectors', id)
    return [id, raws.map((raw) => restoreConnector(raw)).sort(inOrder)] as const
  }
  return inOneGo(['connectors'], async (desk) => new Map(await Promise.all(complaintIds.map((id) => read(desk, id)))))
}

/**
 * Carries a step out, the connector and the lines that change with it in one transaction; false when the connector is
 * not there. `late`: an earlier start left it behind; what it was typed into is then made anew.
 */
export function performConnectorStep(step: ConnectorStep, late: Late = false): Promise<boolean> {
  return inOneGo(['connectors', 'lines'], async (desk) => {
    const { id, connectorId } = placeOfStep(step)
    const raw = await desk.get('connectors', [id, connectorId])
    const next = nextConnector(raw, step, late)
    if (next === undefined) return late !== false || step.do === 'removeConnector'
    if (next !== raw) await desk.put('connectors', next)
    for (const one of 'lines' in step ? (step.lines ?? []) : []) await changeLine(desk, one, late)
    return true
  })
}

/** What is to stand there: as it is, changed, or undefined where there is nothing to change. */
function nextConnector(raw: unknown, step: ConnectorStep, late: Late): unknown {
  if (step.do === 'addConnector') return raw ?? step.connector
  if (raw !== undefined) return editConnector(restoreConnector(raw), step, late)
  const isTyped = step.do === 'connectorText' || step.do === 'changeConnector'
  if (!late || !isTyped) return undefined
  const { id, connectorId, at } = step
  return editConnector(
    { ...keptConnector({ ...newConnector('recovered'), id: connectorId }, id, 0), updatedAt: at },
    step,
    false,
  )
}

async function changeLine(desk: Desk, step: LineStep, late: Late): Promise<void> {
  if (step.do === 'addLine') return addMissing(desk, step.line)
  if ((await changeLineAt(desk, step, late)) || step.do !== 'fact') return
  // Gone meanwhile: what was typed about it is worth more than where it stood.
  const line = keptLine({ ...newLine('recovered'), id: step.lineId }, step.id, 0)
  await desk.put('lines', editLine(line, step, false))
}
