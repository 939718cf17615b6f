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
  readonly esrOhm: number
  readonly dcrOhm: number
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
const COILED: readonly Topology[] = ['LC', 'CL', 'PI', 'PI', 'T', 'T', 'C', 'L']

/**
 * `sharp`: windings and capacitors of next to no loss, stiff sources and light loads, at the resonance of one of the
 * contacts or within a tenth of it.
 */
export function randomPlate(rand: () => number, count: number, kind: 'any' | 'sharp' = 'any'): RandomPlate {
  const isSharp = kind === 'sharp'
  const decade = (low: number, high: number) => Number((low * (high / low) ** rand()).toPrecision(4))
  const pick = <T>(of: readonly T[]): T => of[Math.floor(rand() * of.length)] as T
  const anyHz = decade(1e5, 1e8)
  const drawn = Array.from(
    { length: count },
    (): Drawn => ({
      topology: pick(isSharp ? COILED : TOPOLOGIES),
      capacitanceF: decade(100e-12, 200e-9),
      leastFrac: 0.5 + 0.45 * rand(),
      mostFrac: 1.05 + 0.3 * rand(),
      inductanceH: decade(0.1e-6, 20e-6),
      sources: isSharp ? [decade(0.2, 20)] : rand() < 0.5 ? [decade(1, 500)] : [decade(1, 20), decade(20, 500)],
      loadOhm: isSharp ? decade(1e3, 1e6) : decade(5, 10e3),
      neededDb: isSharp ? 1 + Math.round(60 * rand() * rand()) : Math.round(40 * rand() * rand()),
      esrOhm: isSharp ? decade(1e-3, 30e-3) : ESR_OHM,
      dcrOhm: isSharp ? decade(2e-3, 50e-3) : DCR_OHM,
    }),
  )
  const { capacitanceF, inductanceH } = drawn[0] as Drawn
  const resonantHz = (0.9 + 0.2 * rand()) / (2 * Math.PI * Math.sqrt(capacitanceF * inductanceH))
  const hz = isSharp ? Number(resonantHz.toPrecision(6)) : anyHz
  const decided = drawn.map((one, i) =>
    contactOf(
      `${i + 1}`,
      {
        lineKind: 'not-listed',
        noiseHz: String(hz),
        neededDb: String(one.neededDb),
        noiseSourceOhm: one.sources.join(';'),
        noiseLoadOhm: String(one.loadOhm),
        esrOhm: String(one.esrOhm),
        eslH: String(ESL_H),
        dcrOhm: String(one.dcrOhm),
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
export const anyPoint = (
  plate: RandomPlate,
  rand: () => number,
  corner: boolean,
  quiet = -1,
): readonly NodalContact[] =>
  pointAt(
    plate,
    plate.drawn.map(() => Array.from({ length: SHARES }, () => (corner ? Math.round(rand()) : rand()))),
    quiet,
  )

/** Shares of the way from least to most that a point of one contact takes: three parts, and its source. */
export const SHARES = 4

/** The point where every part lies that share of its way from least to most. */
export function pointAt(
  { drawn }: RandomPlate,
  shares: readonly (readonly number[])[],
  quiet = -1,
): readonly NodalContact[] {
  return drawn.map((one, i): NodalContact => {
    const own = shares[i] as readonly number[]
    const c = (k: number): NodalPart => ({
      farads: one.capacitanceF * (one.leastFrac + (own[k] as number) * (one.mostFrac - one.leastFrac)),
      esrOhm: one.esrOhm,
      eslH: ESL_H,
    })
    const l = (k: number): NodalPart => ({
      henries: one.inductanceH * (1 + (own[k] as number) * (MOST_COIL - 1)),
      dcrOhm: one.dcrOhm,
    })
    const chains: Readonly<Record<Topology, () => readonly NodalPart[]>> = {
      C: () => [c(0)],
      L: () => [l(0)],
      LC: () => [l(0), c(1)],
      CL: () => [c(0), l(1)],
      PI: () => [c(0), l(1), c(2)],
      T: () => [l(0), c(1), l(2)],
    }
    return {
      chain: one.topology === undefined ? [] : chains[one.topology](),
      sourceOhm: one.sources[
        Math.min(one.sources.length - 1, Math.floor((own[3] as number) * one.sources.length))
      ] as number,
      loadOhm: one.loadOhm,
      loadF: 0,
      volts: i === quiet ? 0 : 1,
    }
  })
}
