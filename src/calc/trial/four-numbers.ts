/**
 * What a progressive trial says: four numbers, and which of them count. Each step is judged against the bare line; runs
 * that differ, an empty adapter that cures, or a repetition that came out otherwise leave no number at all.
 */
import type { LevelUnit } from '../quantity/level-unit.ts'
import { legFarads } from './solve.ts'
import type { Heard, Place, TrialStep } from './steps.ts'

/** How far readings may be off, and what has to come off for "gone"; decibels. */
export type Scale = { readonly offDb: number; readonly neededDb: number | undefined }

/** `near`: the reading is so close to what is needed that its error decides; it counts on neither side. */
export type Judgement = Heard | 'near' | 'unread'

export type JudgedStep = TrialStep & {
  readonly heard: Judgement
  /** level of the bare line less this level, where both were read; decibels */
  readonly fallDb?: number
}

/**
 * N: largest that did not clear; K: smallest that cleared; G: largest with a good signal; B: smallest that degraded it.
 * Farads as marked where they count; N and G start at 0, K and B at infinity. What degraded the signal at the other place
 * counts here too, as much as it puts on a leg.
 */
export type FourNumbers = {
  readonly notClearedF: number
  readonly clearedF: number
  readonly goodF: number
  readonly degradedF: number
}

export type VoidReason = 'bare-differs' | 'repeat-differs' | 'contact' | 'units' | 'signal-bare' | 'not-monotonic'

/** What is missing before anything is proven. */
export type TrialLack = 'bare-first' | 'bare-last' | 'empty' | 'noise' | 'signal' | 'bare-reading' | 'near'

export type TrialReading = {
  readonly steps: readonly JudgedStep[]
  /** where the capacitors that count stood */
  readonly place: Place
  readonly numbers: FourNumbers
  readonly voids: readonly VoidReason[]
  readonly lacks: readonly TrialLack[]
  /** what did nothing to chassis did something between the wires */
  readonly isDifferential: boolean
}

export const NO_NUMBERS: FourNumbers = {
  notClearedF: 0,
  clearedF: Number.POSITIVE_INFINITY,
  goodF: 0,
  degradedF: Number.POSITIVE_INFINITY,
}

export function readTrial(steps: readonly TrialStep[], scale: Scale): TrialReading {
  const bares = steps.filter(({ part }) => part === 'bare')
  const reference = bares.find(({ noise }) => noise?.is === 'level')?.noise
  const judged = steps.map((step) => judge(step, reference, scale))
  const isDifferential = helps(judged, 'between') && !helps(judged, 'chassis') && tried(judged, 'chassis')
  const place: Place = isDifferential || !tried(judged, 'chassis') ? 'between' : 'chassis'
  const counted = judged.filter((step) => step.part === 'capacitor' && step.place === place)
  const numbers = fourNumbers(counted, degradedAt(judged, place))
  return {
    steps: judged,
    place,
    numbers,
    isDifferential,
    voids: voidsOf(judged, numbers),
    lacks: lacksOf(judged, counted, numbers),
  }
}

/** The four numbers where they count: none of a trial that is void. */
export const countedNumbers = ({ voids, numbers }: TrialReading): FourNumbers =>
  voids.length > 0 ? NO_NUMBERS : numbers

type Reference = { readonly is: 'level'; readonly db: number; readonly unit?: LevelUnit }

function judge(step: TrialStep, reference: TrialStep['noise'], scale: Scale): JudgedStep {
  const { noise } = step
  if (noise === undefined) return { ...step, heard: 'unread' }
  if (noise.is === 'word') return { ...step, heard: noise.word }
  if (reference?.is !== 'level' || !isSameUnit(reference, noise)) return { ...step, heard: 'unread' }
  const fallDb = reference.db - noise.db
  return { ...step, fallDb, heard: heardFrom(fallDb, scale) }
}

const isSameUnit = (a: Reference, b: Reference): boolean => a.unit === b.unit

/** A difference of two readings may be off by both errors. */
function heardFrom(fallDb: number, { offDb, neededDb }: Scale): Judgement {
  const error = 2 * offDb
  if (neededDb !== undefined && neededDb > 0 && fallDb > error) {
    if (fallDb - error >= neededDb) return 'gone'
    if (fallDb + error >= neededDb) return 'near'
  }
  return fallDb > error ? 'less' : fallDb < -error ? 'more' : 'same'
}

const capacitors = (steps: readonly JudgedStep[], place: Place) =>
  steps.filter((step) => step.part === 'capacitor' && step.place === place)
const tried = (steps: readonly JudgedStep[], place: Place) =>
  capacitors(steps, place).some(({ heard }) => heard !== 'unread')
export const isHelped = ({ heard }: JudgedStep): boolean => heard === 'gone' || heard === 'near' || heard === 'less'
const helps = (steps: readonly JudgedStep[], place: Place) => capacitors(steps, place).some(isHelped)

/** What degraded the signal, wherever it stood, as a capacitor that puts as much on a leg at this place. */
const degradedAt = (steps: readonly JudgedStep[], place: Place): readonly number[] =>
  steps
    .filter(({ part, signal }) => part === 'capacitor' && signal === 'degraded')
    .map((step) => legFarads(step) / legFarads({ farads: 1, place }))

function fourNumbers(steps: readonly JudgedStep[], degraded: readonly number[]): FourNumbers {
  const farads = (wanted: (step: JudgedStep) => boolean) => steps.filter(wanted).map((step) => step.farads)
  return {
    notClearedF: Math.max(0, ...farads(({ heard }) => heard === 'less' || heard === 'same' || heard === 'more')),
    clearedF: Math.min(Number.POSITIVE_INFINITY, ...farads(({ heard }) => heard === 'gone')),
    goodF: Math.max(0, ...farads(({ signal }) => signal === 'good')),
    degradedF: Math.min(Number.POSITIVE_INFINITY, ...degraded),
  }
}

function voidsOf(steps: readonly JudgedStep[], numbers: FourNumbers): readonly VoidReason[] {
  const bares = steps.filter(({ part }) => part === 'bare')
  const empties = steps.filter(({ part }) => part === 'empty')
  const levels = steps.flatMap(({ noise }) => (noise?.is === 'level' ? [noise.unit] : []))
  const voids: VoidReason[] = []
  if (bares.some(({ heard }) => heard !== 'same' && heard !== 'unread')) voids.push('bare-differs')
  if (steps.some(({ repeats }) => repeats === 'differed')) voids.push('repeat-differs')
  if (empties.some(({ heard, signal }) => (heard !== 'same' && heard !== 'unread') || signal === 'degraded'))
    voids.push('contact')
  if (new Set(levels).size > 1) voids.push('units')
  if (bares.some(({ signal }) => signal === 'degraded')) voids.push('signal-bare')
  // the same value both ways, or a larger one that loses what a smaller one did
  if (numbers.notClearedF >= numbers.clearedF || numbers.goodF >= numbers.degradedF) voids.push('not-monotonic')
  return voids
}

function lacksOf(
  steps: readonly JudgedStep[],
  counted: readonly JudgedStep[],
  { clearedF }: FourNumbers,
): readonly TrialLack[] {
  const isRead = ({ heard }: JudgedStep) => heard !== 'unread'
  const [first, last] = [steps[0], steps.at(-1)]
  const lacks: TrialLack[] = []
  if (first?.part !== 'bare') lacks.push('bare-first')
  if (last === first || last?.part !== 'bare' || !isRead(last)) lacks.push('bare-last')
  if (!steps.some((step) => step.part === 'empty' && isRead(step))) lacks.push('empty')
  if (!counted.some(isRead)) lacks.push('noise')
  if (!counted.some(({ signal }) => signal !== undefined)) lacks.push('signal')
  // a level says something against the bare line as it was before anything was put in, not as it was left
  const isLevel = ({ noise }: JudgedStep) => noise?.is === 'level'
  const begun = steps.findIndex(({ part }) => part !== 'bare')
  if (steps.some(isLevel) && !steps.slice(0, Math.max(begun, 1)).some(isLevel)) lacks.push('bare-reading')
  // a larger one that may not have cleared takes back what a smaller one did
  if (counted.some(({ heard, farads }) => heard === 'near' && farads >= clearedF)) lacks.push('near')
  return lacks
}
