/** Why a surge cannot be run, and what it still waits for, in words. */
import { nameOf } from '../../../line/missing.ts'
import type { Refusal, Wanted } from '../../../surge/wanted.ts'
import type { Issue } from '../../../types.ts'
import { surgeInputs } from '../inputs.ts'
import { show, V } from './show.ts'

export function refusalIssue(refusal: Refusal): Issue {
  return { key: refusal.key, code: refusal.code, message: messageOf(refusal) }
}

function messageOf(refusal: Refusal): string {
  switch (refusal.code) {
    case 'no-level':
      return refusal.row.noLevelWhy ?? 'This waveform has no level: enter volts and impedance.'
    case 'unknown-level':
      return `${refusal.row.name} has the levels ${refusal.levels.join(', ')}; enter one of them, or the open-circuit volts instead.`
    case 'half-too-early':
      return `Half value at ${show(refusal.halfSec, 'time')} must come after the peak at ${show(refusal.peakSec, 'time')}: at least 1.1 times as late.`
    case 'too-steep':
      return 'The peak may come at most a million times sooner than half value.'
    case 'outside-envelope':
      return `The envelope runs from ${show(refusal.lowHz, 'frequency')} to ${show(refusal.highHz, 'frequency')}; enter a frequency inside it.`
    case 'above-breakdown':
      return `A stand-off of ${V(refusal.standoffV)} is above the breakdown of ${V(refusal.breakdownV)}; it is usually 10 to 15 % below.`
    case 'not-a-pair':
      return `${refusal.lineName} is a single line: there is nothing between its legs. Choose line to chassis.`
    case 'both-levels':
      return 'A pin-injection level and a cable-bundle level exclude each other: empty one of the two.'
    case 'no-bundle-level':
      return `${refusal.row.name} has no cable-bundle level here; enter the open-circuit volts and the source impedance instead.`
  }
}

/** Names of fields that need not be asked for in general; the others carry theirs in the descriptor. */
const NAMES: Readonly<Record<string, string>> = {
  openCircuitV: 'the open-circuit volts',
  sourceOhm: 'the source impedance',
  peakSec: 'the time to peak',
  halfSec: 'the time to half value',
  dynamicOhm: 'the dynamic resistance',
  ratedPulseW: 'the pulse power of the suppressor',
  capacitanceF: 'the capacitance of the filter',
  inductanceH: 'the inductance of the filter',
  bundleShareFrac: 'the share of the bundle’s current on this contact',
}

export function wordOf(key: string): string {
  const input = surgeInputs.find((each) => each.key === key)
  return NAMES[key] ?? (input ? nameOf(input) : key)
}

/** "the level or the open-circuit volts" for each thing that is missing. */
export const wantedNames = (wanted: readonly Wanted[]): readonly string[] =>
  wanted.map((keys) => keys.map(wordOf).join(' or '))
