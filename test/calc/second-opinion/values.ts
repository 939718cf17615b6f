/** Random but repeatable parts, each with its unit. */
import fc from 'fast-check'
import { logRange } from '../fuzz/log-range.ts'

export type Parts = {
  readonly Rs: number
  readonly RL: number
  readonly C: number
  readonly C2: number
  readonly L: number
  readonly L2: number
  readonly f: number
}

const parts = fc.record({
  Rs: logRange(0.5, 5e3),
  RL: logRange(0.5, 5e3),
  C: logRange(20e-12, 2e-6),
  C2: logRange(20e-12, 2e-6),
  L: logRange(50e-9, 100e-6),
  L2: logRange(50e-9, 100e-6),
  f: logRange(1e4, 1e9),
})

export const SEED = 61_803
export const samples: readonly Parts[] = fc.sample(parts, { seed: SEED, numRuns: 25 })

/** The parts as mathjs takes them. */
export function withUnits(p: Parts) {
  return {
    Rs: [p.Rs, 'ohm'],
    RL: [p.RL, 'ohm'],
    C: [p.C, 'F'],
    C2: [p.C2, 'F'],
    L: [p.L, 'H'],
    L2: [p.L2, 'H'],
    f: [p.f, 'Hz'],
  } as const
}
