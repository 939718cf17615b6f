/** What the trial check says: what is shown, what is open, what is excluded, and which assumption it refutes. */
import { listed, notKnown, waitingFor } from '../../explain/sentence.ts'
import { missingInputs } from '../../line/missing.ts'
import { formatEstimate, formatExact, formatQuantity } from '../../quantity/format.ts'
import { countedNumbers, type JudgedStep } from '../../trial/four-numbers.ts'
import type { Basis, Cell, Finding, Picture, Success } from '../../types.ts'
import { VERDICT_WORDS } from '../../verdict.ts'
import { CIRCUITS_BASIS, circuitFindings } from './circuit-words.ts'
import { type BarredTrial, isBeyond, type OpenTrial, type TrialFigures } from './figures.ts'
import { type TrialGiven, trialInputs } from './inputs.ts'
import { LACK_WORDS, OUTCOME_WORDS, REFUTED_NAMES, REFUTED_WORDS, VOID_WORDS } from './outcome-words.ts'
import { solvedBasis, solvedFindings } from './solved-words.ts'

const CAUTIONS = ['trial-authority', 'power-off', 'trial-not-for-flight', 'no-trial', 'permanent-approved']

const exact = (si: number): string => formatExact(si, 'capacitance')
const least = (si: number): string => formatEstimate(si, 'capacitance', 'least')
const most = (si: number): string => formatEstimate(si, 'capacitance', 'most')

export function explainTrial(given: TrialGiven, figures: TrialFigures): Success {
  if (figures.is === 'barred') return barred(figures)
  if (figures.is === 'none') return waiting(given)
  return answer(given, figures)
}

const EMPTY = { outputs: {}, bounds: [], rungs: [], pictures: [] } as const

function barred({ kind, why }: BarredTrial): Success {
  return {
    ok: true,
    verdict: 'fails',
    headline: `${kind.name}: no trial. ${why}`,
    findings: [{ verdict: 'fails', sentence: `${kind.name} is never fitted with a trial part; no step is judged.` }],
    ...EMPTY,
    cautions: ['no-trial', 'permanent-approved'],
  }
}

function waiting(given: TrialGiven): Success {
  return {
    ok: true,
    verdict: 'unknown',
    // separators alone are no steps
    ...waitingFor(missingInputs(trialInputs, { ...given, steps: undefined })),
    findings: [
      {
        verdict: 'unknown',
        sentence: 'Bare, an empty adapter, then each value, empty and bare again: re-seating alone cures many.',
      },
    ],
    ...EMPTY,
    cautions: CAUTIONS,
  }
}

function answer(given: TrialGiven, figures: OpenTrial): Success {
  const verdict = figures.verdict ?? 'unknown'
  return {
    ok: true,
    verdict,
    ...saidOf(figures),
    findings: findingsOf(given, figures),
    outputs: outputsOf(given, figures),
    bounds: [],
    rungs: [],
    pictures: [tableOf(figures)],
    cautions: CAUTIONS,
  }
}

/** The answer, and at its end what it refutes. */
function saidOf(figures: OpenTrial): Pick<Success, 'headline' | 'needs'> {
  const said = answered(figures)
  const refuted = figures.refuted.map((one) => REFUTED_NAMES[one])
  return refuted.length === 0 ? said : { ...said, headline: `${said.headline} It refutes ${listed(refuted)}.` }
}

function answered(figures: OpenTrial): Pick<Success, 'headline' | 'needs'> {
  const { reading, zones, toTry, outcomes, standsLegF } = figures
  const { voids, lacks } = reading
  const { notClearedF, degradedF, clearedF } = countedNumbers(reading)
  if (voids.length > 0)
    return {
      headline: `Not known: this trial says nothing, because ${listed(voids.map((reason) => VOID_WORDS[reason]))}.`,
    }
  if (zones.isShut)
    return {
      headline: `No: a capacitor alone cannot do it. ${exact(notClearedF)} did not clear it, and ${exact(degradedF)} degraded the signal.`,
    }
  if (zones.proven !== undefined) {
    const { leastF, mostF } = zones.proven
    const beyond = isBeyond(mostF, standsLegF)
      ? ` Its signal is worked out to stand ${most(standsLegF ?? 0)} a leg: above that one trial shows no slowest driver, no cold and no other aircraft.`
      : ''
    return {
      headline: `A capacitor alone: ${VERDICT_WORDS[figures.verdict ?? 'ok']}. This trial shows ${least(leastF)} to ${most(mostF)} a leg, counting every tolerance of the part.${beyond}`,
    }
  }
  const tail = shortWords(figures)
  if (figures.refuted.includes('mode'))
    return notKnown(
      trialInputs,
      'mode',
      `the noise mode: a capacitor to chassis did nothing, and one between the wires shows nothing in common mode.${tail}`,
    )
  const [lack] = lacks
  if (lack !== undefined) {
    const { key } = LACK_WORDS[lack]
    return notKnown(trialInputs, key, `${listed(lacks.map((one) => LACK_WORDS[one].name))}.${tail}`)
  }
  if (Number.isFinite(clearedF))
    return notKnown(
      trialInputs,
      'steps',
      `${toTry === undefined ? 'a step' : exact(toTry.farads)} between what cleared it and what the signal stands.${tail}`,
    )
  if (outcomes.includes('no-change')) return notKnown(trialInputs, 'steps', `another line, mode or place.${tail}`)
  return notKnown(trialInputs, 'steps', `a value that clears it.${tail}`)
}

/** The four numbers that count, in words; empty where there is none. */
function shortWords({ reading }: OpenTrial): string {
  const { notClearedF, clearedF, goodF, degradedF } = countedNumbers(reading)
  const parts = [
    ...(Number.isFinite(clearedF) ? [`${exact(clearedF)} cleared it`] : []),
    ...(notClearedF > 0 ? [`${exact(notClearedF)} did not clear it`] : []),
    ...(goodF > 0 ? [`${exact(goodF)} did the signal no harm`] : []),
    ...(Number.isFinite(degradedF) ? [`${exact(degradedF)} degraded it`] : []),
  ]
  return parts.length === 0 ? '' : ` So far ${listed(parts)}.`
}

function findingsOf(given: TrialGiven, figures: OpenTrial): readonly Finding[] {
  const { outcomes, refuted, zones, toTry, reading } = figures
  const said: Finding[] = []
  for (const one of refuted) said.push({ verdict: 'fails', sentence: REFUTED_WORDS[one] })
  for (const one of outcomes) {
    const { verdict, means, next: then } = OUTCOME_WORDS[one]
    said.push({ verdict, sentence: `${means} ${then}` })
  }
  if (reading.voids.length === 0) said.push(...zoneFindings(figures))
  if (toTry !== undefined && zones.proven === undefined)
    said.push({ verdict: 'unknown', sentence: `Try ${exact(toTry.farads)} next: ${NEXT_WORDS[toTry.why]}.` })
  said.push(...solvedFindings(given, figures), ...circuitFindings(given, figures))
  if (given.removed === undefined)
    said.push({ verdict: 'unknown', sentence: 'The adapter comes off again: write down who took it out, and when.' })
  return said
}

const NEXT_WORDS = {
  least: 'between what did not clear it and what is known above it',
  most: 'between what did no harm and what degraded the signal',
  larger: 'it helped, nothing larger was tried, and the signal has not suffered; never above the most of its window',
  smaller: 'what was tried cleared it and degraded the signal',
} as const

function zoneFindings({ reading, zones }: OpenTrial): readonly Finding[] {
  const { notClearedF, clearedF, goodF, degradedF } = countedNumbers(reading)
  const said: Finding[] = []
  const { proven } = zones
  if (proven !== undefined)
    said.push({
      verdict: 'ok',
      sentence: `Shown by this trial: a part of at least ${least(proven.leastF)} in service, cold, hot and under its voltage, and of at most ${most(proven.mostF)}.`,
    })
  if (notClearedF > 0 && Number.isFinite(clearedF))
    said.push({
      verdict: 'unknown',
      sentence: `Not shown: ${exact(notClearedF)} to ${exact(clearedF)} against the noise.`,
    })
  if (goodF > 0 && Number.isFinite(degradedF))
    said.push({ verdict: 'unknown', sentence: `Not shown: ${exact(goodF)} to ${exact(degradedF)} on the signal.` })
  if (notClearedF > 0)
    said.push({ verdict: 'fails', sentence: `Excluded: up to ${exact(notClearedF)}, which did not clear it.` })
  if (Number.isFinite(degradedF))
    said.push({ verdict: 'fails', sentence: `Excluded: from ${exact(degradedF)}, which degraded the signal.` })
  return said
}

function outputsOf(given: TrialGiven, figures: OpenTrial): Success['outputs'] {
  const { values, reading } = figures
  const isVoid = reading.voids.length > 0
  const cellOf = (key: string, why: string): Cell => {
    const si = values[key]
    return si === undefined ? { is: 'none', why: isVoid ? 'this trial says nothing' : why } : { is: 'si', si }
  }
  const tried = TRIED_BASIS
  const solved = solvedBasis(given, figures)
  return {
    provenLeastF: { cell: cellOf('provenLeastF', 'not shown yet'), basis: tried },
    provenMostF: { cell: cellOf('provenMostF', 'not shown yet'), basis: tried },
    notClearedF: { cell: cellOf('notClearedF', 'none'), basis: tried },
    clearedF: { cell: cellOf('clearedF', 'none cleared it'), basis: tried },
    goodF: { cell: cellOf('goodF', 'nobody looked'), basis: tried },
    degradedF: { cell: cellOf('degradedF', 'none degraded it'), basis: tried },
    belowF: { cell: cellOf('belowF', 'none'), basis: tried },
    fromF: { cell: cellOf('fromF', 'none'), basis: tried },
    nextF: { cell: cellOf('nextF', 'nothing more of this trial'), basis: tried },
    parallelOhm: { cell: cellOf('parallelOhm', NO_READINGS), basis: solved },
    parallelLeastOhm: { cell: cellOf('parallelLeastOhm', NO_READINGS), basis: solved },
    parallelMostOhm: { cell: cellOf('parallelMostOhm', 'the readings leave no upper end'), basis: solved },
    sideLeastOhm: { cell: cellOf('sideLeastOhm', NO_FALL), basis: CIRCUITS_BASIS },
    sideMostOhm: { cell: cellOf('sideMostOhm', NO_FALL), basis: CIRCUITS_BASIS },
    sideLeastDeg: { cell: cellOf('sideLeastDeg', NO_FALL), basis: CIRCUITS_BASIS },
    sideMostDeg: { cell: cellOf('sideMostDeg', NO_FALL), basis: CIRCUITS_BASIS },
    readLeastF: { cell: cellOf('readLeastF', given.neededDb === undefined ? NO_NEED : NO_FALL), basis: CIRCUITS_BASIS },
  }
}

const NO_FALL = 'needs a reading that fell by more than it may be off'
const NO_NEED = 'needs the attenuation needed'
const NO_READINGS = 'needs readings in dB on the bare line and with a capacitor, and the frequency'

const TRIED_BASIS: Basis = {
  steps: [],
  assumptions: [
    'a part is shown where its least is at or above what cleared, and its most at or below what did no harm',
    'an adapter may be off by its tolerance; between the wires it counts twice on each leg',
  ],
  sources: [
    { id: 'practice', standing: 'practice' },
    { id: 'derived', standing: 'derived' },
  ],
}

const HEARD: Readonly<Record<JudgedStep['heard'], string>> = {
  gone: 'gone',
  less: 'less',
  same: 'same',
  more: 'more',
  near: 'near what is needed',
  unread: 'not noted',
}

function tableOf({ reading: { steps } }: OpenTrial): Picture {
  return {
    is: 'table',
    title: 'The trial, step by step',
    columns: [
      { key: 'step', label: 'Step' },
      { key: 'noise', label: 'Noise' },
      { key: 'fall', label: 'Fell by', quantity: 'decibel' },
      { key: 'signal', label: 'Signal' },
      { key: 'repeats', label: 'Repeated' },
      { key: 'time', label: 'Time' },
    ],
    rows: steps.map((step, index) => ({
      id: `step-${index}`,
      cells: [
        { is: 'word', word: partWords(step) },
        {
          is: 'word',
          word: step.part === 'bare' && step.heard === 'unread' && index === 0 ? 'there' : HEARD[step.heard],
        },
        step.fallDb === undefined ? { is: 'none', why: '–' } : { is: 'si', si: step.fallDb },
        { is: 'word', word: step.signal ?? 'not looked at' },
        { is: 'word', word: step.repeats ?? '–' },
        { is: 'word', word: step.time ?? '–' },
      ],
    })),
  }
}

function partWords({ part, farads, place }: JudgedStep): string {
  if (part === 'bare') return 'bare'
  if (part === 'empty') return 'empty adapter'
  return `${formatQuantity(farads, 'capacitance', 12)}${place === 'between' ? ' between the wires' : ''}`
}
