/** A check that provides facts, worked out away from the screen: what only other checks compute with stays away too. */
import { providerById } from '../calc/providers.ts'
import type { Progress, Result } from '../calc/types.ts'
import { answerTo, type CheckJob } from './answer.ts'

export const run = (job: CheckJob): Generator<Progress, Result> => answerTo(providerById(job.check), job)
