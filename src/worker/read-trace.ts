/** A measured file read away from the screen: a spectrum, or a Touchstone file. */
import { portsInName, readTouchstone } from '../calc/touchstone/read.ts'
import type { TouchstoneReading } from '../calc/touchstone/types.ts'
import { readTrace } from '../calc/trace/read.ts'
import type { ReadOptions, TraceReading } from '../calc/trace/types.ts'
import type { Progress } from '../calc/types.ts'

export type ReadJob = { readonly text: string; readonly fileName: string; readonly options: ReadOptions }

export type ReadFile =
  | { readonly is: 'spectrum'; readonly reading: TraceReading }
  | { readonly is: 'network'; readonly reading: TouchstoneReading }

/** What an option line or a keyword of version 2.0 begins with, before any figure. */
const TOUCHSTONE_HEAD = /^(?:\s|!.*)*(?:\[version\]|#\s*(?:[kmg]?hz\b|[syzhg]\s|$))/im

const isTouchstone = ({ text, fileName }: ReadJob): boolean =>
  portsInName(fileName) !== undefined || (/\.(?:ts|txt)?$/i.test(fileName) && TOUCHSTONE_HEAD.test(text.slice(0, 4000)))

export function* run(job: ReadJob): Generator<Progress, ReadFile> {
  if (isTouchstone(job)) return { is: 'network', reading: yield* readTouchstone(job.text, { fileName: job.fileName }) }
  return { is: 'spectrum', reading: yield* readTrace(job.text, job.options) }
}
