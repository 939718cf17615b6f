/** A surge worked out away from the screen, without what the other checks compute with. */
import { surgeCheck } from '../calc/checks/surge/check.ts'
import type { Progress, Result } from '../calc/types.ts'
import { answerTo, type CheckJob } from './answer.ts'

export const run = (job: CheckJob): Generator<Progress, Result> =>
  answerTo(job.check === surgeCheck.id ? surgeCheck : undefined, job)
