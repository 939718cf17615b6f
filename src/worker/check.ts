/** Any check worked out away from the screen. */
import { checkById } from '../calc/registry.ts'
import type { Progress, Result } from '../calc/types.ts'
import { answerTo, type CheckJob } from './answer.ts'

export const run = (job: CheckJob): Generator<Progress, Result> => answerTo(checkById(job.check), job)
