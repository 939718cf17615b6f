/** What the trace check asks: the points of a trace, the limit, and how both were read. */
import { METHOD_LINES } from '../../../reference/method-lines.ts'
import { STANDING_WORDS } from '../../../reference/standing.ts'
import { rowCountInput, settledForInput } from '../../trace/mark.ts'
import type { Given, Input } from '../../types.ts'
import { needInputs } from '../need/inputs.ts'

const OWN = 'A limit line of your own'

const UNITS = [
  { value: 'dbuv', label: 'dBµV' },
  { value: 'dbua', label: 'dBµA' },
  { value: 'dbm', label: 'dBm' },
  { value: 'dbv', label: 'dBV' },
  { value: 'dbuv-m', label: 'dBµV/m' },
] as const

const DETECTORS = [
  { value: 'peak', label: 'peak' },
  { value: 'quasi-peak', label: 'quasi-peak' },
  { value: 'average', label: 'average' },
  { value: 'rms', label: 'rms' },
] as const

const HERTZ = { is: 'number', quantity: 'frequency', min: 1e-3, max: 1e12 } as const
const LEVELS = { is: 'number', quantity: 'level', min: -400, max: 400, many: true } as const
const [, , marginInput, impedanceInput] = needInputs

export const OWN_LIMIT = 'own'

export const traceInputs = [
  {
    key: 'traceHz',
    fact: 'traceHz',
    label: 'Frequencies of the trace',
    help: 'Rising or in any order, 150k;1.2M. From a file above: the points that decide.',
    type: { ...HERTZ, many: true },
    whenEmpty: {
      do: 'ask',
      name: 'a trace',
      how: 'Open a file of a spectrum, paste one, or type the frequencies that stick out.',
    },
  },
  {
    key: 'traceDb',
    fact: 'traceDb',
    label: 'Level at each',
    help: 'One for each frequency, 105;88. Susceptibility: the level at which the equipment is upset.',
    type: LEVELS,
    whenEmpty: { do: 'ask', name: 'its levels', how: 'The reading at each frequency, in one unit.' },
  },
  {
    key: 'traceUnit',
    fact: 'traceUnit',
    label: 'Unit of the levels',
    help: 'dBm counts into 50 Ω unless another impedance is entered.',
    type: { is: 'choice', options: UNITS },
    whenEmpty: { do: 'ask', name: 'the unit of the levels', how: 'It stands on the analyser beside the scale.' },
  },
  {
    key: 'limit',
    fact: 'traceLimit',
    label: 'Limit',
    help: 'The line of your test plan counts: enter it as your own where it differs. RTCA DO-160 sections 20 and 21, CE101 and RE102 below 2 MHz are not in the list, because their points were not confirmed.',
    type: {
      is: 'choice',
      options: [
        { value: OWN_LIMIT, label: 'a line of your own' },
        ...METHOD_LINES.map(({ id, name, source }) => ({
          value: id,
          label: `${name}, ${STANDING_WORDS[source.standing]}`,
        })),
      ],
    },
    whenEmpty: {
      do: 'ask',
      name: 'the limit',
      how: 'From the test plan or specification in force. Points of RTCA DO-160 sections 20 and 21 and of CE101 are not confirmed, so they are not in the list: enter the corners as a line of your own.',
    },
  },
  {
    key: 'nominalV',
    fact: 'traceNominalV',
    label: 'Nominal voltage',
    help: 'CE102 alone: 28 V nothing, 115 V 6 dB, 220 V 9 dB, 270 V 10 dB, 440 V 12 dB more is allowed.',
    type: { is: 'number', quantity: 'voltage', min: 1, max: 1000 },
    whenEmpty: { do: 'assume', text: '28', why: 'the line that allows least', favourable: false },
  },
  marginInput,
  {
    key: 'bandwidthHz',
    fact: 'traceBandwidthHz',
    label: 'Bandwidth of the trace',
    help: 'Resolution bandwidth the analyser or receiver stood at.',
    type: HERTZ,
    whenEmpty: {
      do: 'omit',
      name: 'the bandwidth of the trace',
      how: 'The resolution bandwidth stands on the screen of the analyser, or in the head of the file.',
    },
  },
  {
    key: 'detector',
    fact: 'traceDetector',
    label: 'Detector of the trace',
    help: 'Peak reads at least as much as quasi-peak, and that as average (from memory).',
    type: { is: 'choice', options: DETECTORS },
    whenEmpty: {
      do: 'omit',
      name: 'the detector of the trace',
      how: 'It stands on the screen of the analyser, or in the head of the file.',
    },
  },
  {
    key: 'emission',
    fact: 'traceEmission',
    label: 'Emission',
    help: 'Only where the bandwidth is another than the method’s: narrowband reads the same, noise 10·log10 and pulses 20·log10 of the ratio more.',
    type: {
      is: 'choice',
      options: [
        { value: 'narrowband', label: 'narrowband: lines that stay when the bandwidth is halved' },
        { value: 'noise', label: 'noise: 3 dB less in half the bandwidth' },
        { value: 'impulsive', label: 'impulsive: 6 dB less in half the bandwidth' },
      ],
    },
    whenEmpty: {
      do: 'omit',
      name: 'what the emission is like',
      how: 'Halve the bandwidth: the same is narrowband, 3 dB less noise, 6 dB less impulsive.',
    },
  },
  {
    key: 'clamp',
    fact: 'traceClamp',
    label: 'Clamp on this line’s cable',
    help: 'Radiated traces only: what a clamp ferrite on the cable of this line did to the worst of the trace.',
    type: {
      is: 'choice',
      options: [
        { value: 'dominates', label: 'the worst fell: this cable dominates' },
        { value: 'not', label: 'nothing fell: another cable or the box' },
      ],
    },
    whenEmpty: {
      do: 'omit',
      name: 'a clamp on its cable',
      how: 'A radiated level comes from every cable and box: put a clamp ferrite on this cable and read the worst again.',
    },
  },
  { ...impedanceInput, help: 'Across which levels in dBm, dBµA and dBµV meet; dBm alone counts into 50 Ω.' },
  {
    key: 'ownHz',
    fact: 'traceOwnHz',
    label: 'Corners',
    help: 'Frequencies of its corners, 150k;2M;30M; two at one frequency are a step.',
    type: { ...HERTZ, many: true },
    whenEmpty: {
      do: 'omit',
      name: 'the corners of your line',
      how: 'Frequency and level of each corner, from the test plan.',
    },
    group: OWN,
  },
  {
    key: 'ownDb',
    fact: 'traceOwnDb',
    label: 'Level at each corner',
    help: 'One for each, 73;40;40; straight between them over the logarithm of frequency.',
    type: LEVELS,
    whenEmpty: { do: 'omit', name: 'the levels of your line', how: 'One for each corner, from the test plan.' },
    group: OWN,
  },
  {
    key: 'ownUnit',
    fact: 'traceOwnUnit',
    label: 'Unit of your line',
    help: 'Empty: that of the trace.',
    type: { is: 'choice', options: UNITS },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'ownSide',
    fact: 'traceOwnSide',
    label: 'Your line says',
    help: 'Emission: what may come out. Susceptibility: what has to be withstood, and the trace is where the equipment is upset.',
    type: {
      is: 'choice',
      options: [
        { value: 'emission', label: 'what may come out' },
        { value: 'susceptibility', label: 'what has to be withstood' },
      ],
    },
    defaultText: 'emission',
    whenEmpty: { do: 'assume', text: 'emission', why: 'a trace of what comes out', favourable: false },
    group: OWN,
  },
  {
    key: 'ownBandwidthHz',
    fact: 'traceOwnBandwidthHz',
    label: 'Bandwidth of your line',
    help: 'Empty: taken to be that of the trace.',
    type: HERTZ,
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  {
    key: 'ownDetector',
    fact: 'traceOwnDetector',
    label: 'Detector of your line',
    help: 'Empty: taken to be that of the trace.',
    type: { is: 'choice', options: DETECTORS },
    whenEmpty: { do: 'omit' },
    group: OWN,
  },
  rowCountInput,
  settledForInput,
] as const satisfies readonly Input[]

export type TraceGiven = Given<typeof traceInputs>
