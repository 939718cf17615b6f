/** Random connectors for the shared bond: contacts as decided, and any point of their tolerances as parts in a nodal solver. */
import type { DecidedContact } from '../../src/calc/connector/decided.ts'
import type { Connector } from '../../src/calc/connector/types.ts'
import type { Topology } from '../../src/calc/types.ts'
import { connectorOf, contactOf } from './decided-contact.ts'
import type { NodalContact, NodalPart } from './plate-nodes.ts'

type Drawn = {
  readonly topology: Topology | undefined
  readonly capacitanceF: number
  readonly leastFrac: number
  readonly mostFrac: number
  readonly inductanceH: number
  readonly sources: readonly number[]
  readonly loadOhm: number
  readonly neededDb: number
}

export type RandomPlate = {
  readonly connector: Connector
  readonly decided: readonly DecidedContact[]
  readonly hz: number
  readonly bond: { readonly ohm: number; readonly henries: number }
  readonly drawn: readonly Drawn[]
}

const ESR_OHM = 0.03
const ESL_H = 0.1e-9
const DCR_OHM = 0.05
/** A tolerance of 20 % entered: a coil is anything from its mark to 1.5 times it. */
const MOST_COIL = 1.2 / 0.8

const TOPOLOGIES: readonly (Topology | undefined)[] = ['C', 'C', 'C', 'LC', 'CL', 'PI', 'T', 'L', undefined]

export function randomPlate(rand: () => number, count: number): RandomPlate {
  const decade = (low: number, high: number) => Number((low * (high / low) ** rand()).toPrecision(4))
  const pick = <T>(of: readonly T[]): T => of[Math.floor(rand() * of.length)] as T
  const hz = decade(1e5, 1e8)
  const drawn = Array.from(
    { length: count },
    (): Drawn => ({
      topology: pick(TOPOLOGIES),
      capacitanceF: decade(100e-12, 200e-9),
      leastFrac: 0.5 + 0.45 * rand(),
      mostFrac: 1.05 + 0.3 * rand(),
      inductanceH: decade(0.1e-6, 20e-6),
      sources: rand() < 0.5 ? [decade(1, 500)] : [decade(1, 20), decade(20, 500)],
      loadOhm: decade(5, 10e3),
      neededDb: Math.round(40 * rand() * rand()),
    }),
  )
  const decided = drawn.map((one, i) =>
    contactOf(
      `${i + 1}`,
      {
        lineKind: 'not-listed',
        noiseHz: String(hz),
        neededDb: String(one.neededDb),
        noiseSourceOhm: one.sources.join(';'),
        noiseLoadOhm: String(one.loadOhm),
        esrOhm: String(ESR_OHM),
        eslH: String(ESL_H),
        dcrOhm: String(DCR_OHM),
        inductanceH: String(one.inductanceH),
        toleranceFrac: '20 %',
      },
      one.topology === undefined
        ? undefined
        : {
            topology: one.topology,
            capacitanceF: one.topology === 'L' ? 0 : one.capacitanceF,
            leastFrac: one.leastFrac,
            mostFrac: one.mostFrac,
            inductanceH: one.inductanceH,
          },
    ),
  )
  const bond = { ohm: decade(0.5e-3, 20e-3), henries: decade(0.02e-9, 20e-9) }
  const connector = connectorOf(decided, { shared: { bondOhm: String(bond.ohm), bondH: String(bond.henries) } })
  return { connector, decided, hz, bond, drawn }
}

/** One point of every tolerance; `corner`: everything at an end of its own. `quiet`: the one that is not driven. */
export function anyPoint(
  { drawn }: RandomPlate,
  rand: () => number,
  corner: boolean,
  quiet = -1,
): readonly NodalContact[] {
  const share = () => (corner ? Math.round(rand()) : rand())
  return drawn.map((one, i): NodalContact => {
    const c = (): NodalPart => ({
      farads: one.capacitanceF * (one.leastFrac + share() * (one.mostFrac - one.leastFrac)),
      esrOhm: ESR_OHM,
      eslH: ESL_H,
    })
    const l = (): NodalPart => ({ henries: one.inductanceH * (1 + share() * (MOST_COIL - 1)), dcrOhm: DCR_OHM })
    const chains: Readonly<Record<Topology, () => readonly NodalPart[]>> = {
      C: () => [c()],
      L: () => [l()],
      LC: () => [l(), c()],
      CL: () => [c(), l()],
      PI: () => [c(), l(), c()],
      T: () => [l(), c(), l()],
    }
    return {
      chain: one.topology === undefined ? [] : chains[one.topology](),
      sourceOhm: one.sources[Math.floor(rand() * one.sources.length)] as number,
      loadOhm: one.loadOhm,
      loadF: 0,
      volts: i === quiet ? 0 : 1,
    }
  })
}
