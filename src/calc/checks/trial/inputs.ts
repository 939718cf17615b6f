/** What the trial check asks: one text a column, a step between two semicolons. */
import { NOISE_WORDS, PLACE_WORDS, REPEAT_WORDS, SIGNAL_WORDS, STEP_WORDS } from '../../trial/steps.ts'
import type { ColumnType, Given, Input } from '../../types.ts'
import { lineKindInput } from '../signal-inputs.ts'

const ESTIMATE = 'For the impedance, and what it is compared with'
const NOTED = 'Where, repeats and times'
const TRIED_F = { min: 0, max: 1 }

const column = (words: readonly string[], example: string): ColumnType => ({
  is: 'column',
  words,
  min: 0,
  max: 0,
  example,
})

export const stepsInput = {
  key: 'steps',
  fact: 'trialSteps',
  label: 'Steps of the trial',
  help: 'In order: bare, empty (the adapter without a capacitor), each value, empty, bare. Between two semicolons: bare; empty; 1n; 10n; empty; bare.',
  type: { is: 'column', words: STEP_WORDS, quantity: 'capacitance', ...TRIED_F, example: '1 nF' },
  whenEmpty: {
    do: 'ask',
    name: 'the steps of the trial',
    how: 'Write what stood in the line at each step, bare first and last.',
  },
} as const satisfies Input

export const placesInput = {
  key: 'places',
  fact: 'trialPlaces',
  label: 'Where each stood',
  help: 'chassis: one from each wire to chassis. between: across the two wires. One for all, or one for each step. None at all: chassis.',
  type: column(PLACE_WORDS, 'chassis'),
  whenEmpty: { do: 'omit' },
  group: NOTED,
} as const satisfies Input

export const noiseInput = {
  key: 'noise',
  fact: 'trialNoise',
  label: 'The noise at each step',
  help: 'gone, less, same or more than on the bare line, or the reading of the receiver: 62 dBµV; 62; 41; 38; 62; 62. Readings need one on the bare line.',
  type: { is: 'column', words: NOISE_WORDS, quantity: 'level', min: -300, max: 400, example: '62 dBµV' },
  whenEmpty: {
    do: 'ask',
    name: 'what the noise did at each step',
    how: 'gone, less, same, more, or a reading; nothing between two semicolons where nobody listened.',
  },
} as const satisfies Input

const DECIBEL_OFF = { is: 'number', quantity: 'decibel', min: 0, max: 20 } as const

export const adapterInput = {
  key: 'adapterFrac',
  fact: 'trialAdapterFrac',
  label: 'Adapters may be off by',
  help: 'Tolerance of their capacitors; 0 where they were measured.',
  type: { is: 'number', quantity: 'fraction', min: 0, max: 0.9 },
  whenEmpty: { do: 'assume', text: '10 %', why: 'the usual tolerance of a set of capacitors', favourable: false },
  group: ESTIMATE,
} as const satisfies Input

export const leadInput = {
  key: 'leadH',
  fact: 'trialLeadH',
  label: 'Lead of the adapter',
  help: 'About 10 nH for each centimetre. Above half its own resonance a capacitor is none.',
  type: { is: 'number', quantity: 'inductance', min: 0, max: 1e-3 },
  whenEmpty: { do: 'assume', text: '10 nH', why: 'one centimetre of wire', favourable: false },
  group: ESTIMATE,
} as const satisfies Input

export const trialInputs = [
  lineKindInput,
  stepsInput,
  noiseInput,
  {
    key: 'signal',
    fact: 'trialSignal',
    label: 'The signal at each step',
    help: 'good or degraded; nothing, or “not looked at”, where nobody looked. Error counters, flags, an edge on the scope.',
    type: column(SIGNAL_WORDS, 'good'),
    whenEmpty: { do: 'omit', name: 'what the signal did', how: 'good, degraded or not looked at, at each step.' },
  },
  placesInput,
  {
    key: 'repeats',
    fact: 'trialRepeats',
    label: 'Repeated',
    help: 'agreed, differed or once, at each step: put in, taken out, put in again.',
    type: column(REPEAT_WORDS, 'agreed'),
    whenEmpty: { do: 'omit' },
    group: NOTED,
  },
  {
    key: 'times',
    fact: 'trialTimes',
    label: 'Time of each step',
    help: 'As it is written in the log: 14:05; 14:09; 14:15.',
    type: column([], '14:05'),
    whenEmpty: { do: 'omit' },
    group: NOTED,
  },
  {
    key: 'removed',
    fact: 'trialRemoved',
    label: 'Removed and recorded',
    help: 'Who took the last adapter out, and when. Until it stands here the complaint stays open.',
    type: column([], 'by whom, and when'),
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'neededDb',
    fact: 'neededDb',
    label: 'Attenuation needed',
    help: 'What a reading has to fall by to count as gone. Words need none.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 200, many: true },
    whenEmpty: {
      do: 'omit',
      name: 'the attenuation needed',
      how: 'Measured level − limit + margin: the need check does it.',
    },
    group: ESTIMATE,
  },
  {
    key: 'readAtHz',
    fact: 'noiseHz',
    label: 'Noise frequency',
    help: 'That of the readings. Without it they give no impedance.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11, many: true },
    whenEmpty: { do: 'omit', name: 'the noise frequency', how: 'The frequency the readings were taken at.' },
    group: ESTIMATE,
  },
  {
    key: 'offDb',
    fact: 'readingOffDb',
    label: 'Each reading may be off by',
    help: 'What repeats differ by, or what the instrument’s sheet says.',
    type: DECIBEL_OFF,
    whenEmpty: {
      do: 'assume',
      text: '1 dB',
      why: 'what careful repeats on one receiver differ by, common practice',
      favourable: false,
    },
    group: ESTIMATE,
  },
  adapterInput,
  leadInput,
  {
    key: 'sourceOhm',
    fact: 'noiseSourceOhm',
    label: 'Noise source as supposed',
    help: 'What the window was worked out with; the trial is compared with it. Several values: all of them.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e12, many: true },
    whenEmpty: { do: 'omit' },
    group: ESTIMATE,
  },
  {
    key: 'loadOhm',
    fact: 'noiseLoadOhm',
    label: 'Noise load as supposed',
    help: 'What the noise was taken to go into.',
    type: { is: 'number', quantity: 'resistance', min: 1e-6, max: 1e12 },
    whenEmpty: { do: 'omit' },
    group: ESTIMATE,
  },
  {
    key: 'mode',
    fact: 'noiseMode',
    label: 'Noise mode as supposed',
    help: 'Common: both wires together against chassis. Differential: between them.',
    type: {
      is: 'choice',
      options: [
        { value: 'common', label: 'common mode' },
        { value: 'differential', label: 'differential' },
      ],
    },
    whenEmpty: { do: 'omit' },
    group: ESTIMATE,
  },
] as const satisfies readonly Input[]

export type TrialGiven = Given<typeof trialInputs>
