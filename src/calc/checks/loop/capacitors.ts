/** What capacitors say of the loop: those entered here, or the steps of a trial on this line. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { OhmSpan } from '../../network/clamp.ts'
import { readTrial } from '../../trial/four-numbers.ts'
import { type ReadPair, readPair, solveTrial, USUAL_ADAPTER_FRAC } from '../../trial/solve.ts'
import { stepsOf, unplacedRows } from '../../trial/steps.ts'
import type { LoopGiven } from './inputs.ts'

/** What each reading of a trial may be off by where nobody said: as the trial itself assumes. */
export const TRIAL_OFF_DB = 1
const TRIAL_LEAD_H = 10e-9

export type CapacitorsRead = {
  readonly parallelOhm?: number
  readonly siemens?: number
  /** largest susceptance over conductance that two readings leave open inside their error */
  readonly reactiveShare?: number
  readonly parallel?: OhmSpan
  readonly parallelFrom?: 'one' | 'two'
  /** one capacitor that lowers nothing, or two that no passive circuit explains */
  readonly refusedTrial?: 'one' | 'two'
  readonly isOfTrial?: true
  /** what a fall may be off by */
  readonly offDb: number
}

export function capacitorsOf(given: LoopGiven): CapacitorsRead {
  const { readAtHz } = given
  // a fall is the difference of two readings
  const offDb = 2 * (given.offDb ?? 0)
  if (readAtHz === undefined) return { offDb }
  const entered = enteredPair(given)
  if (entered !== undefined) return solved(entered, readAtHz, offDb)
  const tried = triedPair(given, readAtHz)
  return tried === undefined
    ? { offDb }
    : {
        ...solved(tried, readAtHz, 2 * (given.offDb ?? TRIAL_OFF_DB), given.adapterFrac ?? USUAL_ADAPTER_FRAC),
        isOfTrial: true,
      }
}

function enteredPair({ firstF, firstDb, secondF, secondDb }: LoopGiven): ReadPair | undefined {
  if (firstF === undefined || firstDb === undefined) return undefined
  const first = { farad: firstF, dropDb: firstDb }
  return secondF === undefined || secondDb === undefined
    ? { first }
    : { first, second: { farad: secondF, dropDb: secondDb } }
}

function triedPair(given: LoopGiven, hz: number): ReadPair | undefined {
  const { steps, places } = given
  if (steps === undefined || unplacedRows({ steps, places }).length > 0) return undefined
  const scale = { offDb: given.offDb ?? TRIAL_OFF_DB, neededDb: undefined }
  const reading = readTrial(stepsOf({ steps, noise: given.noise, places }), scale)
  const isPair = given.lineKind !== undefined && (lineKindById(given.lineKind)?.isPair ?? false)
  return readPair(reading, { hz, leadH: given.leadH ?? TRIAL_LEAD_H, isPair })
}

function solved(pair: ReadPair, hz: number, offDb: number, adapterFrac = 0): CapacitorsRead {
  const from = pair.second === undefined ? 'one' : 'two'
  const { parallel, span, reactiveShare } = solveTrial(pair, hz, offDb, adapterFrac)
  if (parallel === undefined) return { refusedTrial: from, offDb }
  return {
    parallelOhm: parallel.ohm,
    parallelFrom: from,
    offDb,
    ...(from === 'two' ? { siemens: parallel.siemens } : {}),
    ...(reactiveShare === undefined ? {} : { reactiveShare }),
    ...(span === undefined || offDb + adapterFrac === 0 ? {} : { parallel: span }),
  }
}
