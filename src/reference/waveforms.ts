/** Surge waveforms as data: shape, levels, source impedance, each with how we know it. */
import { IEC_WAVEFORMS } from './waveforms/iec.ts'
import { LIGHTNING_WAVEFORMS } from './waveforms/lightning.ts'
import { MILITARY_WAVEFORMS } from './waveforms/military.ts'
import type { Waveform } from './waveforms/types.ts'

export type {
  Repeats,
  RingEnvelope,
  ShapeSpec,
  Waveform,
  WaveLevel,
} from './waveforms/types.ts'
export { WAVEFORM_IDS } from './waveforms/types.ts'

const CUSTOM: Waveform = {
  id: 'custom',
  name: 'Your own pulse (time to peak, time to half value)',
  form: 'voltage',
  shape: undefined,
  shapeSource: { id: 'derived', clause: 'fitted to the two times', standing: 'derived' },
  note: 'A double exponential where one fits (half value later than 2.678 times the peak), else a rounded pulse.',
  levels: [],
  noLevelWhy: 'A pulse of your own has no level; enter its open-circuit volts and its source impedance.',
  repeats: [],
}

/** Every waveform, in the order they are offered. */
export const WAVEFORMS: readonly Waveform[] = [...LIGHTNING_WAVEFORMS, ...IEC_WAVEFORMS, ...MILITARY_WAVEFORMS, CUSTOM]

/** The waveform with that id; undefined when there is none. */
export const waveformById = (id: string): Waveform | undefined => WAVEFORMS.find((row) => row.id === id)

/** The 10/1000 µs pulse suppressors are rated with. */
export const RATING_PULSE = {
  form: 'front-tail',
  k: 1.019,
  frontSec: 3.827e-6,
  tailSec: 1404e-6,
} as const
