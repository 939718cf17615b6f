/** What the tone check asks: the tone, and what is known of what turns and switches on board. */
import type { Given, Input } from '../../types.ts'

const ENGINE = 'Engine and alternator'
const BUS = 'AC bus and rectifier'

const COUNT = { is: 'number', quantity: 'count' } as const

export const toneInputs = [
  {
    key: 'toneHz',
    fact: 'toneHz',
    label: 'Tone',
    help: 'Heard against a tuning app, read from a recording, or listened to here.',
    type: { is: 'number', quantity: 'frequency', min: 10, max: 30e3 },
    whenEmpty: {
      do: 'ask',
      name: 'the tone',
      how: 'A spectrum app on the headset, a recording at two speeds of the engine, or the microphone here.',
    },
  },
  {
    key: 'offFrac',
    fact: 'toneOffFrac',
    label: 'It may be off by',
    help: 'By ear about 3 %, by a spectrum 0.5 %.',
    type: { is: 'number', quantity: 'fraction', min: 1e-4, max: 0.3 },
    whenEmpty: { do: 'assume', text: '2 %', why: 'tone and rpm read together', favourable: false },
  },
  {
    key: 'rpm',
    fact: 'engineRpm',
    label: 'Engine speed',
    help: 'Turns a minute while it is heard.',
    type: { is: 'number', quantity: 'number', min: 1, max: 1e5 },
    whenEmpty: { do: 'omit' },
    group: ENGINE,
  },
  {
    key: 'driveRatio',
    fact: 'driveRatio',
    label: 'Drive of the alternator',
    help: 'Its turns for one of the engine: by belt 2 to 3, on the gearbox by the manual.',
    type: { is: 'number', quantity: 'number', min: 0.01, max: 100 },
    whenEmpty: { do: 'omit' },
    group: ENGINE,
  },
  {
    key: 'polePairs',
    fact: 'polePairs',
    label: 'Pole pairs',
    help: 'Half its poles: a claw-pole alternator has 6 or 7.',
    type: { ...COUNT, min: 1, max: 60 },
    whenEmpty: { do: 'omit' },
    group: ENGINE,
  },
  {
    key: 'cylinders',
    fact: 'cylinderCount',
    label: 'Cylinders',
    help: 'Of a four-stroke engine.',
    type: { ...COUNT, min: 1, max: 36 },
    whenEmpty: { do: 'omit' },
    group: ENGINE,
  },
  {
    key: 'bars',
    fact: 'barCount',
    label: 'Commutator bars',
    help: 'Of a generator driven as above.',
    type: { ...COUNT, min: 2, max: 300 },
    whenEmpty: { do: 'omit' },
    group: ENGINE,
  },
  {
    key: 'busHz',
    fact: 'busHz',
    label: 'AC bus',
    help: '400, or both ends of a bus that varies: 360;800.',
    type: { is: 'number', quantity: 'frequency', min: 10, max: 5e3, many: true },
    whenEmpty: { do: 'assume', text: '400', why: 'the usual AC bus, or an inverter', favourable: false },
    group: BUS,
  },
  {
    key: 'pulses',
    fact: 'pulseNumber',
    label: 'Pulses of the rectifier',
    help: '6, 12 or 18 in one period.',
    type: { ...COUNT, min: 1, max: 96 },
    whenEmpty: { do: 'omit' },
    group: BUS,
  },
] as const satisfies readonly Input[]

export type ToneGiven = Given<typeof toneInputs>
