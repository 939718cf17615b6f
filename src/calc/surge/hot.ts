/** What a suppressor hotter than 25 °C adds to the volts: its breakdown rises, and what it clamps rises with it. */
import type { SurgeRuns } from './entered.ts'
import type { SurgeSetup } from './setup.ts'
import { hotBreakdownV } from './suppressor.ts'
import type { WorstFigures } from './worst.ts'

/**
 * Volts the breakdown gains at a temperature above 25 °C, as far as the pulse reaches. 0 where the part is not in the way
 * or never conducts. Without an inductor nothing rises above the open volts of the pulse on top of those of the line.
 */
export function hotRiseOf(
  setup: SurgeSetup,
  { ambientC, runs, worst }: { readonly ambientC: number; readonly runs: SurgeRuns; readonly worst: WorstFigures },
): number {
  const { met, placement } = setup
  if (!met) return 0
  const hotV = hotBreakdownV({ mostV: met.mostV, ambientC })
  const ends = placement === 'connector' ? worst.connector : worst.load
  const reachesV = Math.max(ends.value, ...runs.byWay.map(({ clamp }) => clamp.value))
  if (reachesV < KNEE * met.leastV) return 0
  return Math.max(0, (swings(setup) ? hotV : Math.min(hotV, openVoltsOf(setup))) - met.mostV)
}

/** This close to its breakdown a part is taken to conduct. */
const KNEE = 0.99

const openVoltsOf = ({ pulse, restV }: SurgeSetup): number =>
  pulse.openCircuitV + Math.max(...restV.map((volts) => Math.abs(volts)))

/** An inductor anywhere can swing the volts above those that drive them. */
const swings = ({ met, filter, lineH }: SurgeSetup): boolean =>
  lineH > 0 || filter.inductanceH > 0 || filter.inductance2H > 0 || (met?.leadH ?? 0) > 0
