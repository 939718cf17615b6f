/** What else is run beside the answer: the other polarity, and the suppressor on the other side of the filter. */
import { formatQuantity } from '../quantity/format.ts'
import type { Finding, Verdict } from '../types.ts'
import type { RunFigures } from './runs.ts'
import type { SurgeSetup } from './setup.ts'

const V = (si: number) => formatQuantity(si, 'voltage')
const A = (si: number) => formatQuantity(si, 'current')
const J = (si: number) => formatQuantity(si, 'energy')

/** Larger by less than this is not worse. */
const WORSE = 1.01

/** Names what the other polarity makes worse; undefined when nothing is. */
export function polarityFinding(
  run: RunFigures,
  other: RunFigures,
  sign: 1 | -1,
  verdict: Verdict,
): Finding | undefined {
  const words = [
    ...(other.load.value > WORSE * run.load.value ? [`${V(other.load.value)} at the load`] : []),
    ...(other.amps.value > WORSE * run.amps.value ? [`${A(other.amps.value)} through the suppressor`] : []),
    ...(other.energyJ > WORSE * run.energyJ ? [`${J(other.energyJ)} in it`] : []),
  ]
  if (words.length === 0) return undefined
  const name = sign === 1 ? 'negative' : 'positive'
  return { verdict, sentence: `The ${name} polarity is worse in: ${words.join(', ')}.` }
}

/** Both sides of the filter, from two runs. */
export function placementFinding(setup: SurgeSetup, run: RunFigures, other: RunFigures): Finding {
  const here = setup.placement === 'connector' ? 'At the connector' : 'Behind the filter'
  const there = setup.placement === 'connector' ? 'behind the filter' : 'at the connector'
  const words = (r: RunFigures) =>
    `${A(r.amps.value)} through the suppressor, load ${V(r.load.value)}${r.capacitor ? `, filter capacitor ${V(r.capacitor.value)}` : ''}`
  const front = setup.filter.topology === 'CL' || setup.filter.topology === 'PI'
  const behind = setup.placement === 'connector' ? other : run
  const ahead = setup.placement === 'connector' ? run : other
  const rings =
    front && behind.amps.value > ahead.amps.value
      ? ' The front capacitor rings through the inductor: here the suppressor behind the filter carries more, not less.'
      : front
        ? ' The front capacitor can ring through the inductor into a suppressor behind it; here it does not carry more there.'
        : ''
  return { verdict: 'ok', sentence: `${here}: ${words(run)}. It would be ${words(other)} ${there}.${rings}` }
}
