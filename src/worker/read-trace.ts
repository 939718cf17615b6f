/** A measured file read away from the screen: a spectrum, or a Touchstone file. */
import { portsInName, readTouchstone } from '../calc/touchstone/read.ts'
import type { TouchstoneReading } from '../calc/touchstone/types.ts'
import { type Blocks, blocksOf } from '../calc/trace/decimate.ts'
import { readTrace } from '../calc/trace/read.ts'
import type { ReadOptions, TraceReading } from '../calc/trace/types.ts'
import type { Progress } from '../calc/types.ts'

export type ReadJob = {
  /** a file is opened where it is read: a long text never passes the screen */
  readonly source: Blob | string
  readonly fileName: string
  readonly options: ReadOptions
}

export type ReadFile =
  /** there is no way to open a file here: its text has to be sent */
  | { readonly is: 'needs-text' }
  | { readonly is: 'spectrum'; readonly reading: TraceReading; readonly blocks: Blocks | undefined }
  | { readonly is: 'network'; readonly text: string; readonly reading: TouchstoneReading }

/** Comments, then the version of a 2.0 file or an option line with unit and parameter: no table of a spectrum begins so. */
const TOUCHSTONE_HEAD = /^\uFEFF?\s*(?:!.*\s+)*(?:\[version\]\s*2|#\s*[kmg]?hz\s+[syzhg]\s)/i

const isTouchstone = (text: string, fileName: string): boolean =>
  portsInName(fileName) !== undefined || /\.ts$/i.test(fileName) || TOUCHSTONE_HEAD.test(text.slice(0, 4000))

/** Only a worker has it. */
declare const FileReaderSync: (new () => { readonly readAsText: (blob: Blob) => string }) | undefined

function textOf(source: ReadJob['source']): string | undefined {
  if (typeof source === 'string') return source
  return typeof FileReaderSync === 'undefined' ? undefined : new FileReaderSync().readAsText(source)
}

export function* run({ source, fileName, options }: ReadJob): Generator<Progress, ReadFile> {
  const text = textOf(source)
  if (text === undefined) return { is: 'needs-text' }
  if (isTouchstone(text, fileName)) return { is: 'network', text, reading: yield* readTouchstone(text, { fileName }) }
  const reading = yield* readTrace(text, options)
  return { is: 'spectrum', reading, blocks: reading.ok ? blocksOf(reading.spectrum.db) : undefined }
}
