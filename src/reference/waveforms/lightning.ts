/** RTCA DO-160 section 22 waveforms 1 to 6 and the pin-injection levels. */
import type { Repeats, WaveCitation, Waveform, WaveLevel } from './types.ts'

const memory = (clause: string): WaveCitation => ({ id: 'do-160', clause, standing: 'memory' })
const read = (id: 'T1' | 'T2' | 'T3' | 'T4' | 'T8', clause: string): WaveCitation => ({ id, clause, standing: 'read' })

const TABLE = 'table 22-2'
const ONLY_BUNDLE =
  'is a cable-bundle waveform without a pin-injection level; enter the open-circuit volts and the source impedance of your test. Never size one pin from a bundle current.'

type Row = readonly [level: number, openCircuitV: number, shortCircuitA: number, source: WaveCitation]
const bundle = (rows: readonly (readonly [openCircuitV: number, shortCircuitA: number])[]): readonly WaveLevel[] =>
  rows.map(([openCircuitV, shortCircuitA], i) => ({
    level: i + 1,
    openCircuitV,
    shortCircuitA,
    source: memory('single-stroke cable-bundle levels, outline'),
  }))
const DOUBLE_EXPONENTIAL_BUNDLE = bundle([
  [50, 100],
  [125, 250],
  [300, 600],
  [750, 1500],
  [1600, 3200],
])

const levels = (rows: readonly Row[]): readonly WaveLevel[] =>
  rows.map(([level, openCircuitV, shortCircuitA, source]) => ({ level, openCircuitV, shortCircuitA, source }))

const PIN_SHOTS: Repeats = {
  id: 'pin-shots',
  words: '10 shots of a polarity, 10 s apart (the spacing is assumed)',
  gaps: [{ count: 10, spacingSec: 10 }],
  laterDriveShare: 1,
  of: 'pin',
  source: memory('10 per polarity'),
}

/** Thirteen more at half the drive, 10 to 200 ms apart: taken at the closest. */
const STROKES: Repeats = {
  id: 'strokes',
  words: 'a multiple stroke: 1 + 13 at half the voltage, 10 ms apart',
  gaps: [{ count: 14, spacingSec: 10e-3 }],
  laterDriveShare: 0.5,
  of: 'bundle',
  source: memory('multiple stroke, outline: 10 to 200 ms apart'),
}

/** Bursts of twenty pulses, three bursts together, every 3 s for 5 minutes: each gap at its closest. */
const BURSTS: Repeats = {
  id: 'burst',
  words: 'a multiple burst: 20 pulses 50 µs apart, 3 bursts 30 ms apart, every 3 s for 5 min',
  gaps: [
    { count: 20, spacingSec: 50e-6 },
    { count: 3, spacingSec: 30e-3 },
    { count: 100, spacingSec: 3 },
  ],
  laterDriveShare: 1,
  of: 'bundle',
  source: memory('multiple burst: 20 pulses, 50 to 1000 µs apart, bursts 30 to 300 ms apart'),
}

const FRONT_AND_TAIL = { k: 1.09405, aPerSec: 11354, bPerSec: 647265 } as const

/** Waveforms 1 to 6. Shape tolerance on T1 and T2 is ±20 %. */
export const LIGHTNING_WAVEFORMS: readonly Waveform[] = [
  {
    id: 'wf1',
    name: 'DO-160 waveform 1 (current 6.4/69 µs)',
    form: 'current',
    shape: { form: 'double-exponential', ...FRONT_AND_TAIL },
    shapeSource: read('T3', 'constants of component A'),
    nominal: { peakSec: 6.4e-6, halfSec: 69e-6, source: read('T2', 'waveform 1') },
    note: 'The constants give 6.36/68.97 µs.',
    levels: [],
    noLevelWhy: `Waveform 1 ${ONLY_BUNDLE}`,
    isBundleOnly: true,
    bundleLevels: DOUBLE_EXPONENTIAL_BUNDLE,
    repeats: [STROKES],
  },
  {
    id: 'wf2',
    name: 'DO-160 waveform 2 (voltage, 0.1 µs to peak, zero at 6.4 µs)',
    form: 'voltage',
    shape: {
      form: 'lines',
      points: [
        [0, 0],
        [0.1e-6, 1],
        [6.4e-6, 0],
      ],
    },
    shapeSource: read('T2', 'waveform 2'),
    nominal: { peakSec: 0.1e-6, halfSec: 6.4e-6, source: memory('waveform 2: 0.1 µs at most, 6.4 µs to zero') },
    note: 'Straight between its points, which overstates its volt-seconds; the small undershoot after 6.4 µs is left out.',
    levels: [],
    noLevelWhy: `Waveform 2 ${ONLY_BUNDLE}`,
    isBundleOnly: true,
    bundleLevels: DOUBLE_EXPONENTIAL_BUNDLE,
    repeats: [STROKES],
  },
  {
    id: 'wf3',
    name: 'DO-160 waveform 3 (damped sine, 1 or 10 MHz)',
    form: 'voltage',
    shape: { form: 'damped-sine' },
    shapeSource: read('T4', 'later peak 25 to 75 % of the largest'),
    note: 'Pin injection at 1 MHz; cable bundles at 1 and 10 MHz.',
    sourceOhm: { ohm: 25, why: '600 V and 24 A at level 3', source: read('T4', TABLE) },
    levels: levels([
      [1, 100, 4, memory(TABLE)],
      [2, 250, 10, memory(TABLE)],
      [3, 600, 24, read('T1', TABLE)],
      [4, 1500, 60, read('T1', TABLE)],
      [5, 3200, 128, memory(TABLE)],
    ]),
    ring: {
      hz: 1e6,
      q: 43.68,
      why: 'slowest decay allowed: the fifth positive peak still at 75 % of the first. 18.13 is 50 %, 9.06 is 25 %',
      source: {
        id: 'derived',
        clause: 'Q = π·n/ln(first/later); which peak is meant is from memory',
        standing: 'derived',
      },
      spread: { frac: 0.2, source: memory('1 and 10 MHz, ±20 %') },
    },
    bundleLevels: bundle([
      [100, 20],
      [250, 50],
      [600, 120],
      [1500, 300],
      [3200, 640],
    ]),
    repeats: [PIN_SHOTS, BURSTS],
  },
  {
    id: 'wf4',
    name: 'DO-160 waveform 4 (voltage 6.4/69 µs)',
    form: 'voltage',
    shape: { form: 'double-exponential', ...FRONT_AND_TAIL },
    shapeSource: read('T3', 'constants of component A'),
    nominal: { peakSec: 6.4e-6, halfSec: 69e-6, source: read('T2', 'waveform 4') },
    note: 'The constants give 6.36/68.97 µs.',
    sourceOhm: { ohm: 5, why: '300 V and 60 A at level 3', source: read('T4', TABLE) },
    levels: levels([
      [1, 50, 10, memory(TABLE)],
      [2, 125, 25, memory(TABLE)],
      [3, 300, 60, read('T1', TABLE)],
      [4, 750, 150, read('T1', TABLE)],
      [5, 1600, 320, memory(TABLE)],
    ]),
    bundleLevels: DOUBLE_EXPONENTIAL_BUNDLE,
    repeats: [PIN_SHOTS, STROKES],
  },
  {
    id: 'wf5a',
    name: 'DO-160 waveform 5A (40/120 µs)',
    form: 'voltage',
    shape: { form: 'double-exponential', k: 2.33354, aPerSec: 12632.6, bPerSec: 43604.6 },
    shapeSource: { id: 'derived', clause: 'fitted to 40/120 µs', standing: 'derived' },
    nominal: { peakSec: 40e-6, halfSec: 120e-6, source: read('T2', 'waveform 5A') },
    note: 'Constants fitted to the nominal times; the standard’s own were not seen.',
    sourceOhm: { ohm: 1, why: '300 V and 300 A at level 3', source: read('T4', TABLE) },
    levels: levels([
      [1, 50, 50, memory(TABLE)],
      [2, 125, 125, memory(TABLE)],
      [3, 300, 300, read('T1', TABLE)],
      [4, 750, 750, read('T1', TABLE)],
      [5, 1600, 1600, memory(TABLE)],
    ]),
    bundleLevels: bundle([
      [50, 150],
      [125, 400],
      [300, 1000],
      [750, 2000],
      [1600, 5000],
    ]),
    repeats: [PIN_SHOTS, STROKES],
  },
  {
    id: 'wf5b',
    name: 'DO-160 waveform 5B (50/500 µs)',
    form: 'voltage',
    shape: { form: 'double-exponential', k: 1.10433, aPerSec: 1584.78, bPerSec: 80021.9 },
    shapeSource: { id: 'derived', clause: 'fitted to 50/500 µs', standing: 'derived' },
    nominal: { peakSec: 50e-6, halfSec: 500e-6, source: read('T2', 'waveform 5B') },
    note: 'Constants fitted to the nominal times; the standard’s own were not seen.',
    levels: [],
    noLevelWhy: `Waveform 5B ${ONLY_BUNDLE}`,
    isBundleOnly: true,
    repeats: [STROKES],
  },
  {
    id: 'wf6',
    name: 'DO-160 waveform 6 (current 0.25/4 µs, bursts)',
    form: 'current',
    shape: { form: 'double-exponential', k: 1.05719, aPerSec: 187191, bPerSec: 19105100 },
    shapeSource: read('T8', 'constants of component H'),
    nominal: { peakSec: 0.25e-6, halfSec: 4e-6, source: read('T2', 'waveform 6') },
    note: 'The constants give 0.2445/4.000 µs.',
    levels: [],
    noLevelWhy: `Waveform 6 ${ONLY_BUNDLE}`,
    isBundleOnly: true,
    repeats: [BURSTS],
  },
]
