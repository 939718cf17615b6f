/** What the loop check asks: a clamp, a current beside a voltage, trials with capacitors. All of it may stay empty. */
import type { Given, Input } from '../../types.ts'
import { lineKindInput } from '../signal-inputs.ts'
import { adapterInput, leadInput, noiseInput, placesInput, stepsInput } from '../trial/inputs.ts'

const CLAMP = 'Clamp ferrite on the whole cable'
const PROBE = 'Current and voltage at the load'
const TRIAL = 'Capacitors tried across the line'

const NOTED = 'A trial on this line, as it was noted'

const DECIBELS = { is: 'number', quantity: 'decibel', min: -60, max: 120 } as const
const LEVEL = { is: 'level', min: -300, max: 400 } as const
const TRIED = { is: 'number', quantity: 'capacitance', min: 1e-15, max: 1 } as const

export const loopInputs = [
  {
    key: 'clampOhm',
    fact: 'clampOhm',
    label: 'Impedance of the clamp',
    help: 'At the noise frequency, from its sheet; times the turns squared. Several values count all: its least and its most, 80;120.',
    type: { is: 'number', quantity: 'resistance', min: 1e-3, max: 1e6, many: true },
    whenEmpty: { do: 'omit' },
    group: CLAMP,
  },
  {
    key: 'fallDb',
    fact: 'clampFallDb',
    label: 'The noise falls by',
    help: 'Reading without the clamp minus reading with it, at the same place. A rise is a negative number.',
    type: DECIBELS,
    whenEmpty: { do: 'omit' },
    group: CLAMP,
  },
  {
    key: 'currentDb',
    fact: 'probeCurrentDb',
    label: 'Noise current into the load',
    help: 'Current probe over the wires at the box the noise goes into, in dBµA: receiver reading minus transfer impedance.',
    type: LEVEL,
    whenEmpty: { do: 'omit' },
    group: PROBE,
  },
  {
    key: 'voltageDb',
    fact: 'probeVoltageDb',
    label: 'Noise voltage there',
    help: 'From the same wires to the case of that box, in dBµV, by a probe of high impedance.',
    type: LEVEL,
    whenEmpty: { do: 'omit' },
    group: PROBE,
  },
  {
    key: 'firstF',
    fact: 'trialFirstF',
    label: 'First capacitor',
    help: 'What was added across the line, below half its own resonance.',
    type: TRIED,
    whenEmpty: { do: 'omit' },
    group: TRIAL,
  },
  {
    key: 'firstDb',
    fact: 'trialFirstDb',
    label: 'It lowers the noise by',
    help: 'Reading without it minus reading with it.',
    type: DECIBELS,
    whenEmpty: { do: 'omit' },
    group: TRIAL,
  },
  {
    key: 'secondF',
    fact: 'trialSecondF',
    label: 'Second capacitor',
    help: 'Another value in the same place. Two readings also show a part that is no resistance.',
    type: TRIED,
    whenEmpty: { do: 'omit' },
    group: TRIAL,
  },
  {
    key: 'secondDb',
    fact: 'trialSecondDb',
    label: 'It lowers the noise by',
    help: 'Reading without it minus reading with it.',
    type: DECIBELS,
    whenEmpty: { do: 'omit' },
    group: TRIAL,
  },
  {
    key: 'readAtHz',
    fact: 'noiseHz',
    label: 'Noise frequency',
    help: 'One frequency, that of the readings. Only the capacitors need it.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11 },
    whenEmpty: { do: 'omit' },
    group: TRIAL,
  },
  {
    key: 'offDb',
    fact: 'readingOffDb',
    label: 'Each reading may be off by',
    help: 'What repeats differ by, or what the instrument’s sheet says. A fall is two readings, so it may be off by twice this. Empty: nothing is assumed, and the answer says what 1 dB would change.',
    type: { is: 'number', quantity: 'decibel', min: 0, max: 20 },
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'higherEnd',
    fact: 'higherEnd',
    label: 'The higher end is',
    help: 'A clamp and a capacitor give two impedances, not which is where. Choose only what another reading says, and only where nothing resonates.',
    type: {
      is: 'choice',
      options: [
        { value: 'source', label: 'where the noise comes from' },
        { value: 'load', label: 'where it goes in' },
      ],
    },
    whenEmpty: { do: 'omit' },
  },
  { ...stepsInput, whenEmpty: { do: 'omit' }, group: NOTED },
  { ...noiseInput, whenEmpty: { do: 'omit' }, group: NOTED },
  { ...placesInput, group: NOTED },
  { ...adapterInput, whenEmpty: { do: 'omit' }, group: NOTED },
  { ...leadInput, whenEmpty: { do: 'omit' }, group: NOTED },
  { ...lineKindInput, whenEmpty: { do: 'omit' }, group: NOTED },
] as const satisfies readonly Input[]

export type LoopGiven = Given<typeof loopInputs>
