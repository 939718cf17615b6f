/** What the readings of a trial say of the impedance, in words. */
import { neededFarad } from '../../network/capacitor-trial.ts'
import { formatEstimate, formatExact, formatQuantity } from '../../quantity/format.ts'
import type { Basis, Finding, Step } from '../../types.ts'
import type { OpenTrial } from './figures.ts'
import type { TrialGiven } from './inputs.ts'

const ohm = (si: number): string => formatQuantity(si, 'resistance', 3)
const db = (si: number): string => formatQuantity(si, 'decibel', 3)
const farad = (si: number): string => formatExact(si, 'capacitance')

export function solvedFindings(given: TrialGiven, figures: OpenTrial): readonly Finding[] {
  const { solved, supposed, reading } = figures
  const hasReadings = reading.steps.some(({ part, fallDb }) => part === 'capacitor' && fallDb !== undefined)
  if (solved === undefined) {
    if (!hasReadings || reading.voids.length > 0) return []
    if (given.readAtHz === undefined)
      return [{ verdict: 'unknown', sentence: 'With the noise frequency, the readings would give the impedance.' }]
    if (given.readAtHz.length > 1)
      return [
        {
          verdict: 'unknown',
          sentence: 'Readings belong to one frequency; several are entered, so they give no impedance.',
        },
      ]
    return [
      {
        verdict: 'unknown',
        sentence: `Every capacitor with a reading is above half its own resonance at this frequency with ${formatQuantity(given.leadH, 'inductance', 3)} of lead: it is an inductor there and says nothing of the impedance.`,
      },
    ]
  }
  const said: Finding[] = []
  const { parallel, span, pair } = solved
  if (span === undefined)
    said.push({
      verdict: 'unknown',
      sentence: 'No passive circuit gives these readings, however far each may be off: repeat them.',
    })
  else {
    const to = Number.isFinite(span.most) ? `to ${ohm(span.most)}` : 'and more'
    const named = parallel === undefined ? '' : `, ${ohm(parallel.ohm)} as read`
    said.push({
      verdict: 'ok',
      sentence: `The readings put source and load side by side at ${ohm(span.least)} ${to}${named}, each reading off by up to ${db(given.offDb)}, each adapter by ${formatQuantity(given.adapterFrac, 'fraction', 2)}.`,
    })
  }
  if (parallel !== undefined && Math.abs(parallel.siemens) * parallel.ohm > 0.1)
    said.push({
      verdict: 'unknown',
      sentence: `${parallel.siemens > 0 ? 'A capacitance' : 'An inductance'} of ${ohm(1 / Math.abs(parallel.siemens))} stands beside it: they are not resistances alone.`,
    })
  if (pair.second === undefined)
    said.push({
      verdict: 'unknown',
      sentence: 'One value takes both ends for resistances. A second one shows whether they are.',
    })
  if (supposed !== undefined)
    said.push({
      verdict: 'ok',
      sentence: `Entered were ${ohm(supposed.least)}${supposed.most > supposed.least ? ` to ${ohm(supposed.most)}` : ''} side by side.`,
    })
  const neededDb = given.neededDb && Math.max(...given.neededDb)
  const needed = neededDb === undefined ? undefined : neededFarad(pair.second ?? pair.first, neededDb)
  if (needed !== undefined && neededDb !== undefined && figures.reading.place === 'chassis')
    said.push({
      verdict: 'unknown',
      sentence: `Scaled from ${farad((pair.second ?? pair.first).farad)}, ${db(neededDb)} would take ${formatEstimate(needed, 'capacitance', 'least')}: an estimate to try, not shown.`,
    })
  return said
}

export function solvedBasis(given: TrialGiven, { solved, values }: OpenTrial): Basis {
  const si = values['parallelOhm']
  const hz = given.readAtHz?.[0]
  const steps: Step[] = []
  if (solved !== undefined && si !== undefined && hz !== undefined) {
    const { first, second } = solved.pair
    const at = formatQuantity(hz, 'frequency', 4)
    steps.push(
      second === undefined
        ? {
            formula: 'Rs ∥ Rl = √(10^(A/10) − 1) / (2π·f·C)',
            withNumbers: `√(10^(${db(first.dropDb)}/10) − 1) / (2π · ${at} · ${farad(first.farad)})`,
            si,
            quantity: 'resistance',
          }
        : {
            formula: 'Rs ∥ Rl = 1/√(Y² − B²), Y² = (b2 − b1)/((a2 − 1)/b2 − (a1 − 1)/b1), B = ((a1 − 1)·Y²/b1 − b1)/2',
            withNumbers: `${farad(first.farad)} ${db(first.dropDb)}, ${farad(second.farad)} ${db(second.dropDb)}, b = 2π · ${at} · C`,
            si,
            quantity: 'resistance',
          },
    )
  }
  return {
    steps,
    assumptions: [
      'the smallest and the largest capacitor below half their own resonance stand for all',
      'a fall is the difference of two readings, each off by its error',
    ],
    sources: [{ id: 'derived', standing: 'derived' }],
  }
}
