/**
 * From the cause found to the outcome: which facts of the line are still needed, and which outcome they lead to. No part
 * is advised before cable, mode, bond and shield are known.
 */
import { type LineKind, lineKindById } from '../../reference/line-kinds.ts'
import type { Answers, NodeId } from '../types.ts'
import type { Found } from './ending.ts'
import { symptomOf } from './standing.ts'

/** Either an item to ask next, or the outcome. */
export type Step = { readonly ask: NodeId } | { readonly end: NodeId }

/** Class `measure`: what is needed for a part was asked and is not known. */
export const MEASURE: NodeId = 'measure-open'

/** A pair whose signal reaches past this leaves a capacitor too little room; a choke comes first. */
const FAST_PAIR_HZ = 5e6

const isKnown = (answers: Answers, id: NodeId): boolean => {
  const option = answers[id]
  return option !== undefined && option !== 'dont-know' && option !== 'set-aside'
}

/** The first item that is not answered; a needed one that is not known ends in measuring. */
function collect(answers: Answers, needed: readonly NodeId[], wanted: readonly NodeId[]): Step | undefined {
  for (const id of needed) {
    if (answers[id] === undefined) return { ask: id }
    if (!isKnown(answers, id)) return { end: MEASURE }
  }
  const open = wanted.find((id) => answers[id] === undefined)
  return open === undefined ? undefined : { ask: open }
}

/** What the clamp over the whole cable, or over each leg, already says of the mode. */
const hasMode = (answers: Answers): boolean => answers['cable'] === 'whole' || answers['cable'] === 'each-leg'

const kindOf = (answers: Answers): LineKind | undefined => lineKindById(answers['kind'] ?? answers['kind-source'] ?? '')

const isDifferential = (answers: Answers): boolean =>
  answers['cable'] === 'each-leg' || answers['mode'] === 'differential' || answers['mode'] === 'single'

/** Where the kind or the frequency alone decide, whatever the place. */
function byKindAndFrequency(answers: Answers): NodeId | undefined {
  const kind = kindOf(answers)
  if (kind?.barredWhy !== undefined) return 'stop-kind'
  if (kind?.family === 'ground') return 'bond-first'
  if (kind?.family === 'drive') return 'coil-first'
  const frequency = answers['frequency']
  if (frequency === 'audio') return 'low-frequency'
  if (frequency === 'own-band' && isDifferential(answers)) return 'in-band'
  if (frequency === 'probe') return 'measure-probe'
  if (frequency === 'headset') return 'measure-headset'
  return undefined
}

const PLACES: Readonly<Record<string, 'box' | 'inline' | 'either'>> = { yes: 'box', no: 'inline' }
const placeOf = (answers: Answers): 'box' | 'inline' | 'either' => PLACES[answers['box'] ?? ''] ?? 'either'

/** Bond and shield as a part needs them: seen or measured, and mended before any part where they are poor or open. */
function footing(answers: Answers): Step | undefined {
  if (answers['bond'] === 'poor') return { end: 'bond-first' }
  if (answers['shield-ends'] === 'open') return { end: 'shield-first' }
  return collect(answers, ['bond', 'shield-ends'], [])
}

/** Facts a part on a line needs: bond, shield and mode seen or measured, then kind, frequency and place. */
function lineFacts(answers: Answers, kindItem: 'kind' | 'kind-source'): Step | undefined {
  const first = footing(answers) ?? collect(answers, [...(hasMode(answers) ? [] : ['mode']), kindItem], ['frequency'])
  if (first !== undefined) return first
  const early = byKindAndFrequency(answers)
  return early === undefined ? collect(answers, [], ['box']) : { end: early }
}

const isFastPair = (kind: LineKind | undefined): boolean =>
  kind?.isPair === true && ((kind.usefulHz?.hz ?? 0) >= FAST_PAIR_HZ || (kind.bitRateHz ?? 0) >= FAST_PAIR_HZ)

/** Ferrites on the whole cable cured it, so its loop is low; or the signal has no room for a capacitor. */
const isForChoke = (answers: Answers): boolean => answers['cable-trial'] === 'gone' || isFastPair(kindOf(answers))

/** A bus is tested before anything is added to it: ohms, levels, one receiver or all, stub. */
const busFirst = (answers: Answers): Step | undefined =>
  symptomOf(answers) === 'data' ? collect(answers, ['bus-ohms'], []) : undefined

function onCable(found: Found, answers: Answers): Step {
  const step = busFirst(answers) ?? lineFacts(answers, 'kind')
  if (step !== undefined) return step
  if (isForChoke(answers)) return { end: 'choke-cable' }
  const isOwnTx = found.members.some(({ suspect }) => suspect.id === 'own-tx-radiated')
  return { end: isOwnTx ? 'filter-own-tx' : `filter-victim-${placeOf(answers)}` }
}

function bySupply(answers: Answers): Step {
  const step = busFirst(answers) ?? footing(answers) ?? collect(answers, [], ['kind', 'frequency'])
  if (step !== undefined) return step
  return { end: kindOf(answers)?.barredWhy === undefined ? 'decouple-supply' : 'stop-kind' }
}

function atSource(found: Found, answers: Answers): Step {
  const fix = answers['source-fix']
  if (fix === undefined) return { ask: 'source-fix' }
  if (fix === 'faulty') return { end: 'source-fault' }
  if (fix === 'filter') return lineFacts(answers, 'kind-source') ?? { end: `filter-source-${placeOf(answers)}` }
  const path = found.members.find(({ suspect, is }) => suspect.part === 'path' && is === 'proven')
  if (fix === 'no' && path?.suspect.id === 'cable') return onCable(found, answers)
  if (fix === 'no' && path?.suspect.id === 'supply') return bySupply(answers)
  return { end: 'source-treat' }
}

const TREATED_AT_SOURCE = new Set(['converter', 'motor', 'clock'])

/** The outcome of a cause that needs no facts of a line. */
function plainEnd(found: Found, answers: Answers): NodeId {
  const { suspect } = found.cure
  const isBroken = symptomOf(answers) === 'broken'
  if (suspect.id === 'lightning') return isBroken ? 'suppressor-strike' : 'inspect-strike'
  if (suspect.id === 'box-fault' && isBroken) return 'box-damage'
  const isOwnTx = found.members.some((member) => member.suspect.id === 'own-tx-radiated')
  if (suspect.id === 'antenna' && isOwnTx) return 'own-tx-antenna'
  return suspect.outcome
}

/** The next fact to ask for, or the outcome, once the cause is found. */
export function partStep(found: Found, answers: Answers): Step {
  const { id } = found.cure.suspect
  if (id === 'cable') return onCable(found, answers)
  if (id === 'supply') return bySupply(answers)
  if (id === 'drive') return footing(answers) ?? { end: plainEnd(found, answers) }
  if (TREATED_AT_SOURCE.has(id)) return atSource(found, answers)
  const end = plainEnd(found, answers)
  return WITH_SUPPRESSOR.has(end) ? suppressorStep(answers, end, []) : { end }
}

const WITH_SUPPRESSOR = new Set(['suppressor-strike', 'suppressor-static', 'suppressor-switching'])

/** What a suppressor is decided by: the line, the level, and how many contacts share. Noise is not asked for. */
function suppressorStep(answers: Answers, end: NodeId, first: readonly NodeId[]): Step {
  const threat = collect(answers, [], first)
  if (threat !== undefined) return threat
  const hasLevel = end !== 'suppressor-switching' && answers['surge-threat'] !== 'switching'
  const isShared = answers['surge-contacts'] === 'few' || answers['surge-contacts'] === 'many'
  const wanted = ['kind', ...(hasLevel ? ['surge-level'] : []), 'surge-contacts', ...(isShared ? ['surge-alike'] : [])]
  const step = answers['surge-threat'] === 'none' ? collect(answers, [], ['kind']) : collect(answers, [], wanted)
  return step ?? { end: kindOf(answers)?.barredWhy === undefined ? end : 'stop-kind' }
}

const PULSE_ENDS: Readonly<Record<string, NodeId>> = {
  cs115: 'pulses-cs115',
  cs116: 'pulses-cs116',
  emp: 'pulses-emp',
}

/** Test pulses: which one, then what it upset; without the plan no part is sized. */
function pulseStep(answers: Answers): Step {
  const kind = answers['pulse-kind']
  if (kind === undefined) return { ask: 'pulse-kind' }
  const end = PULSE_ENDS[kind]
  if (end === undefined) return { end: 'measure-pulses' }
  const inject = collect(answers, [], ['pulse-inject'])
  if (inject !== undefined) return inject
  if (answers['pulse-inject'] === 'passes') return { end: 'pulses-passed' }
  return collect(answers, [], ['kind']) ?? { end: kindOf(answers)?.barredWhy === undefined ? end : 'stop-kind' }
}

/** A design question has no fault to find: direction, then the facts of the line. */
export function planStep(answers: Answers): Step {
  const direction = answers['plan-direction']
  if (direction === undefined) return { ask: 'plan-direction' }
  if (direction === 'surge') return suppressorStep(answers, 'suppressor-plan', ['surge-threat'])
  if (direction === 'pulses') return pulseStep(answers)
  const step = lineFacts(answers, 'kind')
  if (step !== undefined && !('ask' in step && step.ask === 'box')) return step
  const last = collect(answers, [], ['need', 'impedance', 'surge-threat', 'box'])
  if (last !== undefined) return last
  if (direction === 'emission') return { end: `filter-source-${placeOf(answers)}` }
  return { end: direction === 'stand' ? `filter-victim-${placeOf(answers)}` : 'filter-open-way' }
}

/** The outcome where nothing decides any more. */
export function measureEnd(answers: Answers): NodeId {
  if (symptomOf(answers) === 'broken') return 'measure-damage'
  if (answers['when'] === 'flight' && !isKnown(answers, 'flight-table')) return 'measure-flight'
  if (answers['handheld'] === 'hangar') return 'radiated-outside'
  return answers['squelch'] === 'steps' ? 'measure-birdie' : MEASURE
}
