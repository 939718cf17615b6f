/** A connector of a complaint, shown as the app shows it. */
import type { Connector } from '../../src/calc/connector/types.ts'
import { addConnector, connectorsOf } from '../../src/state/connectors.ts'
import { createFromCheck } from '../../src/state/new-complaint.ts'
import { newConnector } from '../../src/state/new-connector.ts'
import { newLine } from '../../src/store/line.ts'
import { ConnectorScreen } from '../../src/ui/screens/connector/connector.tsx'
import { eventually, settle, show } from './support.ts'

export const made = () => createFromCheck({ title: 'Intercom buzz', check: 'need', line: newLine('mic') })

/** A connector of a complaint, and where it is shown. */
export function connectorIn(complaintId: string, parts: Partial<Connector> = {}) {
  const connector = { ...newConnector([]), ...parts }
  addConnector(complaintId, connector)
  const open = async (...steps: string[]) => {
    show(<ConnectorScreen complaintId={complaintId} steps={[connector.id, ...steps]} />)
    await settle()
  }
  const now = () => connectorsOf(complaintId).value?.find(({ id }) => id === connector.id)
  return { connector, open, now }
}

export async function withConnector(parts: Partial<Connector> = {}) {
  const complaint = made()
  await eventually('the connectors', () => connectorsOf(complaint.id).value)
  return { complaint, ...connectorIn(complaint.id, parts) }
}
