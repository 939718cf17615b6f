/** MIL-STD-461G CS115, CS116 and RS105. */
import type { RingEnvelope, WaveCitation, Waveform } from './types.ts'

const memory = (clause: string): WaveCitation => ({ id: 'mil-std-461', clause, standing: 'memory' })

/** Peak current of CS116 over frequency, in A, from 10 kHz to 100 MHz. */
export const CS116_ENVELOPE = {
  lowHz: 1e4,
  flatFromHz: 1e6,
  flatToHz: 30e6,
  highHz: 100e6,
  flatA: 10,
  source: memory('5.14: 0.1 A at 10 kHz, 10 A from 1 to 30 MHz, 3 A at 100 MHz'),
} as const satisfies RingEnvelope

/** The pulse of CS115: its corners after the start, its one level, and how often it comes. */
const CS115_CORNERS = { topSec: 2e-9, fallSec: 32e-9, endSec: 34e-9 } as const
export const CS115_PULSE = {
  edgeSec: CS115_CORNERS.topSec,
  widthSec: CS115_CORNERS.fallSec - CS115_CORNERS.topSec,
  currentA: 5,
  loopOhm: 100,
  perSec: 30,
  forSec: 60,
} as const

/** Waveforms of MIL-STD-461G. */
export const MILITARY_WAVEFORMS: readonly Waveform[] = [
  {
    id: 'cs115',
    name: 'MIL-STD-461 CS115 (5 A, 30 ns)',
    form: 'current',
    shape: {
      form: 'lines',
      points: [
        [0, 0],
        [CS115_CORNERS.topSec, 1],
        [CS115_CORNERS.fallSec, 1],
        [CS115_CORNERS.endSec, 0],
      ],
    },
    shapeSource: { id: 'T14', clause: '5 A, rise and fall at most 2 ns, width at least 30 ns', standing: 'read' },
    nominal: {
      peakSec: CS115_CORNERS.topSec,
      halfSec: 33e-9,
      source: { id: 'T14', clause: 'CS115', standing: 'read' },
    },
    note: 'A bulk-cable pulse: what reaches one contact is at most this.',
    sourceOhm: {
      ohm: CS115_PULSE.loopOhm,
      why: 'set in a 100 Ω loop',
      source: { id: 'T14', clause: 'CS115', standing: 'read' },
    },
    levels: [],
    noLevelWhy: 'CS115 has one level, 5 A in a 100 Ω loop (500 V open circuit): leave the level empty.',
    only: {
      openCircuitV: CS115_PULSE.currentA * CS115_PULSE.loopOhm,
      source: { id: 'T14', clause: 'CS115', standing: 'read' },
    },
    repeats: [
      {
        id: 'train',
        words: '1,800 pulses: 30 a second for a minute',
        gaps: [{ count: CS115_PULSE.perSec * CS115_PULSE.forSec, spacingSec: 1 / CS115_PULSE.perSec }],
        laterDriveShare: 1,
        of: 'pin',
        source: memory('5.13, 30 Hz for 1 minute'),
      },
    ],
  },
  {
    id: 'cs116',
    name: 'MIL-STD-461 CS116 (damped sine, 10 kHz to 100 MHz)',
    form: 'current',
    shape: { form: 'damped-sine' },
    shapeSource: memory('5.14, damped sine'),
    note: 'Test at 0.01, 0.1, 1, 10, 30 and 100 MHz. The current follows the envelope over frequency.',
    sourceOhm: {
      ohm: 100,
      why: 'taken as the 100 Ω loop of CS115; the figure for CS116 was not read',
      source: memory('5.14'),
    },
    levels: [],
    noLevelWhy:
      'CS116 has no numbered level: the current follows its envelope at the ring frequency. Leave the level empty.',
    ring: {
      hz: 1e6,
      q: 20,
      why: 'slowest decay of 15 ± 5',
      source: { id: 'T15', clause: 'Q = 15 ± 5', standing: 'read' },
      envelope: CS116_ENVELOPE,
    },
    repeats: [],
  },
  {
    id: 'rs105',
    name: 'MIL-STD-461 RS105 (field pulse, 2.5/23 ns)',
    form: 'voltage',
    shape: { form: 'double-exponential', k: 1.3, aPerSec: 4e7, bPerSec: 6e8 },
    shapeSource: memory('5.23, double exponential'),
    nominal: { peakSec: 2.5e-9, halfSec: 23e-9, source: memory('5.23: 10–90 % rise and width at half value') },
    note: 'The shape of a field, not of a voltage: what a cable picks up of it must be stated.',
    levels: [],
    noLevelWhy:
      'RS105 is a field in volts per metre; what it couples into this line is not a level. Enter the open-circuit volts and the source impedance.',
    repeats: [],
  },
]
