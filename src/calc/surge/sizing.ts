/** The other way round: which stand-off, dynamic resistance and pulse power carry this surge, smallest first. */
import { PULSE_POWER_CLASSES_W, STAND_OFF_STEPS_V } from '../../reference/suppressors.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Cell, Picture, Progress } from '../types.ts'
import { within } from './progress.ts'
import { deratedShare, repeatFactor } from './rating.ts'
import { runOnce, usedFracOf } from './runs.ts'
import { circuitOf, type FittedPart, type SurgeSetup, variantsOf } from './setup.ts'
import { breakdownOfClass, dynamicOhmOfClass } from './suppressor.ts'

export type SizingQuestion = {
  readonly setup: SurgeSetup
  readonly busMaxV: number
  readonly withstandV: number
  readonly factor: number
  readonly ambientC: number
  readonly zeroC: number
  readonly like: Pick<FittedPart, 'bidirectional' | 'capacitanceF' | 'leadH'>
}

export type Size = {
  readonly ratedPulseW: number
  readonly standoffV: number
  readonly dynamicOhm: number
  readonly loadV: number
  readonly usedFrac: number
}

export type SizeRow =
  | { readonly is: 'works'; readonly ratedPulseW: number; readonly from: Size; readonly to: Size }
  | { readonly is: 'fails'; readonly ratedPulseW: number; readonly why: string }

/** Coarse: a table of classes needs no fourth digit. */
const COARSE = { bend: 6e-3 } as const
/** Heat and peaks of a ring are over long before its tail is. */
const RING_CYCLES = 30
/** Classes shown after the smallest that works. */
const WORKING_SHOWN = 3

/** Stand-off and resistance of a class with its load peak and the share of its rating used. */
function* trySize(q: SizingQuestion, ratedPulseW: number, standoffV: number): Generator<Progress, Size> {
  const spread = breakdownOfClass(standoffV)
  const dynamicOhm = dynamicOhmOfClass({ mostBreakdownV: spread.mostV, ratedPulseW })
  const part: FittedPart = { ...spread, fromClass: true, dynamicOhm, ohmFromClass: true, standoffV, ...q.like }
  const { pulse } = q.setup
  const shape = pulse.ring
    ? { ...pulse.shape, endSec: Math.min(pulse.shape.endSec, RING_CYCLES / pulse.ring.hz) }
    : pulse.shape
  let [loadV, usedFrac] = [0, 0]
  const variants = variantsOf(part)
  for (const [i, suppressor] of variants.entries()) {
    const question = {
      circuit: circuitOf(q.setup, suppressor),
      shape,
      rating: { ratedW: ratedPulseW, factor: q.factor },
      options: COARSE,
    }
    const run = yield* within(runOnce(question), i / variants.length, (i + 1) / variants.length)
    loadV = Math.max(loadV, run.load.value)
    if (!run.used) continue
    const { heat } = run.used
    const trains = pulse.repeats.filter((r) => r.counted).map((r) => repeatFactor({ heat, energyJ: run.energyJ }, r))
    usedFrac = Math.max(usedFrac, usedFracOf(run.used) * Math.max(1, ...trains))
  }
  return { ratedPulseW, standoffV, dynamicOhm, loadV, usedFrac: usedFrac / deratedShare(q) }
}

const fits = (size: Size, q: SizingQuestion) => size.loadV <= q.withstandV && size.usedFrac <= 1

/** Rows by class, smallest first. The stand-off starts at the bus peak, so that no class conducts cold. */
export function* sizeRows(q: SizingQuestion): Generator<Progress, readonly SizeRow[]> {
  const steps = STAND_OFF_STEPS_V.filter((v) => v >= q.busMaxV && breakdownOfClass(v).mostV < q.withstandV)
  const rows: SizeRow[] = []
  const lowest = steps[0]
  if (lowest === undefined || deratedShare(q) <= 0) return rows
  for (const [i, ratedPulseW] of PULSE_POWER_CLASSES_W.entries()) {
    const [start, end] = [i / PULSE_POWER_CLASSES_W.length, (i + 1) / PULSE_POWER_CLASSES_W.length]
    const from = yield* within(trySize(q, ratedPulseW, lowest), start, (start + end) / 2)
    if (!fits(from, q)) {
      rows.push({ is: 'fails', ratedPulseW, why: whyNot(from, q) })
      continue
    }
    let to = from
    let [low, high] = [0, steps.length - 1]
    let done = (start + end) / 2
    while (low < high) {
      const middle = Math.ceil((low + high) / 2)
      const next = (done + end) / 2
      const size = yield* within(trySize(q, ratedPulseW, steps[middle] ?? lowest), done, next)
      done = next
      if (fits(size, q)) {
        to = size
        low = middle
      } else high = middle - 1
    }
    rows.push({ is: 'works', ratedPulseW, from, to })
    if (rows.filter((row) => row.is === 'works').length >= WORKING_SHOWN) break
  }
  return rows
}

function whyNot(size: Size, q: SizingQuestion): string {
  if (size.loadV > q.withstandV) return `${formatQuantity(size.loadV, 'voltage')} at the load`
  return `${formatQuantity(size.usedFrac, 'fraction')} of the rating`
}

/** The rows as a table; undefined when no stand-off fits between bus and withstand. */
export function sizingTable(rows: readonly SizeRow[]): Picture | undefined {
  if (rows.length === 0) return undefined
  const si = (value: number): Cell => ({ is: 'si', si: value })
  const none: Cell = { is: 'none', why: '–' }
  const first = rows.find((row) => row.is === 'works')
  return {
    is: 'table',
    title: 'Classes that would carry it, smallest first',
    columns: [
      { key: 'power', label: '10/1000 µs power', quantity: 'power' },
      { key: 'verdict', label: 'Verdict' },
      { key: 'from', label: 'Stand-off, least', quantity: 'voltage' },
      { key: 'to', label: 'Stand-off, most', quantity: 'voltage' },
      { key: 'ohmFrom', label: 'Dynamic resistance, least', quantity: 'resistance' },
      { key: 'ohmTo', label: 'Dynamic resistance, most', quantity: 'resistance' },
      { key: 'load', label: 'Load peak at the lowest', quantity: 'voltage' },
      { key: 'used', label: 'Rating used', quantity: 'fraction' },
    ],
    rows: rows.map((row) => ({
      id: `w${row.ratedPulseW}`,
      strong: row === first,
      cells:
        row.is === 'fails'
          ? [si(row.ratedPulseW), { is: 'word', word: row.why, verdict: 'fails' }, none, none, none, none, none, none]
          : [
              si(row.ratedPulseW),
              { is: 'word', word: 'works', verdict: 'ok' },
              si(row.from.standoffV),
              si(row.to.standoffV),
              si(row.from.dynamicOhm),
              si(row.to.dynamicOhm),
              si(row.from.loadV),
              si(row.from.usedFrac),
            ],
    })),
  }
}
