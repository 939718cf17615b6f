/** A check that provides facts, worked out away from the screen: what only other checks compute with stays away too. */
import { loopCheck } from '../calc/checks/loop/check.ts'
import { needCheck } from '../calc/checks/need/check.ts'
import { traceCheck } from '../calc/checks/trace/check.ts'
import { trialCheck } from '../calc/checks/trial/check.ts'
import type { Check, Progress, Result } from '../calc/types.ts'
import { answerTo, type CheckJob } from './answer.ts'

const CHECKS: readonly Check[] = [needCheck, loopCheck, trialCheck, traceCheck]

export const run = (job: CheckJob): Generator<Progress, Result> =>
  answerTo(
    CHECKS.find(({ id }) => id === job.check),
    job,
  )
