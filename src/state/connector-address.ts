/** Addresses of a connector: `#/log/<complaint>/connector/<connector>`, and below it the views, one contact among them. */
import { encodeText, hashOf } from './router.ts'

export const CONNECTOR_VIEWS = ['contact', 'paste', 'decide', 'whole', 'trade'] as const
export type ConnectorView = (typeof CONNECTOR_VIEWS)[number]

/** Where of a connector one is; `view` absent = its own page, `contactId` only where `view` is `contact`. */
export type ConnectorPlace = {
  readonly connectorId: string
  readonly view?: ConnectorView
  readonly contactId?: string
}

/** Reads what follows `…/connector/`; undefined where there is no such view. */
export function readConnectorSteps(steps: readonly string[]): ConnectorPlace | undefined {
  const [connectorId = '', named, contactId, ...more] = steps
  if (connectorId === '' || more.length > 0) return undefined
  if (named === undefined) return { connectorId }
  const view = CONNECTOR_VIEWS.find((known) => known === named)
  if (view === undefined || (view === 'contact') !== (contactId !== undefined)) return undefined
  return { connectorId, view, ...(contactId !== undefined && { contactId }) }
}

export function hashOfConnector(complaintId: string, connectorId: string, view?: Exclude<ConnectorView, 'contact'>) {
  const own = `${hashOf('log', complaintId)}/connector/${encodeText(connectorId)}`
  return view === undefined ? own : `${own}/${view}`
}

export const hashOfContact = (complaintId: string, connectorId: string, contactId: string) =>
  `${hashOfConnector(complaintId, connectorId)}/contact/${encodeText(contactId)}`
