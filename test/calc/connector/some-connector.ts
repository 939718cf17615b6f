/** Connectors of invented lines, for the tests of the schedule. */
import type { Connector, Contact, ContactText } from '../../../src/calc/connector/types.ts'
import type { Fact, FactKey, Line } from '../../../src/calc/types.ts'

export const lineOf = (id: string, texts: Partial<Record<FactKey, string>>, gate: Line['gate'] = 'clear'): Line => ({
  id,
  name: id,
  gate,
  trials: [],
  facts: Object.fromEntries(
    Object.entries(texts).map(([key, text]) => [key, { text, origin: { by: 'user' } } satisfies Fact]),
  ),
})

export const contactOf = (
  id: string,
  lineId: string | undefined,
  texts: Partial<Record<ContactText, string>> = {},
  more: Partial<Contact> = {},
): Contact => ({ id, type: 'line', texts, ...(lineId === undefined ? {} : { lineId }), ...more })

export const connectorOf = (contacts: readonly Contact[], more: Partial<Connector> = {}): Connector => ({
  id: 'j1',
  name: 'J1',
  shape: 'ring',
  contacts,
  shared: { bondOhm: '0', bondH: '0' },
  texts: {},
  suppressors: [],
  adjacent: [],
  ...more,
})

/** Everything a window asks of a discrete, nothing left to an assumption that could turn it. */
export const DISCRETE: Partial<Record<FactKey, string>> = {
  lineKind: 'discrete-ground',
  noiseHz: '10M',
  neededDb: '20',
  noiseSourceOhm: '50',
  noiseLoadOhm: '50',
  existingF: '0',
  suppressorF: '0',
  dielectric: 'c0g',
  toleranceFrac: '10 %',
  signalOhm: '1k',
  eslH: '0',
  esrOhm: '0',
}

export function finished<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
