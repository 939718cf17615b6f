/** Capacitance between two contacts, where it was given: what one puts into the other. */

import { lineKindById } from '../../../reference/line-kinds.ts'
import type { Express } from '../../line/fields.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import { boxesAt, type Plated } from '../plate/cells.ts'
import { RESTING } from '../plate/plate.ts'
import { BARE } from '../plate/share.ts'
import { boundTogether } from '../plate/together.ts'
import type { Connector } from '../types.ts'
import { typedNumber } from './given.ts'
import { bareOn, onPlate } from './plate-contact.ts'
import { basisOf, decibels, exact, show, step } from './said.ts'

/**
 * Volts at the load of a contact for one volt on its neighbour, at most over its tolerances, with its plate at rest; dB:
 *   V = jωCm·Z·own, Z = source ∥ Cm, own the load volts per volt of a source with that impedance
 * Farads > 0. Source: Thévenin (derived).
 */
export function crossDb(plated: Plated, farads: number, hz: number): number | undefined {
  const placed = plated.placed.map((around) => ({
    ...around,
    sources: around.sources.map((source) => ({ ...source, shuntF: (source.shuntF ?? 0) + farads })),
  }))
  const boxes = boxesAt({ ...plated, placed }, hz)
  if (boxes === undefined) return undefined
  const w = 2 * Math.PI * hz
  return Math.max(
    ...boxes.map((cell) => {
      const { on, shares } = cell.box
      const bare = Math.hypot(shares[BARE] as number, shares[BARE + 1] as number)
      const coupled = w * farads * Math.hypot(on.fixed.zsRe, on.fixed.zsIm)
      return decibels(coupled * bare) - boundTogether([cell], RESTING).leastDb
    }),
  )
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
              'V = jωC·Z·own',
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
  const contact = onPlate(to, express) ?? bareOn(to, express)
  if (contact?.own === undefined) return undefined
  const useful = from.kind === undefined ? undefined : lineKindById(from.kind)?.usefulHz?.hz
  const frequencies = [...contact.needs.map(({ hz }) => hz), ...(useful === undefined ? [] : [useful])]
  let worst: Way | undefined
  for (const hz of frequencies) {
    const db = crossDb(contact.own, farads, hz)
    if (db !== undefined && (worst === undefined || db > worst.db)) worst = { from: from.id, to: to.id, hz, db }
  }
  return worst
}
