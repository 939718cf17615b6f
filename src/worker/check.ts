/** A check that provides no facts and is no surge, worked out away from the screen. */
import { plainCheckById } from '../calc/plain-checks.ts'
import type { Progress, Result } from '../calc/types.ts'
import { answerTo, type CheckJob } from './answer.ts'

export const run = (job: CheckJob): Generator<Progress, Result> => answerTo(plainCheckById(job.check), job)
