/**
 * Closing a complaint out: what was before and after, cause and cure, who checks, and everything put back. Closed as cured
 * only with a proof; otherwise "closed, not proved". What is typed stands in the first line of one table of the complaint.
 */
import { formatEstimate, formatQuantity } from '../calc/quantity/format.ts'
import { parseQuantity } from '../calc/quantity/parse.ts'
import type { TraceFinding } from '../calc/trace/proof.ts'
import type { Line, Trial } from '../calc/types.ts'
import { type StoredTrace, traceProof } from './close-out-trace.ts'
import type { Filled, FilledRow } from './fill-ins.ts'

/** The table of a complaint these texts are kept in. Permanent. */
export const CLOSE_OUT = 'close-out'

/** Typed texts, in the order they are asked for. Ids are permanent. */
export const CLOSE_TEXTS = [
  { id: 'before', label: 'Before', hint: 'what was heard or read, with everything as it was' },
  { id: 'after', label: 'After', hint: 'the same place, the same settings' },
  { id: 'cause', label: 'Cause' },
  { id: 'cure', label: 'Cure', hint: 'what was done, by which data' },
  { id: 'partRemoved', label: 'Part taken out', hint: 'name, serial, where it went; or none' },
  { id: 'checkedBy', label: 'Checked by', hint: 'who looks at it a second time' },
] as const

/** Everything that was opened or loaded for a test is put back, each of them by itself. Ids are permanent. */
export const RESTORE_ITEMS = [
  { id: 'loads', label: 'Loads connected again, dummy loads off' },
  { id: 'breakers', label: 'Breakers in, collars off' },
  { id: 'plugs', label: 'Plugs mated and locked' },
  { id: 'clamps', label: 'Clamps and probes counted in' },
  { id: 'adapters', label: 'Trial adapters counted in' },
  { id: 'function', label: 'Function tested' },
  { id: 'inspected', label: 'Inspected where required' },
] as const
export type RestoreId = (typeof RESTORE_ITEMS)[number]['id']

/** Whether it may be left out: an adapter that was used has to come back, and every cure is tried out. */
export const mayBeNone = (id: RestoreId, hasTrials: boolean): boolean =>
  id !== 'function' && !(id === 'adapters' && hasTrials)

export type Proof =
  | { readonly is: 'repeated' }
  /** `isCompared`: one before it is stored, too; `finding`: what it says against its limit */
  | {
      readonly is: 'trace'
      readonly isCompared: boolean
      readonly finding: Extract<TraceFinding, { holds: true }>
    }
  /** `chance`: of no event in that exposure though nothing is cured */
  | { readonly is: 'exposure'; readonly chance: number }
  /** `lacks`: why the traces that were named or chosen do not count, in a sentence */
  | { readonly is: 'none'; readonly chance?: number; readonly lacks?: string }

/** Mean intervals without an event after which it counts: e⁻³ is 5 %. */
export const MEAN_INTERVALS = 3

/** e^(−exposure / mean interval): events that come by chance, at one rate. Both above 0, in the same unit. */
export const chanceIfUncured = (exposure: number, meanInterval: number): number => Math.exp(-exposure / meanInterval)

const text = (row: FilledRow, id: string): string => (row[id] ?? '').trim()

/** Times as people write them: those of use in hours, those of the calendar in days. Parked for a day is no day of use. */
const TIMES: Readonly<Record<string, readonly ['h' | 'day', number]>> = {
  s: ['h', 1 / 3600],
  sec: ['h', 1 / 3600],
  second: ['h', 1 / 3600],
  min: ['h', 1 / 60],
  minute: ['h', 1 / 60],
  h: ['h', 1],
  hr: ['h', 1],
  hour: ['h', 1],
  day: ['day', 1],
  week: ['day', 7],
}

type Amount = { readonly count: number; readonly unit: string }

/** What may stand before a time and makes it one of use: "20 flight hours", "6 engine hours". */
const OF_USE: readonly string[] = ['flight', 'flying', 'block', 'engine', 'running', 'operating']

/** Words in lower case and in the singular. */
const wordsOf = (typed: string): readonly string[] =>
  (typed.toLowerCase().match(/\p{L}+/gu) ?? []).map((word) => word.replace(/(?<=.)s$/u, ''))

const isTime = (word: string): boolean => Object.hasOwn(TIMES, word)

/** A number and the words behind it; undefined where there is no number above 0. */
function numbered(typed: string): { readonly count: number; readonly words: readonly string[] } | undefined {
  const tail = /[\p{L}\s]+$/u.exec(typed)?.[0] ?? ''
  const read = parseQuantity(typed.slice(0, typed.length - tail.length), 'number')
  return read.is === 'value' && read.si > 0 ? { count: read.si, words: wordsOf(tail) } : undefined
}

/**
 * "0.1 events per hour" are events in an hour, and no time between two; "6 h per event" is a time: it stands ahead. Half
 * an hour per day is a rate again.
 */
function isRate(typed: string): boolean {
  const { words } = numbered(typed) ?? { words: [] }
  const at = words.findIndex((word) => ['per', 'a', 'an', 'each', 'every'].includes(word))
  return at >= 0 && (!words.slice(0, at).some(isTime) || words.slice(at + 1).some(isTime))
}

/**
 * A number and what it counts, as "20 h" or "12,5 flights"; times in hours or days. Undefined where there is none above 0,
 * and where a word nobody knows stands before a time: "0.1 pro h" is no tenth of an hour, "3 half hours" are no three.
 */
function amount(typed: string): Amount | undefined {
  const read = numbered(typed)
  if (read === undefined) return undefined
  const { count, words } = read
  const ahead = words.findIndex((word) => !OF_USE.includes(word))
  const [named = '', next = ''] = ahead < 0 ? [] : words.slice(ahead)
  const time = isTime(named) ? TIMES[named] : undefined
  if (time !== undefined) return { count: count * time[1], unit: time[0] }
  return isTime(next) ? undefined : { count, unit: words[0] ?? '' }
}

const TWO_UNITS =
  'The mean interval and the time since then count different things: write both in one unit, such as 6 h and 20 h of use, or both in days.'
const A_RATE =
  'The mean interval is the time from one event to the next, such as 6 h, and not how many come in an hour.'
const A_DAILY_RATE = 'Write the whole time since then, not how much in a day.'

/**
 * The best proof there is: written down, or a stored trace of the complaint (`traces`: undefined until they are read). A
 * trace that was chosen and misses its limit is a proof of the contrary.
 */
export function proofOf(row: FilledRow, traces: readonly StoredTrace[] | undefined): Proof {
  const measured = traceProof(row, traces)
  if (measured.is === 'missed')
    return { is: 'none', lacks: `${measured.sentence} That outweighs what is said of repetitions and of time.` }
  if (text(row, 'repeats') === 'agreed') return { is: 'repeated' }
  if (measured.is === 'stored')
    return { is: 'trace', isCompared: measured.before !== undefined, finding: measured.finding }
  const said = measured.is === 'lacking' ? [measured.sentence] : []
  const none = (sentences: readonly string[], chance?: number): Proof => ({
    is: 'none',
    ...(chance === undefined ? {} : { chance }),
    ...(sentences.length === 0 ? {} : { lacks: sentences.join(' ') }),
  })
  const [meanText, exposedText] = [text(row, 'meanInterval'), text(row, 'exposure')]
  if (isRate(meanText)) return none([...said, A_RATE])
  if (isRate(exposedText)) return none([...said, A_DAILY_RATE])
  const [mean, exposed] = [amount(meanText), amount(exposedText)]
  if (mean === undefined || exposed === undefined) return none(said)
  if (mean.unit !== exposed.unit) return none([...said, TWO_UNITS])
  const chance = chanceIfUncured(exposed.count, mean.count)
  return exposed.count >= MEAN_INTERVALS * mean.count ? { is: 'exposure', chance } : none(said, chance)
}

/** A repetition that came out otherwise outweighs every other proof. */
export const isContradicted = (row: FilledRow): boolean => text(row, 'repeats') === 'differed'

export type ClosingLines = readonly Pick<Line, 'id' | 'name' | 'trials' | 'facts'>[]

/** Lines with a trial whose last adapter nobody has written out. */
export function adaptersIn(lines: ClosingLines): readonly { readonly lineId: string; readonly name: string }[] {
  return lines.flatMap((line, index) => {
    const { trialSteps, trialRemoved } = line.facts
    const isUnderWay =
      trialSteps !== undefined && hasAdapter(trialSteps.text) && (trialRemoved?.text ?? '').trim() === ''
    const isIn = isUnderWay || line.trials.some((trial) => hasAdapter(trial.steps) && !isRemoved(trial))
    return isIn ? [{ lineId: line.id, name: line.name.trim() === '' ? `line ${index + 1}` : line.name }] : []
  })
}

const isRemoved = ({ removed }: Trial): boolean => removed.trim() !== ''
/** Anything but the bare line. */
const hasAdapter = (steps: string): boolean =>
  steps.split(';').some((step) => step.trim() !== '' && step.trim().toLowerCase() !== 'bare')

export const hasTrials = (lines: readonly Pick<Line, 'trials' | 'facts'>[]): boolean =>
  lines.some(({ trials, facts }) => trials.length > 0 || hasAdapter(facts.trialSteps?.text ?? ''))

export type Closing = {
  readonly row: FilledRow
  readonly proof: Proof
  /** what is still to be put back, in words */
  readonly restore: readonly string[]
  /** lines with an adapter that nobody wrote out: part of that */
  readonly adapters: ReturnType<typeof adaptersIn>
  /** what else has to be written before it can be closed at all */
  readonly missing: readonly string[]
  /** a text somebody else typed in the same field meanwhile */
  readonly others: readonly FilledRow[]
  readonly status: 'open' | 'cured' | 'not-proved'
}

/**
 * Where the closing stands. It stays closed only as long as what it rests on does. `traces`: those stored with the lines,
 * undefined until they are read.
 */
export function closingOf(
  tables: Filled | undefined,
  lines: ClosingLines,
  traces: readonly StoredTrace[] | undefined,
): Closing {
  const [row = {}, ...others] = tables?.[CLOSE_OUT] ?? []
  const used = hasTrials(lines)
  const adapters = adaptersIn(lines)
  const restore = [
    ...RESTORE_ITEMS.filter(({ id }) => !isRestored(row, id, used)).map(({ label }) => label),
    ...adapters.map(({ name }) => `Trial on ${name}: removed and recorded`),
  ]
  const missing = (['cause', 'cure', 'checkedBy'] as const).flatMap((id) =>
    text(row, id) === '' ? CLOSE_TEXTS.flatMap((one) => (one.id === id ? [one.label] : [])) : [],
  )
  const ours = traces?.filter(({ owner }) => lines.some(({ id }) => id === owner))
  const proof = isContradicted(row) ? ({ is: 'none' } as const) : proofOf(row, ours)
  return {
    row,
    proof,
    restore,
    adapters,
    missing,
    others,
    status: statusOf(row, proof, restore.length + missing.length),
  }
}

const isRestored = (row: FilledRow, id: RestoreId, used: boolean): boolean => {
  const said = text(row, `restore-${id}`)
  return said === 'done' || (said === 'none' && mayBeNone(id, used))
}

function statusOf(row: FilledRow, proof: Proof, openCount: number): Closing['status'] {
  const said = text(row, 'closed')
  if (openCount > 0 || (said !== 'cured' && said !== 'not-proved')) return 'open'
  return said === 'cured' && proof.is === 'none' ? 'open' : said
}

/** Why it may be closed as cured, or why not, in a sentence. */
export function proofSentence({ proof, row }: Pick<Closing, 'proof' | 'row'>): string {
  const percent = (chance: number) => `${Number((100 * chance).toPrecision(2))} %`
  if (isContradicted(row)) return 'A repetition differed: nothing is proven until it agrees.'
  switch (proof.is) {
    case 'repeated':
      return 'On, off, on agreed: closed as cured.'
    case 'trace':
      return traceSentence(proof.finding)
    case 'exposure':
      return `No event over three mean intervals and more: closed as cured. If nothing were cured, that would happen by chance in ${percent(proof.chance)} of cases.`
    case 'none': {
      const why =
        proof.chance === undefined
          ? 'No proof yet: on, off, on that agreed, a measured trace, or no event over three mean intervals. Otherwise it is closed, not proved.'
          : `Not long enough: without a cure it would stay quiet that long by chance in ${percent(proof.chance)} of cases. Three mean intervals make it ${percent(chanceIfUncured(MEAN_INTERVALS, 1))}.`
      return proof.lacks === undefined ? why : `${proof.lacks} ${why}`
    }
  }
}

function traceSentence({ limit, spareDb, spareAtHz, worst }: Extract<TraceFinding, { holds: true }>): string {
  const [hertz, least] = [
    (hz: number) => formatQuantity(hz, 'frequency', 4),
    (db: number) => formatEstimate(db, 'decibel', 'most'),
  ]
  const was =
    worst === undefined
      ? ''
      : ` Where it was worst before, ${formatEstimate(worst.overDb, 'decibel', 'least')} over at ${hertz(worst.hz)}, ${least(worst.lossDb)} came off.`
  return `Measured after the cure: under ${limit} over its whole span, by ${least(spareDb)} and more (at ${hertz(spareAtHz)}).${was} Closed as cured.`
}

/** "Closed as cured", "Closed, not proved" or "Open", for lists and paper. */
export const STATUS_WORDS: Readonly<Record<Closing['status'], string>> = {
  open: 'Open',
  cured: 'Closed as cured',
  'not-proved': 'Closed, not proved',
}
