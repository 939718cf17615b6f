/** Limits of one's own rule book on power lines, asked in the same words by every check that keeps them. */
import type { Input } from '../types.ts'

export const RULES_GROUP = 'Other limits'

export const navyRuleInput = {
  key: 'navyRule',
  fact: 'navyRule',
  label: 'Navy line-to-ground rule',
  help: 'MIL-STD-461 4.2.2 limits line-to-ground capacitance on power lines of Navy equipment. Off unless it applies to you.',
  type: { is: 'flag' },
  defaultText: 'false',
  whenEmpty: { do: 'assume', text: 'false', why: 'applies to Navy procurement only', favourable: false },
  group: RULES_GROUP,
} as const satisfies Input

export const loadWInput = {
  key: 'loadW',
  fact: 'loadW',
  label: 'Connected load',
  help: 'For that rule on DC lines: 75 nF per kW.',
  type: { is: 'number', quantity: 'power', min: 0, max: 1e7 },
  whenEmpty: {
    do: 'omit',
    name: 'the connected load',
    how: 'The nameplate of the equipment or the electrical load analysis gives its watts.',
  },
  group: RULES_GROUP,
} as const satisfies Input

export const chassisLimitInput = {
  key: 'chassisLimitA',
  fact: 'chassisLimitA',
  label: 'Chassis current allowed',
  help: 'Largest steady current of each line to chassis that your specification allows, rms. It bounds the capacitance on AC.',
  type: { is: 'number', quantity: 'current', min: 1e-9, max: 1e3 },
  whenEmpty: {
    do: 'omit',
    name: 'the chassis current allowed',
    how: 'The specification of the equipment or of the supply names it, rms for each line.',
  },
  group: RULES_GROUP,
} as const satisfies Input
