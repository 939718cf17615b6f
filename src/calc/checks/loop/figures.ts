/** The numbers of the loop check: sum and parallel value of both ends, each end where the readings decide it. */
import { levelConflict, levelIn } from '../../level.ts'
import {
  loopOhmFrom,
  loopSpan,
  type OhmSpan,
  ohmFromLevels,
  otherEnd,
  pairFromSumAndParallel,
} from '../../network/clamp.ts'
import { type EndSpans, endSpans } from '../../network/trial-span.ts'
import type { LevelUnit } from '../../quantity/level-unit.ts'
import type { Figures, Level, Refused } from '../../types.ts'
import { type CapacitorsRead, capacitorsOf } from './capacitors.ts'
import type { LoopGiven } from './inputs.ts'

export type LoopFigures = Figures & {
  /** a clamp was read */
  readonly loop?: OhmSpan
  /** both ends, the larger first, from sum and parallel value */
  readonly pair?: readonly [number, number]
  /** sum and parallel value that no two resistances have */
  readonly isContradictory?: true
  /** one capacitor that lowers nothing, or two that no passive circuit explains */
  readonly refusedTrial?: 'one' | 'two'
  readonly parallelFrom?: 'one' | 'two'
  /** susceptance beside the parallel value, from two capacitors */
  readonly siemens?: number
  /** two capacitors leave no reactance beside both ends, over the whole error of the readings */
  readonly isShownReal?: true
  readonly load?: OhmSpan & { readonly ohm: number }
  /** the load alone is more than the whole loop: both ends cancel */
  readonly isResonant?: true
  /** nothing speaks against what the ends are taken for */
  readonly areResistances?: true
  /** Rs ∥ Rl over the whole error of the readings */
  readonly parallel?: OhmSpan
  /** both ends over the whole error of clamp and capacitors; where a reading may be off */
  readonly ends?: EndSpans
  /** the capacitors were read from the steps of a trial on this line */
  readonly isOfTrial?: true
}

/** Every clamp is taken at the middle of what is named of it for the one figure shown. */
const middle = (values: readonly number[]): number => Math.sqrt(Math.min(...values) * Math.max(...values))

/** What the fields are read in. No impedance is known here, so that a level of another kind stays what it is: dBV is dBµV. */
export const CURRENT_UNIT = 'dBµA'
export const VOLTAGE_UNIT = 'dBµV'

const isOfAnother = (level: Level | undefined, unit: LevelUnit): level is Level =>
  level !== undefined && levelConflict(level, { db: 0, unit }, undefined) !== undefined

const wrongUnit = (key: string, level: Level, unit: LevelUnit): Refused => ({
  ok: false,
  issues: [
    {
      key,
      code: 'unit-other',
      message: `This is ${level.unit}; an impedance needs a level in ${unit} here, or a bare number meant so.`,
    },
  ],
})

function clampOf({ clampOhm, fallDb, offDb }: LoopGiven): { readonly loop?: OhmSpan; readonly loopOhm?: number } {
  if (clampOhm === undefined || clampOhm.length === 0 || fallDb === undefined) return {}
  // a fall is the difference of two readings
  const loop = loopSpan({ clampOhms: clampOhm, fallDb, offDb: 2 * (offDb ?? 0) })
  return fallDb > 0 ? { loop, loopOhm: loopOhmFrom({ clampOhm: middle(clampOhm), fallDb }) } : { loop }
}

/** |Z| of the load by current and voltage; both readings may be off. */
function loadOf({ currentDb, voltageDb, offDb = 0 }: LoopGiven): (OhmSpan & { readonly ohm: number }) | undefined {
  if (currentDb === undefined || voltageDb === undefined) return undefined
  const [dbMicrovolt, dbMicroampere] = [levelIn(voltageDb, VOLTAGE_UNIT), levelIn(currentDb, CURRENT_UNIT)]
  const at = (off: number) => ohmFromLevels({ dbMicrovolt: dbMicrovolt + off, dbMicroampere: dbMicroampere - off })
  return { ohm: at(0), least: at(-offDb), most: at(offDb) }
}

const isReal = (value: number | undefined): value is number => value !== undefined && Number.isFinite(value)

/** A tenth of the conductance beside it and more: what stands side by side is no resistance alone. */
const REACTIVE_FROM = 0.1

export const isReactive = ({
  siemens,
  parallelOhm,
}: {
  readonly siemens?: number | undefined
  readonly parallelOhm?: number | undefined
}): boolean => siemens !== undefined && parallelOhm !== undefined && Math.abs(siemens) * parallelOhm > REACTIVE_FROM

/** The values that exist, infinite ones left out. */
const existing = (values: Readonly<Record<string, number | undefined>>): Readonly<Record<string, number>> =>
  Object.fromEntries(Object.entries(values).filter((entry): entry is [string, number] => isReal(entry[1])))

/**
 * What the source is, where the readings decide it: by the pair and the end that was named, or by loop and load. With
 * readings that may be off the load is handed over at its least, where a capacitor has least to work with, and the source
 * as far as their sum may go, where an inductor has.
 */
function sourceOf(
  { higherEnd }: LoopGiven,
  pair: readonly [number, number] | undefined,
  ends: EndSpans | undefined,
  loop: OhmSpan | undefined,
  load: OhmSpan | undefined,
): { readonly source?: OhmSpan; readonly loadOhm?: number } {
  if (load !== undefined) return loop === undefined ? {} : { source: otherEnd(loop, load) }
  if (higherEnd === undefined) return {}
  if (ends !== undefined && loop !== undefined) {
    const [own, other] = higherEnd === 'source' ? [ends.higher, ends.lower] : [ends.lower, ends.higher]
    return {
      source: { least: own.least, most: Math.max(own.most, own.most + other.most - other.least) },
      loadOhm: other.least,
    }
  }
  if (pair === undefined) return {}
  const [higher, lower] = pair
  const [sourceOhm, loadOhm] = higherEnd === 'source' ? [higher, lower] : [lower, higher]
  return { source: { least: sourceOhm, most: sourceOhm }, loadOhm }
}

/** Both ends over the errors; none where no reading was said to be off, or the clamp leaves the sum open. */
function endsOf(given: LoopGiven, { parallel, offDb: off }: CapacitorsRead): EndSpans | undefined {
  const { clampOhm, fallDb } = given
  if (parallel === undefined || clampOhm === undefined || clampOhm.length === 0 || fallDb === undefined)
    return undefined
  if (off === 0 && parallel.least === parallel.most) return undefined
  // real parts: the fall itself, not the triangle of a phase that is not known
  const sum = { least: sumOhm(Math.min(...clampOhm), fallDb + off), most: sumOhm(Math.max(...clampOhm), fallDb - off) }
  // a clamp that may have done nothing leaves the sum without a lower end
  return Number.isFinite(sum.least) ? endSpans(sum, parallel) : undefined
}

const sumOhm = (clampOhm: number, fallDb: number): number =>
  fallDb > 0 ? loopOhmFrom({ clampOhm, fallDb }) : Number.POSITIVE_INFINITY

export function loopFigures(given: LoopGiven): LoopFigures | Refused {
  const { currentDb, voltageDb } = given
  if (isOfAnother(currentDb, CURRENT_UNIT)) return wrongUnit('currentDb', currentDb, CURRENT_UNIT)
  if (isOfAnother(voltageDb, VOLTAGE_UNIT)) return wrongUnit('voltageDb', voltageDb, VOLTAGE_UNIT)
  const { loop, loopOhm } = clampOf(given)
  const capacitors = capacitorsOf(given)
  const { parallelOhm, parallel, parallelFrom, siemens, refusedTrial, isOfTrial } = capacitors
  const both = loopOhm !== undefined && parallelOhm !== undefined
  const pair = both ? pairFromSumAndParallel({ sumOhm: loopOhm, parallelOhm }) : undefined
  const load = loadOf(given)
  const ends = endsOf(given, capacitors)
  const { source, loadOhm = load?.least } = sourceOf(given, pair, ends, loop, load)
  // |Zs + Zl| < |Zl| leaves more than a quarter turn between the ends: no two resistances, and a part in the line moves it
  const isResonant = load !== undefined && loop !== undefined && load.least > loop.most
  // no two resistances have what clamp and capacitor read, over no error of the readings either
  const isRefuted = both && pair === undefined && ends === undefined
  // ends worked out as if no reading were off stand for nothing that was measured
  const isErrorKnown = given.offDb !== undefined
  // by current and voltage the load is a size of its own; by capacitors both ends are taken for resistances
  const isShownReal = (capacitors.reactiveShare ?? Number.POSITIVE_INFINITY) <= REACTIVE_FROM
  const areResistances = load !== undefined ? !isResonant && !isRefuted : isShownReal
  // A span without an end is handed to nobody.
  const isSpan = isReal(source?.most)
  return {
    // the question is for both ends: it is answered when both are handed over, and surely where both were seen to be resistances
    verdict: !isSpan || loadOhm === undefined ? 'unknown' : areResistances && isErrorKnown ? 'ok' : 'marginal',
    bounds: [],
    rungs: [],
    values: existing({
      loopOhm,
      loopLeastOhm: loop?.least,
      loopMostOhm: loop?.most,
      parallelOhm,
      parallelLeastOhm: parallel?.least,
      parallelMostOhm: parallel?.most,
      higherLeastOhm: ends?.higher.least,
      higherMostOhm: ends?.higher.most,
      lowerLeastOhm: ends?.lower.least,
      lowerMostOhm: ends?.lower.most,
      higherOhm: pair?.[0],
      lowerOhm: pair?.[1],
      loadOhm,
      sourceLeastOhm: isSpan ? source?.least : undefined,
      sourceMostOhm: isSpan ? source?.most : undefined,
    }),
    ...(parallelFrom === undefined ? {} : { parallelFrom }),
    ...(siemens === undefined ? {} : { siemens }),
    ...(refusedTrial === undefined ? {} : { refusedTrial }),
    ...(parallel === undefined ? {} : { parallel }),
    ...(ends === undefined ? {} : { ends }),
    ...(isOfTrial ? { isOfTrial } : {}),
    ...(loop === undefined ? {} : { loop }),
    ...(pair === undefined ? {} : { pair }),
    ...(both && pair === undefined ? { isContradictory: true } : {}),
    ...(load === undefined ? {} : { load }),
    ...(isResonant ? { isResonant } : {}),
    ...(areResistances ? { areResistances } : {}),
    ...(isShownReal ? { isShownReal } : {}),
  }
}
