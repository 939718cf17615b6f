/** A capacitor on a power line: chassis current, stored energy, bleed, inrush, withstand and the Navy rule. */
import { ladderPicture } from '../../ladder.ts'
import { heatFinding, paschenFindings, residualFinding, variableFrequencyFinding } from '../../power/findings.ts'
import type { InrushPeak } from '../../power/inrush.ts'
import { NAVY_SOURCE, navyLimit } from '../../power/navy-rule.ts'
import {
  basisOf,
  currentOutputs,
  energyOutputs,
  inrushOf,
  inrushOutputs,
  lacking,
  type PowerOutputs,
  withstandOutput,
} from '../../power/outputs.ts'
import { powerRungs } from '../../power/rungs.ts'
import { crestV, lineCurrentRmsA, storedJ, withstandV } from '../../power/supply.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Check, Finding, Given, Input, Result, SaidBound, Step, Verdict } from '../../types.ts'
import { FARADS } from '../noise-inputs.ts'
import { loadWInput, navyRuleInput } from '../rule-inputs.ts'
import { type Told, told } from '../told.ts'

const WIRING = 'Wiring and bleed'

const inputs = [
  {
    key: 'workingRmsV',
    fact: 'workingRmsV',
    label: 'Working voltage',
    help: 'DC volts, or volts rms from line to chassis.',
    type: { is: 'number', quantity: 'voltage', min: 0.001, max: 1e5 },
    whenEmpty: {
      do: 'ask',
      how: 'The highest steady voltage: 29 V on a 28 V bus, 118 V on 115 V AC, 280 V on 270 V DC.',
    },
  },
  {
    key: 'supplyHz',
    fact: 'supplyHz',
    label: 'Supply frequency',
    help: '0 for DC, 400 Hz, or 800 Hz as the worst of a variable-frequency supply.',
    type: { is: 'number', quantity: 'frequency', min: 0, max: 1e6 },
    whenEmpty: { do: 'ask', how: '0 for DC; the aircraft’s electrical data name the frequency or its range.' },
  },
  {
    key: 'capacitanceF',
    fact: 'legF',
    label: 'Capacitance of each line to chassis',
    help: 'All of it on one line: both capacitors of a Pi, and its largest value within tolerance.',
    type: FARADS,
    whenEmpty: { do: 'ask', how: 'Marked value plus its tolerance, times two for a Pi.' },
  },
  {
    key: 'lineCount',
    fact: 'lineCount',
    label: 'Lines with it',
    help: 'Phases or lines with the same capacitor. Three, six… count as balanced phases.',
    type: { is: 'number', quantity: 'count', min: 1, max: 1000 },
    defaultText: '1',
    whenEmpty: { do: 'assume', text: '1', why: 'one line; more lines add up at the chassis', favourable: true },
  },
  {
    key: 'wiringOhm',
    fact: 'wiringOhm',
    label: 'Wiring resistance',
    help: 'Of the loop that charges the capacitor, for the inrush.',
    type: { is: 'number', quantity: 'resistance', min: 0, max: 1e6 },
    whenEmpty: { do: 'omit' },
    group: WIRING,
  },
  {
    key: 'wiringH',
    fact: 'wiringH',
    label: 'Wiring inductance',
    help: 'Of the same loop; about 1 µH per metre of separate wire.',
    type: { is: 'number', quantity: 'inductance', min: 0, max: 10 },
    whenEmpty: { do: 'omit' },
    group: WIRING,
  },
  {
    key: 'bleedOhm',
    fact: 'bleedOhm',
    label: 'Bleed resistor',
    help: 'Across one capacitor.',
    type: { is: 'number', quantity: 'resistance', min: 1, max: 1e12 },
    whenEmpty: { do: 'omit' },
    group: WIRING,
  },
  navyRuleInput,
  loadWInput,
] as const satisfies readonly Input[]

type PowerGiven = Given<typeof inputs>
type Complete = PowerGiven & { workingRmsV: number; supplyHz: number; capacitanceF: number }

const show = (value: number, quantity: Quantity, digits = 3): string => formatQuantity(value, quantity, digits)
const isComplete = (given: PowerGiven): given is Complete =>
  given.workingRmsV !== undefined && given.supplyHz !== undefined && given.capacitanceF !== undefined

type RuleAnswer = {
  readonly verdict?: Verdict
  readonly findings: readonly Finding[]
  readonly bounds: readonly SaidBound[]
}

function ruleAnswer(given: Complete): RuleAnswer {
  if (given.navyRule !== true) return { findings: [], bounds: [] }
  const limit = navyLimit({ supplyHz: given.supplyHz, loadW: given.loadW })
  if ('ask' in limit) return { verdict: 'unknown', findings: [{ verdict: 'unknown', sentence: limit.ask }], bounds: [] }
  const { limitF, why } = limit
  const verdict: Verdict = given.capacitanceF > limitF ? 'fails' : 'ok'
  const has = show(given.capacitanceF, 'capacitance')
  const may = show(limitF, 'capacitance')
  return {
    verdict,
    findings: [
      {
        verdict,
        sentence:
          verdict === 'fails'
            ? `${has} from each line to ground is over the ${may} of the Navy rule: put the capacitor from line to line, or add an inductor.`
            : `${has} from each line to ground is inside the ${may} of the Navy rule.`,
      },
    ],
    bounds: [
      {
        id: 'navy-4.2.2',
        side: 'most',
        nature: 'permitted',
        topology: 'any',
        markedF: limitF,
        why,
        appliesTo: 'all capacitance from one line to ground',
        openedBy: [],
        basis: basisOf(
          [{ formula: 'MIL-STD-461 4.2.2', withNumbers: why, si: limitF, quantity: 'capacitance' }],
          ['the rule applies to this procurement'],
          NAVY_SOURCE,
        ),
      },
    ],
  }
}

function waiting(given: PowerGiven): Result {
  const missing = [
    given.workingRmsV === undefined ? 'the working voltage' : undefined,
    given.supplyHz === undefined ? 'the supply frequency (0 for DC)' : undefined,
    given.capacitanceF === undefined ? 'the capacitance' : undefined,
  ].filter((word) => word !== undefined)
  const output = lacking(`needs ${missing.join(', ')}`)
  return {
    ok: true,
    headline: `Enter ${missing.join(', ')}.`,
    findings: [],
    outputs: Object.fromEntries(OUTPUTS.filter((o) => !OPTIONAL.has(o.key)).map((o) => [o.key, output])),
    bounds: [],
    rungs: [],
    pictures: [],
    cautions: ['power-off'],
  }
}

function compute(given: PowerGiven): Result {
  if (!isComplete(given)) return waiting(given)
  const lineCount = given.lineCount ?? 1
  if (!Number.isInteger(lineCount))
    return {
      ok: false,
      issues: [{ key: 'lineCount', code: 'not-whole', message: 'The number of lines is a whole number, such as 3.' }],
    }
  const peak = inrushOf(given)
  const outputs: PowerOutputs = {
    ...currentOutputs(given, lineCount),
    ...energyOutputs(given),
    ...inrushOutputs(given, peak),
    withstandV: withstandOutput(given),
  }
  return answer(given, { lineCount, peak, outputs })
}

function answer(
  given: Complete,
  worked: { lineCount: number; peak: InrushPeak | undefined; outputs: PowerOutputs },
): Result {
  const { lineCount, peak, outputs } = worked
  const rule = ruleAnswer(given)
  const facts = { workingRmsV: given.workingRmsV, supplyHz: given.supplyHz, farads: given.capacitanceF, lineCount }
  const testV = withstandV(given)
  const rungs = powerRungs({
    peakV: crestV(given),
    overshootV: peak?.peakV,
    testV,
    basis: {
      peak: basisOf([peakStep(given)]),
      overshoot: outputs['inrushPeakV']?.basis ?? basisOf([]),
      test: outputs['withstandV']?.basis ?? basisOf([]),
    },
  })
  const ladder = ladderPicture({ title: 'Volts on this line', rungs })
  const findings = [
    ...rule.findings,
    ...ladder.faults.map((sentence): Finding => ({ verdict: 'marginal', sentence })),
    ...paschenFindings(facts, peak?.peakV, testV),
    residualFinding(facts),
    variableFrequencyFinding(facts),
    heatFinding(facts),
  ].filter((finding) => finding !== undefined)
  return {
    ok: true,
    ...(rule.verdict === undefined ? {} : { verdict: rule.verdict }),
    headline: headlineOf(given, lineCount, peak),
    findings,
    outputs,
    bounds: rule.bounds,
    rungs,
    pictures: [ladder],
    cautions: cautionsOf(given),
  }
}

function peakStep(given: Complete): Step {
  return {
    formula: given.supplyHz === 0 ? 'V_peak = V' : 'V_peak = √2·V',
    withNumbers: show(given.workingRmsV, 'voltage', 4),
    si: crestV(given),
    quantity: 'voltage',
  }
}

function headlineOf(given: Complete, lineCount: number, peak: InrushPeak | undefined): string {
  const { supplyHz, capacitanceF: farads, workingRmsV } = given
  const lineA = lineCurrentRmsA({ supplyHz, farads, workingRmsV })
  const inrush = peak === undefined ? '' : `, ${show(peak.peakA, 'current')} inrush`
  const energy = show(storedJ({ farads, crestV: crestV(given) }), 'energy')
  if (supplyHz === 0) return `No steady current on DC; ${energy} stored${inrush}.`
  const all = lineCount === 1 ? '' : ` (${show(lineA * lineCount, 'current')} over ${lineCount} lines)`
  return `${show(lineA, 'current')} to chassis in each line${all}; ${energy} stored${inrush}.`
}

/** From here on a steady voltage counts as lethal in the cautions. */
const LETHAL_V = 60

function cautionsOf(given: Complete): readonly string[] {
  const nearAir = withstandV(given) >= 327 || crestV(given) >= 294
  return [
    'power-off',
    'stored-charge',
    ...(given.workingRmsV >= LETHAL_V ? ['lethal-voltage'] : []),
    'chassis-capacitance',
    'hipot',
    ...(nearAir ? ['low-pressure'] : []),
    'lightning-hirf-fuel',
    'screening',
  ]
}

const OUTPUTS = [
  { key: 'currentRmsA', label: 'Chassis current of each line', quantity: 'current', digits: 4, lead: true },
  { key: 'totalCurrentRmsA', label: 'All lines, added', quantity: 'current', digits: 4 },
  { key: 'residualCurrentRmsA', label: 'Net into the chassis', quantity: 'current', digits: 4 },
  { key: 'phaseLostCurrentRmsA', label: 'Net with one phase lost', quantity: 'current', digits: 4 },
  { key: 'reactiveVa', label: 'Reactive power of each (VA)', quantity: 'number', digits: 4 },
  { key: 'storedJ', label: 'Stored in each capacitor', quantity: 'energy', digits: 3 },
  { key: 'bleedSec', label: 'Bled to 1 %', quantity: 'time', digits: 3 },
  { key: 'bleedTo34Sec', label: 'Bled to 34 V', quantity: 'time', digits: 3 },
  { key: 'inrushPeakA', label: 'Inrush peak', quantity: 'current', digits: 4 },
  { key: 'inrushPeakV', label: 'Peak on the capacitor', quantity: 'voltage', digits: 4 },
  { key: 'withstandV', label: 'Withstand test', quantity: 'voltage', digits: 4 },
] as const

/** Outputs that exist only for some supplies. */
const OPTIONAL: ReadonlySet<string> = new Set(['phaseLostCurrentRmsA', 'reactiveVa', 'bleedTo34Sec'])

export const powerCheck: Check<typeof inputs, Told> = {
  id: 'power',
  title: 'Power',
  question: 'What does a capacitor to chassis do on this power line?',
  inputs,
  outputs: OUTPUTS,
  ...told(compute),
}
