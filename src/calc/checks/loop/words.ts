/** What the loop check says: the figures, what they decide, what they leave open, and how sure they are. */
import { levelIn } from '../../level.ts'
import { loopOhmFrom } from '../../network/clamp.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Cell, Finding, Step, Success } from '../../types.ts'
import { CURRENT_UNIT, isReactive, type LoopFigures, VOLTAGE_UNIT } from './figures.ts'
import type { LoopGiven } from './inputs.ts'

const ohm = (si: number): string => formatQuantity(si, 'resistance', 3)
const db = (si: number): string => formatQuantity(si, 'decibel', 3)
const none = (why: string): Cell => ({ is: 'none', why })

const NO_CLAMP = 'needs a clamp and what it did'
const NO_TRIAL = 'needs a capacitor, what it did, and the frequency'
const NOT_DECIDED = 'these readings do not say which end is which'

export function explainLoop(given: LoopGiven, figures: LoopFigures): Success {
  const { values } = figures
  const cellOf = (key: string, why: string): Cell => {
    const si = values[key]
    return si === undefined ? none(why) : { is: 'si', si }
  }
  const clamp = basisOf(clampSteps(given, figures), CLAMP_ASSUMED)
  const trial = basisOf(trialSteps(given, figures), TRIAL_ASSUMED)
  const ends = basisOf(endSteps(given, figures), END_ASSUMED)
  const open = figures.loop === undefined ? NO_CLAMP : 'the clamp changed nothing, so there is no upper end'
  const verdict = figures.verdict ?? 'unknown'
  return {
    ok: true,
    verdict,
    ...(verdict === 'ok' ? { answers: 'number' as const } : {}),
    headline: headlineOf(given, figures),
    findings: findingsOf(given, figures),
    outputs: {
      loopOhm: { cell: cellOf('loopOhm', figures.loop === undefined ? NO_CLAMP : NO_FALL), basis: clamp },
      loopLeastOhm: { cell: cellOf('loopLeastOhm', NO_CLAMP), basis: clamp },
      loopMostOhm: { cell: cellOf('loopMostOhm', open), basis: clamp },
      parallelOhm: { cell: cellOf('parallelOhm', NO_TRIAL), basis: trial },
      ...spans(figures, trial, ends),
      higherOhm: { cell: cellOf('higherOhm', 'needs a clamp and a capacitor'), basis: ends },
      lowerOhm: { cell: cellOf('lowerOhm', 'needs a clamp and a capacitor'), basis: ends },
      loadOhm: { cell: cellOf('loadOhm', NOT_DECIDED), basis: ends },
      sourceLeastOhm: { cell: cellOf('sourceLeastOhm', NOT_DECIDED), basis: ends },
      sourceMostOhm: { cell: cellOf('sourceMostOhm', NOT_DECIDED), basis: ends },
    },
    bounds: [],
    rungs: [],
    pictures: [],
    ...needsOf(given),
    cautions: ['trial-authority', 'power-off'],
  }
}

/** The spans over the error of the readings: only where a reading may be off, and only those it leaves an end. */
function spans({ values }: LoopFigures, trial: Basis, ends: Basis): Success['outputs'] {
  const put = (key: string, basis: Basis): Success['outputs'] => {
    const si = values[key]
    return si === undefined ? {} : { [key]: { cell: { is: 'si', si }, basis } }
  }
  return {
    ...put('parallelLeastOhm', trial),
    ...put('parallelMostOhm', trial),
    ...put('higherLeastOhm', ends),
    ...put('higherMostOhm', ends),
    ...put('lowerLeastOhm', ends),
    ...put('lowerMostOhm', ends),
  }
}

const NO_FALL = 'a clamp that lowers nothing says no figure'

/** A capacitor without the frequency says nothing. */
function needsOf({ firstF, readAtHz, clampOhm, currentDb }: LoopGiven): Pick<Success, 'needs'> {
  const isEmpty = firstF === undefined && clampOhm === undefined && currentDb === undefined
  if (isEmpty)
    return { needs: { key: 'clampOhm', sentence: 'A clamp ferrite is the quickest: its impedance, and what it did.' } }
  if (firstF === undefined || readAtHz !== undefined) return {}
  return { needs: { key: 'readAtHz', sentence: 'Enter the one frequency of the capacitor readings.' } }
}

/** What a load and a source that are told with care rest on. */
function doubtOf({ isResonant, areResistances, load }: LoopFigures): string {
  if (isResonant) return 'both ends cancel'
  if (areResistances) return 'as if no reading were off'
  return load === undefined ? 'if both are resistances' : 'something resonates or a reading is off'
}

function headlineOf(given: LoopGiven, figures: LoopFigures): string {
  const { loop, values, refusedTrial, verdict } = figures
  const { loopOhm, parallelOhm, loadOhm, sourceLeastOhm, sourceMostOhm } = values
  if (loadOhm !== undefined && sourceLeastOhm !== undefined && sourceMostOhm !== undefined)
    return `${verdict === 'marginal' ? `With care, ${doubtOf(figures)}: the` : 'The'} load is ${ohm(loadOhm)}, the source ${spanWords(sourceLeastOhm, sourceMostOhm)}.`
  if (loadOhm !== undefined) return `Not known where it comes from; the load is ${ohm(loadOhm)} at this frequency.`
  if (loopOhm !== undefined && loop !== undefined) {
    const most = Number.isFinite(loop.most) ? ` to ${ohm(loop.most)}` : ' and more'
    return `Not known which end is which; together they are ${ohm(loopOhm)} if both are resistances, ${ohm(loop.least)}${most} whatever they are.`
  }
  if (loop !== undefined) return `Not known. ${noEffect(given.fallDb ?? 0)}`
  if (parallelOhm !== undefined) return `Not known which end is which; side by side they are ${ohm(parallelOhm)}.`
  if (refusedTrial !== undefined) return `Not known. ${REFUSED[refusedTrial]}`
  return 'Not known: needs what a clamp did, or a current with its voltage, or what a capacitor did.'
}

const REFUSED = {
  one: 'A capacitor that lowers nothing says no figure: the circuit is low there, it resonates, or it is another line.',
  two: 'No passive circuit gives both capacitor readings: repeat them.',
} as const

const noEffect = (fallDb: number): string =>
  fallDb < 0
    ? `The noise rose by ${db(-fallDb)}: the clamp and the loop resonate, so there is no figure from it.`
    : 'The clamp changed nothing: the loop is high, or it is another cable, or the clamp is outside its band.'

function findingsOf(given: LoopGiven, figures: LoopFigures): readonly Finding[] {
  const { loop, pair, load, values, isContradictory, parallelFrom, siemens, refusedTrial } = figures
  const said: Finding[] = []
  const add = (verdict: Finding['verdict'], sentence: string) => said.push({ verdict, sentence })
  const { loopOhm, parallelOhm, sourceLeastOhm, sourceMostOhm, loadOhm } = values
  if (isContradictory)
    add(
      'unknown',
      'No two resistances have this sum and this parallel value: something resonates, or a reading is off.',
    )
  if (refusedTrial !== undefined && loop !== undefined) add('unknown', REFUSED[refusedTrial])
  if (loop !== undefined && loopOhm === undefined && (given.fallDb ?? 0) >= 0)
    add('unknown', 'Try a second place a quarter wave away, more turns, and no direct current in the clamp.')
  if (loopOhm !== undefined && loadOhm === undefined)
    add(
      'unknown',
      `A clamp reads both ends together. A capacitor works against them side by side, ${ohm(loopOhm / 4)} at most if both are resistances.`,
    )
  if (parallelOhm !== undefined && pair === undefined && loadOhm === undefined)
    add('unknown', 'A capacitor reads both ends side by side, not the source alone. A clamp gives their sum.')
  if (pair !== undefined && loadOhm === undefined)
    add('unknown', `${ohm(pair[0])} and ${ohm(pair[1])}: which of them is the source, another reading has to say.`)
  if (parallelFrom === 'one')
    add('unknown', 'One capacitor takes both ends for resistances. A second value shows whether they are.')
  if (parallelFrom === 'two' && !figures.isShownReal && !isReactive({ siemens, parallelOhm }))
    add(
      'unknown',
      'Inside the error of the readings a reactance beside both ends gives the same readings: read closer, or take capacitors further apart.',
    )
  if (siemens !== undefined && isReactive({ siemens, parallelOhm }))
    add(
      'unknown',
      `${siemens > 0 ? 'A capacitance' : 'An inductance'} of ${ohm(1 / Math.abs(siemens))} stands beside them: they are not resistances alone.`,
    )
  if (figures.isOfTrial)
    add(
      'ok',
      'The capacitors are those of the trial on this line: its smallest and its largest that are still capacitors.',
    )
  if (figures.ends !== undefined) {
    const { higher, lower } = figures.ends
    add(
      'ok',
      `With every reading off by its error, one end is ${openSpan(higher)}, the other ${openSpan(lower)}${figures.isShownReal ? ': real parts, nothing that resonates' : ', if both are resistances'}.`,
    )
    if (loadOhm !== undefined && load === undefined)
      add(
        'ok',
        'The load is handed over at its least, the source as far as the sum of both may go, so that neither flatters a part.',
      )
  }
  if (figures.isResonant)
    add(
      'marginal',
      'The load alone is more than the whole loop: source and load cancel there, a resonance, and any part moves it. Or a reading is off: repeat clamp, current and voltage.',
    )
  if (sourceLeastOhm !== undefined && sourceMostOhm !== undefined)
    add('ok', `Source ${spanWords(sourceLeastOhm, sourceMostOhm)} goes to the checks, and its worse end decides there.`)
  if (load !== undefined && loadOhm !== undefined) {
    add('ok', `Load ${ohm(loadOhm)} goes to the checks. It is a size without a phase.`)
    add('ok', `In this place dBµA become dBµV across ${ohm(load.ohm)}; the need check asks for it as “Measured in”.`)
  }
  return [...said, ...sureness(given, figures)]
}

const openSpan = ({ least, most }: { readonly least: number; readonly most: number }): string =>
  Number.isFinite(most) ? spanWords(least, most) : `${ohm(least)} and more`

const spanWords = (least: number, most: number): string =>
  least === most ? ohm(least) : `${ohm(least)} to ${ohm(most)}`

/** How far the readings may be off is entered or said to be open; never invented. */
function sureness({ offDb, clampOhm, fallDb }: LoopGiven, { values, load }: LoopFigures): readonly Finding[] {
  if (values['loopOhm'] === undefined && load === undefined) return []
  if (offDb !== undefined)
    return [
      {
        verdict: 'ok',
        sentence: `The ends of every span count ±${db(offDb)} on each reading, ±${db(2 * offDb)} on a fall: it is the difference of two.`,
      },
    ]
  const open = 'How far the readings may be off was not entered, so it does not count.'
  if (clampOhm === undefined || fallDb === undefined || fallDb <= 1) return [{ verdict: 'unknown', sentence: open }]
  const at = (fall: number) => ohm(loopOhmFrom({ clampOhm: clampOhm[0] ?? 0, fallDb: fall }))
  return [
    {
      verdict: 'unknown',
      sentence: `${open} One decibel more or less of fall would make the loop ${at(fallDb + 1)} or ${at(fallDb - 1)}.`,
    },
  ]
}

const CLAMP_ASSUMED: readonly string[] = [
  'the clamp is inside its band, not saturated, on the whole cable',
  'one figure: clamp and loop are resistances; the span: nothing about their phase',
]
const TRIAL_ASSUMED: readonly string[] = ['the trial part is used below half its own resonance, with short leads']
const END_ASSUMED: readonly string[] = [
  'from sum and parallel value: both ends are resistances',
  'from loop and load: nothing about their phase, so the span is wide',
]

function clampSteps({ clampOhm, fallDb }: LoopGiven, { values }: LoopFigures): readonly Step[] {
  const si = values['loopOhm']
  if (si === undefined || clampOhm === undefined || fallDb === undefined) return []
  const named = clampOhm.map(ohm).join(', ')
  return [
    {
      formula: 'Zs + Zl = Zb / (10^(A/20) − 1)',
      withNumbers: `${named} / (10^(${db(fallDb)}/20) − 1)`,
      si,
      quantity: 'resistance',
    },
  ]
}

function trialSteps({ firstF, firstDb, readAtHz }: LoopGiven, figures: LoopFigures): readonly Step[] {
  const { parallelFrom } = figures
  const si = figures.values['parallelOhm']
  if (si === undefined || firstF === undefined || firstDb === undefined || readAtHz === undefined) return []
  const farad = formatQuantity(firstF, 'capacitance')
  const hertz = formatQuantity(readAtHz, 'frequency')
  const [formula, withNumbers] =
    parallelFrom === 'one'
      ? ['Rs ∥ Rl = √(10^(A/10) − 1) / (2π·f·C)', `√(10^(${db(firstDb)}/10) − 1) / (2π · ${hertz} · ${farad})`]
      : [
          'Rs ∥ Rl = 1/√(Y² − B²), Y² = (b2 − b1)/((a2 − 1)/b2 − (a1 − 1)/b1), B = ((a1 − 1)·Y²/b1 − b1)/2',
          `b = 2π · ${hertz} · C, a = 10^(A/10) of each reading`,
        ]
  return [{ formula, withNumbers, si, quantity: 'resistance' }]
}

function endSteps(given: LoopGiven, { pair, load, values }: LoopFigures): readonly Step[] {
  const steps: Step[] = []
  const { loopOhm, parallelOhm, loadOhm, sourceMostOhm } = values
  if (pair !== undefined && loopOhm !== undefined && parallelOhm !== undefined)
    steps.push({
      formula: '(S ± √(S² − 4·S·P)) / 2',
      withNumbers: `S = ${ohm(loopOhm)}, P = ${ohm(parallelOhm)}`,
      si: pair[0],
      quantity: 'resistance',
    })
  if (load !== undefined && loadOhm !== undefined && given.currentDb && given.voltageDb)
    steps.push({
      formula: `|Zl| = 10^((dBµV − dBµA${given.offDb ? ' − 2·off' : ''})/20)`,
      withNumbers: `10^((${db(levelIn(given.voltageDb, VOLTAGE_UNIT))} − ${db(levelIn(given.currentDb, CURRENT_UNIT))}${given.offDb ? ` − 2 · ${db(given.offDb)}` : ''})/20)`,
      si: loadOhm,
      quantity: 'resistance',
    })
  if (load !== undefined && sourceMostOhm !== undefined)
    steps.push({
      formula: '||S| − |Zl|| ≤ |Zs| ≤ |S| + |Zl|',
      withNumbers: 'over the whole span of both',
      si: sourceMostOhm,
      quantity: 'resistance',
    })
  return steps
}

const basisOf = (steps: readonly Step[], assumptions: readonly string[]): Basis => ({
  steps,
  assumptions,
  sources: [
    { id: 'derived', standing: 'derived' },
    { id: 'practice', standing: 'practice' },
  ],
})
