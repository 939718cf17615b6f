/** IEC 61000-4-2 contact discharge, -4-4 burst and -4-5 combination wave. */
import type { WaveCitation, Waveform, WaveLevel } from './types.ts'

const memory = (clause: string): WaveCitation => ({ id: 'iec-61000-4', clause, standing: 'memory' })

const level = (n: number, openCircuitV: number, ohm: number, clause: string): WaveLevel => ({
  level: n,
  openCircuitV,
  shortCircuitA: openCircuitV / ohm,
  source: memory(clause),
})

/** Peak of the discharge current per volt of charge, from the analytic form. */
export const ESD_AMPERE_PER_VOLT = 14.921292564676905 / 4000

const ESD_PEAK_AT_4_KV = 14.921292564676905
const BURST_PEAK = 1.0026671667519884

/** Waveforms of the IEC 61000-4 series. */
export const IEC_WAVEFORMS: readonly Waveform[] = [
  {
    id: 'iec-esd',
    name: 'IEC 61000-4-2 contact discharge',
    form: 'current',
    shape: {
      form: 'steep-sum',
      power: 1.8,
      terms: [
        { weight: 48.04483076606318 / ESD_PEAK_AT_4_KV, riseSec: 1.1e-9, tailSec: 2e-9 },
        { weight: 21.55039695792378 / ESD_PEAK_AT_4_KV, riseSec: 12e-9, tailSec: 37e-9 },
      ],
    },
    shapeSource: memory('-4-2, analytic current'),
    note: '3.73 A per kilovolt at the first peak, 2 A at 30 ns, 1 A at 60 ns. The current is the one into a short.',
    sourceOhm: { ohm: 330, why: '150 pF through 330 Ω', source: memory('-4-2') },
    amperePerVolt: ESD_AMPERE_PER_VOLT,
    levels: [2000, 4000, 6000, 8000].map((volts, i) => ({
      level: i + 1,
      openCircuitV: volts,
      shortCircuitA: volts * ESD_AMPERE_PER_VOLT,
      source: memory('-4-2, contact levels'),
    })),
    repeats: [
      {
        id: 'shots',
        words: '10 discharges of a polarity, 1 s apart',
        gaps: [{ count: 10, spacingSec: 1 }],
        laterDriveShare: 1,
        of: 'pin',
        source: memory('-4-2'),
      },
    ],
  },
  {
    id: 'iec-burst',
    name: 'IEC 61000-4-4 burst (5/50 ns)',
    form: 'voltage',
    shape: {
      form: 'steep-sum',
      power: 1.8,
      terms: [{ weight: 1.4021818941704853 / BURST_PEAK, riseSec: 3.5e-9, tailSec: 51e-9 }],
    },
    shapeSource: memory('-4-4, analytic pulse'),
    nominal: { peakSec: 5e-9, halfSec: 50e-9, source: { id: 'T10', clause: '5/50 ns', standing: 'read' } },
    note: '5 ns is the 10–90 % rise and 50 ns the width at half value. Levels of power ports; signal ports take half.',
    sourceOhm: { ohm: 50, why: 'generator impedance', source: memory('-4-4') },
    levels: [500, 1000, 2000, 4000].map((volts, i) => level(i + 1, volts, 50, '-4-4, power ports')),
    repeats: [
      {
        id: 'burst',
        words: 'a burst of 75 pulses at 100 kHz',
        gaps: [{ count: 75, spacingSec: 10e-6 }],
        laterDriveShare: 1,
        of: 'pin',
        source: { id: 'T10', clause: '75 pulses; 5 or 100 kHz', standing: 'read' },
      },
    ],
  },
  {
    id: 'iec-1.2-50',
    name: 'IEC 61000-4-5 surge, open circuit 1.2/50 µs',
    form: 'voltage',
    shape: { form: 'front-tail', k: 1.037, frontSec: 0.407e-6, tailSec: 68.22e-6 },
    shapeSource: memory('-4-5, closed form'),
    nominal: { peakSec: 1.2e-6, halfSec: 50e-6, source: memory('-4-5') },
    note: '1.2 µs is a virtual front, 1.67 times the 30–90 % rise. 2 Ω is the generator; line to earth on power 12 Ω, signal lines 42 Ω.',
    sourceOhm: { ohm: 2, why: 'generator impedance; signal lines are coupled through 42 Ω', source: memory('-4-5') },
    levels: [500, 1000, 2000, 4000].map((volts, i) => level(i + 1, volts, 2, '-4-5')),
    repeats: [
      {
        id: 'shots',
        words: '5 surges of a polarity, 60 s apart',
        gaps: [{ count: 5, spacingSec: 60 }],
        laterDriveShare: 1,
        of: 'pin',
        source: memory('-4-5'),
      },
    ],
  },
  {
    id: 'iec-8-20',
    name: 'IEC 61000-4-5 surge, short circuit 8/20 µs',
    form: 'current',
    shape: { form: 'cubic', k: 0.01243, unitSec: 1e-6, tailSec: 3.911e-6 },
    shapeSource: memory('-4-5, closed form'),
    nominal: { peakSec: 8e-6, halfSec: 20e-6, source: memory('-4-5') },
    note: '8 µs is a virtual front, 1.25 times the 10–90 % rise: the true peak is at 11.7 µs.',
    sourceOhm: { ohm: 2, why: 'open-circuit volts over short-circuit amperes', source: memory('-4-5') },
    levels: [500, 1000, 2000, 4000].map((volts, i) => level(i + 1, volts, 2, '-4-5')),
    repeats: [
      {
        id: 'shots',
        words: '5 surges of a polarity, 60 s apart',
        gaps: [{ count: 5, spacingSec: 60 }],
        laterDriveShare: 1,
        of: 'pin',
        source: memory('-4-5'),
      },
    ],
  },
]
