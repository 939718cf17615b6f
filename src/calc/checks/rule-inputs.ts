/** Inputs of the Navy line-to-ground rule, asked in the same words by `window` and `power`. */
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
  help: 'For that rule on DC lines: 0.075 µF per kW.',
  type: { is: 'number', quantity: 'power', min: 0, max: 1e7 },
  whenEmpty: { do: 'omit' },
  group: RULES_GROUP,
} as const satisfies Input
