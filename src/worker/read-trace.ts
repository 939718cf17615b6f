/** A measured file read away from the screen: a spectrum, or a Touchstone file. */
import { portsInName, readTouchstone } from '../calc/touchstone/read.ts'
import type { TouchstoneReading } from '../calc/touchstone/types.ts'
import { type Blocks, blocksOf } from '../calc/trace/decimate.ts'
import { readTrace } from '../calc/trace/read.ts'
import type { ReadOptions, TraceReading } from '../calc/trace/types.ts'
import { rowsOf } from './rows.ts'
import type { Steps } from './serve.ts'

export type ReadJob = {
  /** a file is opened where it is read: a long text never passes the screen */
  readonly source: Blob | string
  readonly fileName: string
  readonly options: ReadOptions
}

/** What the file holds, what it is drawn by, and its rows in one run of bytes. */
export type ReadSpectrum = Extract<TraceReading, { ok: true }> & { readonly blocks: Blocks; readonly rows: Blob }

export type ReadFile =
  | { readonly is: 'spectrum'; readonly reading: ReadSpectrum | Extract<TraceReading, { ok: false }> }
  | { readonly is: 'network'; readonly text: string; readonly reading: TouchstoneReading }

/** Comments, then the version of a 2.0 file or an option line with unit and parameter: no table of a spectrum begins so. */
const TOUCHSTONE_HEAD = /^\uFEFF?\s*(?:!.*\s+)*(?:\[version\]\s*2|#\s*[kmg]?hz\s+[syzhg]\s)/i

const isTouchstone = (text: string, fileName: string): boolean =>
  portsInName(fileName) !== undefined || /\.ts$/i.test(fileName) || TOUCHSTONE_HEAD.test(text.slice(0, 4000))

export const run = async ({ source, fileName, options }: ReadJob): Promise<Steps<ReadFile>> =>
  read(typeof source === 'string' ? source : await source.text(), fileName, options)

function* read(text: string, fileName: string, options: ReadOptions): Steps<ReadFile> {
  if (isTouchstone(text, fileName)) return { is: 'network', text, reading: yield* readTouchstone(text, { fileName }) }
  const reading = yield* readTrace(text, options)
  if (!reading.ok) return { is: 'spectrum', reading }
  const { spectrum } = reading
  return { is: 'spectrum', reading: { ...reading, blocks: blocksOf(spectrum.db), rows: rowsOf(spectrum) } }
}

/** A spectrum of a million rows is 16 MB. */
export function handedOver(file: ReadFile): readonly ArrayBuffer[] {
  if (file.is !== 'spectrum' || !file.reading.ok) return []
  const { spectrum, blocks } = file.reading
  return [spectrum.hz, spectrum.db, blocks.least, blocks.most].map(({ buffer }) => buffer as ArrayBuffer)
}
