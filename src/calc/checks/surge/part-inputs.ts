/** Inputs about the suppressor: those that are always seen, and the rest. */
import { SUPPRESSOR_TYPES } from '../../../reference/suppressors.ts'
import type { Input } from '../../types.ts'
import { FARADS } from '../noise-inputs.ts'

const PART = 'More about the suppressor'

export const partInputs = [
  {
    key: 'standoffV',
    fact: 'standoffV',
    label: 'Stand-off',
    help: 'Working voltage of the suppressor. Without a breakdown below, the spread of a 5 % class is used.',
    type: { is: 'number', quantity: 'voltage', min: 0.1, max: 1e5 },
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'breakdownV',
    fact: 'breakdownV',
    label: 'Breakdown',
    help: 'At 25 °C, used as it is: the maximum for clamp volts. Empty, and no stand-off: no suppressor.',
    type: { is: 'number', quantity: 'voltage', min: 0.1, max: 1e5 },
    whenEmpty: { do: 'omit' },
    group: PART,
  },
  {
    key: 'ratedPulseW',
    fact: 'ratedPulseW',
    label: 'Pulse power, 10/1000 µs',
    help: 'Peak pulse power of the suppressor at 25 °C: 400, 600, 1500, 5000 W …',
    type: { is: 'number', quantity: 'power', min: 0.1, max: 1e7 },
    whenEmpty: {
      do: 'omit',
      name: 'the pulse power of the suppressor',
      how: 'The first line of its data sheet; it is often in the name of its class.',
    },
  },
  {
    key: 'dynamicOhm',
    fact: 'dynamicOhm',
    label: 'Dynamic resistance',
    help: '(clamp − breakdown) / rated current. Empty: from the pulse power of its class.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e4 },
    whenEmpty: { do: 'omit' },
    group: PART,
  },
] as const satisfies readonly Input[]

export const morePartInputs = [
  {
    key: 'suppressorType',
    fact: 'suppressorType',
    label: 'Kind of suppressor',
    help: 'A varistor wears with each pulse and fails short. A crowbar, once fired, holds as long as the line feeds it.',
    type: {
      is: 'choice',
      options: Object.entries(SUPPRESSOR_TYPES).map(([value, { label }]) => ({ value, label })),
    },
    defaultText: 'avalanche',
    whenEmpty: { do: 'assume', text: 'avalanche', why: 'what a contact is usually fitted with', favourable: false },
    group: PART,
  },
  {
    key: 'suppressorPlace',
    fact: 'suppressorPlace',
    label: 'Suppressor connects',
    help: 'On a pair: one from each leg to chassis, or one across the two legs.',
    type: {
      is: 'choice',
      options: [
        { value: 'leg', label: 'line (each leg) to chassis' },
        { value: 'pair', label: 'across the pair' },
      ],
    },
    defaultText: 'leg',
    whenEmpty: { do: 'assume', text: 'leg', why: 'against lightning and static', favourable: false },
    group: PART,
  },
  {
    key: 'holdingA',
    fact: 'suppressorHoldingA',
    label: 'Holding current',
    help: 'Of a crowbar, at its hottest: above it the part does not let go of the line.',
    type: { is: 'number', quantity: 'current', min: 1e-6, max: 1e4 },
    whenEmpty: {
      do: 'omit',
      name: 'the holding current of the crowbar',
      how: 'Its data sheet, at the highest temperature.',
    },
    group: PART,
  },
  {
    key: 'bidirectional',
    fact: 'suppressorBidirectional',
    label: 'Bidirectional',
    help: 'A unidirectional part conducts hard at about −1 V.',
    type: { is: 'flag' },
    defaultText: 'false',
    whenEmpty: { do: 'assume', text: 'false', why: 'usual on DC lines', favourable: false },
    group: PART,
  },
  {
    key: 'seriesCount',
    fact: 'suppressorSeriesCount',
    label: 'Parts in series',
    help: 'Equal parts one behind the other; every figure of the suppressor here is that of one part.',
    type: { is: 'number', quantity: 'count', min: 1, max: 12 },
    defaultText: '1',
    whenEmpty: { do: 'assume', text: '1', why: 'one part', favourable: false },
    group: PART,
  },
  {
    key: 'suppressorF',
    fact: 'suppressorF',
    label: 'Suppressor capacitance',
    help: 'At 0 V, of one part. It uses room of the signal; in service 30 to 100 % of it are there.',
    type: FARADS,
    whenEmpty: { do: 'omit', name: 'the capacitance of the suppressor', how: 'Its data sheet, at 0 V.' },
    group: PART,
  },
  {
    key: 'suppressorLeadH',
    fact: 'suppressorLeadH',
    label: 'Suppressor lead inductance',
    help: 'Of both leads, to the line and to the shell: about 1 nH per mm. Decides on static, not on lightning.',
    type: { is: 'number', quantity: 'inductance', min: 0, max: 1e-3 },
    whenEmpty: {
      do: 'assume',
      name: 'the lead of the suppressor',
      how: 'Measure both leads, to the line and to the shell: about 1 nH per mm.',
      text: '0',
      why: 'no lead entered',
      favourable: true,
      contrary: '10n',
    },
    group: PART,
  },
  {
    key: 'ambientC',
    fact: 'ambientC',
    label: 'Temperature',
    help: 'Of the suppressor before the pulse.',
    type: { is: 'number', quantity: 'temperature', min: -100, max: 300 },
    whenEmpty: {
      do: 'assume',
      name: 'the temperature of the suppressor',
      how: 'The hottest the bay of the box becomes; its environmental category names it.',
      text: '25',
      why: 'the temperature of the rating',
      favourable: true,
      contrary: '85',
    },
    group: PART,
  },
  {
    key: 'derateZeroC',
    fact: 'derateZeroC',
    label: 'Rating reaches zero at',
    help: 'End of the straight derating line from 25 °C: 150 or 175 °C. One that gives 60 % at 150 °C ends at 337.5 °C.',
    type: { is: 'number', quantity: 'temperature', min: 26, max: 1000 },
    whenEmpty: { do: 'assume', text: '150', why: 'the steeper of the usual end points', favourable: false },
    group: PART,
  },
] as const satisfies readonly Input[]
