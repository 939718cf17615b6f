import { expect, it } from 'vitest'
import {
  CONNECTOR_VIEWS,
  hashOfConnector,
  hashOfContact,
  readConnectorSteps,
} from '../../src/state/connector-address.ts'
import { readHash } from '../../src/state/router.ts'
import fc from '../support/property.ts'

const placeAt = (hash: string) => {
  const route = readHash(hash)
  return route.place === 'log' && route.connector ? readConnectorSteps(route.connector) : undefined
}

it('leads back to the connector, its views and its contacts, whatever their names', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'binary' }), fc.string({ minLength: 1 }), (contactId, connectorId) => {
      fc.pre(contactId.isWellFormed())
      expect(placeAt(hashOfConnector('c', connectorId))).toEqual({ connectorId })
      expect(placeAt(hashOfContact('c', connectorId, contactId))).toEqual({ connectorId, view: 'contact', contactId })
      for (const view of CONNECTOR_VIEWS)
        if (view !== 'contact') expect(placeAt(hashOfConnector('c', connectorId, view))).toEqual({ connectorId, view })
    }),
  )
})

it('names no view that is not there, no contact without a name, and nothing below a view', () => {
  for (const steps of [['k', 'elsewhere'], ['k', 'contact'], ['k', 'paste', '1'], ['k', 'contact', '1', 'more'], []])
    expect(readConnectorSteps(steps)).toBeUndefined()
})
