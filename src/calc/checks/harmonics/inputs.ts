/** What the harmonics check asks. */
import { WAVEFORMS } from '../../harmonics/spectrum.ts'
import type { Given, Input } from '../../types.ts'

const VICTIM = 'The receiver that suffers'

export const harmonicsInputs = [
  {
    key: 'fundamentalHz',
    fact: 'clockHz',
    label: 'Fundamentals',
    help: 'Clocks, converters, transmitters, strobes; up to eight: 100k;121.175M.',
    type: { is: 'number', quantity: 'frequency', min: 0.1, max: 1e11, many: true },
    whenEmpty: {
      do: 'ask',
      name: 'the fundamental',
      how: 'The clock or switching frequency on the data sheet, the channel that is sent, or the step between birdies.',
    },
  },
  {
    key: 'offFrac',
    fact: 'clockOffFrac',
    label: 'Each may be off by',
    help: 'Tolerance of each, or one for all. A crystal 0.01 %, a converter 10 % and more.',
    type: { is: 'number', quantity: 'fraction', min: 0, max: 0.5, many: true },
    whenEmpty: { do: 'assume', text: '0', why: 'exactly as entered', favourable: true, contrary: '10 %' },
  },
  {
    key: 'waveforms',
    fact: 'clockWaveforms',
    label: 'Waveform of each',
    help: 'square (odd harmonics only), pulse (every harmonic), sine or transmitter (levels not known); one for each, or one for all.',
    type: { is: 'column', words: WAVEFORMS, min: 0, max: 0, example: 'square' },
    whenEmpty: { do: 'assume', text: 'pulse', why: 'every harmonic is looked at', favourable: false },
  },
  {
    key: 'riseSec',
    fact: 'clockRiseSec',
    label: 'Rise time of each',
    help: '10 to 90 %; one for each, or one for all. Above 1/(π·tr) the levels fall twice as fast.',
    type: { is: 'number', quantity: 'time', min: 1e-13, max: 1, many: true },
    whenEmpty: { do: 'omit' },
  },
  {
    key: 'victimHz',
    fact: 'victimHz',
    label: 'Channel that suffers',
    help: 'Where the noise is heard. Empty: every band of the table.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e11, many: true },
    whenEmpty: { do: 'omit' },
    group: VICTIM,
  },
  {
    key: 'widthHz',
    fact: 'victimWidthHz',
    label: 'It listens over',
    help: 'Bandwidth of the receiver, both sides together: 25 kHz for voice on VHF, 2 MHz and more for GNSS.',
    type: { is: 'number', quantity: 'frequency', min: 1, max: 1e9 },
    whenEmpty: { do: 'assume', text: '25 kHz', why: 'one voice channel', favourable: true, contrary: '2 MHz' },
    group: VICTIM,
  },
] as const satisfies readonly Input[]

export type HarmonicsGiven = Given<typeof harmonicsInputs>
