/** The parts closest to a measured filter, searched away from the screen. */
import { type Fitted, fitFilter, fitImpedance } from '../calc/touchstone/fit.ts'
import type { Network } from '../calc/touchstone/types.ts'
import type { Progress } from '../calc/types.ts'

export function* run(network: Network): Generator<Progress, readonly Fitted[]> {
  return yield* network.portCount === 1 ? fitImpedance(network) : fitFilter(network)
}
