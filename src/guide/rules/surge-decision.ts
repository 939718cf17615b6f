/**
 * Which suppressor, decided from what was answered: none, one for each contact, or one for a group through steering
 * diodes; and on which side of the filter. Where an answer is missing, the fact that decides is named instead.
 */
import { type Waveform, waveformById } from '../../reference/waveforms.ts'
import { ohms, volts } from '../print.ts'
import type { NodeId } from '../types.ts'
import { type Context, numberOf } from './context.ts'

export type Threat = 'lightning' | 'static' | 'switching' | 'pulse' | 'none'

/** A decision with its reason, or the fact that decides with the item that asks for it. `where`: beside its words. */
export type Decision =
  | { readonly is: 'decided'; readonly words: string; readonly where?: string; readonly reason: string }
  | { readonly is: 'open'; readonly fact: string; readonly ask: NodeId; readonly reason: string }

const decided = (words: string, reason: string): Decision => ({ is: 'decided', words, reason })
const open = (fact: string, ask: NodeId, reason: string): Decision => ({ is: 'open', fact, ask, reason })

/** What an outcome itself already says of the threat. */
const BY_OUTCOME: Readonly<Record<string, Threat>> = {
  'suppressor-strike': 'lightning',
  'suppressor-static': 'static',
  'suppressor-switching': 'switching',
  'pulses-cs115': 'pulse',
  'pulses-cs116': 'pulse',
  'pulses-emp': 'pulse',
}

/** The item that asks what reaches the contacts. */
export const THREAT_ITEM: NodeId = 'surge-threat'

const THREATS: readonly string[] = ['lightning', 'static', 'switching', 'none']

/** What reaches the contacts: as answered, else as the outcome says. */
export function threatOf({ facts, outcome }: Context): Threat | undefined {
  const text = facts.fact('surgeThreat')?.text ?? ''
  return THREATS.includes(text) ? (text as Threat) : BY_OUTCOME[outcome.id]
}

/** The threat as a reason names it. */
export const THREAT_WORDS: Readonly<Record<Threat, string>> = {
  lightning: 'lightning reaches this cable',
  static: 'hands and tools reach these contacts',
  switching: 'a coil or a bus switches on this line',
  pulse: 'the test drives the whole cable',
  none: 'nothing but noise reaches these contacts',
}

const ALIKE_REASONS: Readonly<Record<string, string>> = {
  bipolar: 'They swing above and below ground, so each takes one that clamps both ways.',
  different: 'Their voltages differ: one that stands off the highest would not protect the lowest.',
  apart: 'They share no ground there: one for all would tie their grounds together in a surge.',
}

/** One for each contact, one for a group, or none. */
export function sharingOf(context: Context): Decision {
  const { facts } = context
  const threat = threatOf(context)
  const contacts = facts.fact('exposedContacts')?.text
  const alike = facts.fact('contactsAlike')?.text ?? ''
  const each = (reason: string) => decided('one suppressor for each exposed contact', reason)
  if (threat === undefined)
    return open(
      'whether lightning, static or coils reach these contacts',
      THREAT_ITEM,
      'Without a threat no suppressor is decided.',
    )
  if (threat === 'none') return decided('no suppressor', 'You answered that nothing but noise reaches these contacts.')
  if (contacts === 'one') return decided('one suppressor at the one exposed contact', 'One contact is exposed.')
  if (threat === 'lightning' || threat === 'pulse')
    return each('The pulse comes on every wire of the cable at once. A shared one would carry the sum of them all.')
  if (threat === 'switching')
    return each('A switching surge comes on the line that switches; each such line has its own.')
  if (contacts === undefined)
    return open('number of exposed contacts', 'surge-contacts', 'Static comes on one contact at a time.')
  if (contacts === 'few')
    return each('Two to six contacts: steering diodes save too little, and one failure would take all.')
  if (alike === 'alike')
    return decided(
      'one suppressor for the group, through steering diodes',
      'Seven or more contacts are alike, never below ground, with one ground in the shell. Static comes on one at a time. Count two forward drops on top of the clamp, and that one failure takes every line.',
    )
  const why = ALIKE_REASONS[alike]
  return why === undefined
    ? open(
        'whether the contacts have like voltages and one common ground',
        'surge-alike',
        'Seven or more contacts might share one.',
      )
    : each(why)
}

/** The waveform of the surge on this line; undefined while nobody named one. */
const waveOf = ({ facts }: Context): Waveform | undefined => waveformById(facts.fact('surgeWaveform')?.text ?? '')

/** Open-circuit volts of the surge on this line: as stated, else those of its level. */
function openVolts(context: Context): number | undefined {
  const stated = numberOf(context.facts, 'surgeOpenCircuitV', 'voltage')
  const level = numberOf(context.facts, 'surgeLevel', 'count')
  const wave = waveOf(context)
  return stated ?? wave?.only?.openCircuitV ?? wave?.levels.find((row) => row.level === level)?.openCircuitV
}

/** Topologies whose filter has a coil before a capacitor: they can ring behind a suppressor. */
const RINGS: readonly string[] = ['LC', 'PI', 'T']

/** Ahead of the filter or behind it. */
export function sideOf(context: Context): Decision {
  const { facts } = context
  const threat = threatOf(context)
  if (threat === 'none') return decided('no side', 'No suppressor is needed.')
  const ahead = (reason: string): Decision => ({
    is: 'decided',
    words: 'ahead of the filter',
    reason,
    where: 'on the cable side at the shell',
  })
  if (threat === 'static') return ahead('The edge is shorter than a nanosecond, so the shortest lead decides.')
  const topology = facts.fact('surgeTopology')?.text ?? facts.fact('topology')?.text ?? ''
  const standsV = numberOf(facts, 'capacitorWithstandV', 'voltage')
  const comesV = openVolts(context)
  const load = numberOf(facts, 'surgeLoadOhm', 'resistance')
  const [coilH, farad] = [numberOf(facts, 'inductanceH', 'inductance'), numberOf(facts, 'markedF', 'capacitance')]
  if (standsV !== undefined && comesV !== undefined && standsV < comesV)
    return ahead(`Behind it, a capacitor that stands ${volts(standsV)} would see up to ${volts(comesV)}.`)
  if (standsV === undefined || comesV === undefined)
    return ahead('It keeps the pulse off the capacitors, and nobody has said yet what they stand.')
  if (!RINGS.includes(topology) || coilH === undefined || farad === undefined || load === undefined)
    return ahead('The capacitors would stand it either way, and nothing entered says that this filter rings.')
  // no multiple of what comes bounds a pulse that swings on and on, nor one whose shape nobody knows
  const shape = waveOf(context)?.shape
  if (topology === 'T' && (shape === undefined || shape.form === 'damped-sine'))
    return ahead(
      'Behind it, the capacitor between the coils has no clamp of its own, and a pulse that rings can drive it far above what comes.',
    )
  // between two coils the capacitor has no clamp of its own, and rings to twice what comes in one step or one hump
  if (topology === 'T' && standsV < 2 * comesV)
    return ahead(
      `Behind it, the capacitor between the coils would ring up to ${volts(2 * comesV)}; it stands ${volts(standsV)}.`,
    )
  return load > Math.sqrt(coilH / farad)
    ? decided(
        'behind the filter',
        `The capacitors stand the ${volts(comesV)}, and the load of ${ohms(load)} lets this filter ring above a clamp ahead of it.`,
      )
    : ahead('The load damps this filter, so what is clamped ahead of it stays clamped.')
}
