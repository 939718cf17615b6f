/**
 * Current into the chassis through all capacitors of one AC supply: of each phase, the net one, and with a phase lost.
 *   I_p = Σ 2π·f·C·V over the contacts of a phase,  I_net = |I_A + I_B·e^(−j120°) + I_C·e^(+j120°)|
 * Contacts whose phase is not said add in full to whichever phase makes the most. The net current is a convex function
 * of the phase currents, so that its most over the tolerances lies at a corner. A rms at the fundamental; triplen
 * harmonics of the three phases always add. Source: phasors (derived).
 */
import { lineCurrentRmsA } from '../../power/supply.ts'
import type { Phase, Supplied } from './supplied.ts'

export const LIVE_PHASES = ['A', 'B', 'C'] as const
type Live = (typeof LIVE_PHASES)[number]

export type ChassisCurrents = {
  readonly byPhaseA: Readonly<Record<Live, number>>
  /** of contacts whose phase is not said */
  readonly unphasedA: number
  /** every current added, whatever its phase */
  readonly totalA: number
  readonly netA: number
  /** the net current with the phase lost that makes it largest; undefined where no two phases are named */
  readonly phaseLostA: number | undefined
  readonly lost: Live | undefined
}

type Range = { readonly least: number; readonly most: number }

/** Largest figures over the tolerances of the parts. `supplied`: of one supply. */
export function chassisCurrents(supplied: readonly Supplied[]): ChassisCurrents {
  const amps = (one: Supplied, farads: number) => lineCurrentRmsA({ ...one, farads })
  const sum = (phase: Phase | undefined): Range => {
    const of = supplied.filter((one) => one.phase === phase)
    return {
      least: of.reduce((all, one) => all + amps(one, one.leastF), 0),
      most: of.reduce((all, one) => all + amps(one, one.mostF), 0),
    }
  }
  const ranges: Readonly<Record<Live, Range>> = { A: sum('A'), B: sum('B'), C: sum('C') }
  const unphasedA = sum(undefined).most
  const named = LIVE_PHASES.filter((phase) => ranges[phase].most > 0)
  const netWithout = (gone: Live | undefined) => mostNet(ranges, gone) + unphasedA
  const losses = named.map((phase) => ({ phase, amps: netWithout(phase) }))
  const worst = losses.reduce<(typeof losses)[number] | undefined>(
    (most, one) => (most === undefined || one.amps > most.amps ? one : most),
    undefined,
  )
  const byPhaseA = { A: ranges.A.most, B: ranges.B.most, C: ranges.C.most }
  return {
    byPhaseA,
    unphasedA,
    totalA: byPhaseA.A + byPhaseA.B + byPhaseA.C + unphasedA,
    netA: netWithout(undefined),
    phaseLostA: named.length < 2 ? undefined : worst?.amps,
    lost: named.length < 2 ? undefined : worst?.phase,
  }
}

/** Most of |A + B·e^(−j120°) + C·e^(+j120°)| over the corners of the three ranges. */
function mostNet(ranges: Readonly<Record<Live, Range>>, gone: Live | undefined): number {
  const ends = LIVE_PHASES.map((phase) => (phase === gone ? [0] : [ranges[phase].least, ranges[phase].most]))
  let most = 0
  for (const a of ends[0] ?? [])
    for (const b of ends[1] ?? []) for (const c of ends[2] ?? []) most = Math.max(most, netOf(a, b, c))
  return most
}

/** |a + b∠−120° + c∠+120°|; 0 for three alike. */
export const netOf = (a: number, b: number, c: number): number =>
  Math.sqrt(((a - b) ** 2 + (b - c) ** 2 + (c - a) ** 2) / 2)
