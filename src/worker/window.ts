/** A window worked out away from the screen, without the words of any other check. */
import { windowCheck } from '../calc/checks/window/check.ts'
import type { Progress, Result } from '../calc/types.ts'
import { answerTo, type CheckJob } from './answer.ts'

export const run = (job: CheckJob): Generator<Progress, Result> =>
  answerTo(job.check === windowCheck.id ? windowCheck : undefined, job)
