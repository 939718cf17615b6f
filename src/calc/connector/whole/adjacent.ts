/** Capacitance between two contacts, where it was given: what one puts into the other. */

import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Express } from '../../line/fields.ts'
import { add, type Complex, divide, magnitude, multiply, ONE } from '../complex.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { PlateContact } from '../shared-bond.ts'
import type { Connector } from '../types.ts'
import { typedNumber } from './given.ts'
import { placesOf } from './places.ts'
import { onPlate } from './plate-contact.ts'
import { basisOf, decibels, exact, show, step } from './said.ts'

/**
 * Volts at the load of a contact for one volt on its neighbour, |V|, with the filter on its plate at rest:
 *   V1 = jωCm·Z1/(1 + jωCm·Z1), Z1 = source ∥ what the filter and the load show;  V_load = V1/(A + B·YL)
 * Farads > 0, rad/s. Source: two-port (derived).
 */
export function crossRatio({ stages, sourceOhm, loadSie }: PlateContact, farads: number, w: number): number {
  let [a, b, c, d]: [Complex, Complex, Complex, Complex] = [ONE, [0, 0], [0, 0], ONE]
  for (const stage of stages) {
    if ('seriesOhm' in stage) {
      b = add(b, multiply(a, stage.seriesOhm))
      d = add(d, multiply(c, stage.seriesOhm))
    } else {
      a = add(a, multiply(b, stage.shuntSie))
      c = add(c, multiply(d, stage.shuntSie))
    }
  }
  const down = add(a, multiply(b, loadSie))
  const inSie = add(divide(add(c, multiply(d, loadSie)), down), divide(ONE, sourceOhm))
  const coupling: Complex = [0, w * farads]
  return magnitude(divide(coupling, multiply(add(inSie, coupling), down)))
}

/** One finding for each pair of contacts whose capacitance was given, both ways where both are known. */
export function adjacentFindings(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): readonly ConnectorFinding[] {
  const byId = new Map(decided.map((one) => [one.id, one]))
  return connector.adjacent.flatMap(({ a, b, text }): readonly ConnectorFinding[] => {
    const id = `adjacent-${a}-${b}`
    const [one, other] = [byId.get(a), byId.get(b)]
    const typed = typedNumber(
      text,
      { quantity: 'capacitance', what: 'capacitance between two contacts', example: '2p' },
      express,
    )
    if (typed.refused !== undefined) return [{ id, verdict: 'unknown', sentence: typed.refused, contacts: [a, b] }]
    if (typed.si === undefined || typed.si === 0 || one === undefined || other === undefined) return []
    const farads = typed.si
    if (one.line !== undefined && one.line.id === other.line?.id)
      return [
        {
          id,
          sentence: `${exact(farads, 'capacitance')} between ${a} and ${b}, the legs of one pair, counts with what is already between its wires: enter it on the line, where its ceiling is.`,
          contacts: [a, b],
        },
      ]
    const ways = [into(one, other, farads, express), into(other, one, farads, express)].filter(
      (way) => way !== undefined,
    )
    if (ways.length === 0)
      return [
        {
          id,
          sentence: `${exact(farads, 'capacitance')} between ${a} and ${b} couples them; how much needs the noise of one of them (frequency, source and load).`,
          contacts: [a, b],
        },
      ]
    const worst = ways.reduce((most, way) => (way.db > most.db ? way : most))
    return [
      {
        id,
        sentence: `${exact(farads, 'capacitance')} between ${a} and ${b} puts ${show(worst.db, 'decibel', 'least')} of the volts of ${worst.from} on the load of ${worst.to} at ${show(worst.hz, 'frequency')}.`,
        contacts: [a, b],
        basis: basisOf(
          ways.map((way) =>
            step(
              'V = jωC·Z/(1 + jωC·Z)/(A + B·Y_L)',
              `from ${way.from} into ${way.to} at ${exact(way.hz, 'frequency')}, most over its tolerances`,
              way.db,
              'decibel',
            ),
          ),
          ['the capacitance stands in front of the filter; the plate is at rest'],
        ),
      },
    ]
  })
}

type Way = { readonly from: string; readonly to: string; readonly hz: number; readonly db: number }

/** The most of all its noise frequencies, and of the highest useful one of what couples. */
function into(to: DecidedContact, from: DecidedContact, farads: number, express: Express | undefined): Way | undefined {
  const contact = onPlate(to, express)
  if (contact === undefined) return undefined
  const useful = from.kind === undefined ? undefined : lineKindById(from.kind)?.usefulHz?.hz
  const frequencies = [...contact.needs.map(({ hz }) => hz), ...(useful === undefined ? [] : [useful])]
  let worst: Way | undefined
  for (const hz of frequencies)
    for (const place of placesOf(contact, hz)) {
      const db = decibels(crossRatio(place.contact, farads, 2 * Math.PI * hz))
      if (worst === undefined || db > worst.db) worst = { from: from.id, to: to.id, hz, db }
    }
  return worst
}
