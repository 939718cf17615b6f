/**
 * Surges of a power bus that last longer than a suppressor can carry: the line must ride through them without the
 * suppressor conducting. Instantaneous peaks in V, durations in s. Points remembered with low confidence, and the
 * slow tails of MIL-STD-704, are left out: take them from the public document.
 */
import type { SourceId } from './sources.ts'
import type { Cited } from './standing.ts'

/** What a supply is built to: decides which of its surges come. */
export const SUPPLY_CATEGORIES = {
  'do160-a': 'DO-160 section 16, category A',
  'do160-b': 'DO-160 section 16, category B',
  'do160-z': 'DO-160 section 16, category Z',
  std704: 'MIL-STD-704',
} as const
export type SupplyCategory = keyof typeof SUPPLY_CATEGORIES

export type BusSurge = {
  readonly id: string
  readonly lineKind: 'power-28-vdc' | 'power-270-vdc' | 'power-115-vac-400' | 'power-115-vac-variable'
  readonly label: string
  readonly peakV: number
  readonly forSec: number
  readonly categories: readonly SupplyCategory[]
  readonly source: Cited<SourceId>
}

const RMS = Math.SQRT2
const DC: BusSurge['lineKind'] = 'power-28-vdc'
const do160 = (clause: string): Cited<SourceId> => ({
  id: 'do-160',
  clause: `section 16, ${clause}`,
  standing: 'memory',
})
const printed = (clause: string): Cited<SourceId> => ({ id: 'T18', clause, standing: 'read' })
const std704 = (clause: string): Cited<SourceId> => ({ id: 'mil-std-704', clause, standing: 'memory' })

const DO_160: readonly SupplyCategory[] = ['do160-a', 'do160-b', 'do160-z']
const STD_704: readonly SupplyCategory[] = ['std704']

const ac = (lineKind: BusSurge['lineKind']): readonly BusSurge[] => [
  {
    id: `do160-abnormal-${lineKind}`,
    lineKind,
    label: 'DO-160 abnormal, 100 ms',
    peakV: 180 * RMS,
    forSec: 0.1,
    categories: DO_160,
    source: do160('180 V rms 100 ms'),
  },
  {
    id: `do160-abnormal-long-${lineKind}`,
    lineKind,
    label: 'DO-160 abnormal, 1 s',
    peakV: 148 * RMS,
    forSec: 1,
    categories: DO_160,
    source: do160('148 V rms 1 s'),
  },
  {
    id: `std704-normal-${lineKind}`,
    lineKind,
    label: 'MIL-STD-704 normal, 10 ms',
    peakV: 180 * RMS,
    forSec: 0.01,
    categories: STD_704,
    source: std704('180 V rms 10 ms'),
  },
  {
    id: `std704-abnormal-${lineKind}`,
    lineKind,
    label: 'MIL-STD-704 abnormal, 50 ms',
    peakV: 180 * RMS,
    forSec: 0.05,
    categories: STD_704,
    source: std704('180 V rms about 50 ms'),
  },
]

/** Envelopes by kind of supply, DO-160 section 16 first. */
export const BUS_SURGES: readonly BusSurge[] = [
  {
    id: 'do160-normal-ab',
    lineKind: DC,
    label: 'DO-160 normal A, B',
    peakV: 40,
    forSec: 0.03,
    categories: ['do160-a', 'do160-b'],
    source: printed('normal surge'),
  },
  {
    id: 'do160-normal-z',
    lineKind: DC,
    label: 'DO-160 normal Z',
    peakV: 50,
    forSec: 0.05,
    categories: ['do160-z'],
    source: printed('normal surge'),
  },
  {
    id: 'do160-abnormal-a',
    lineKind: DC,
    label: 'DO-160 abnormal A',
    peakV: 46.3,
    forSec: 0.1,
    categories: ['do160-a'],
    source: do160('46.3 V 100 ms'),
  },
  {
    id: 'do160-abnormal-b',
    lineKind: DC,
    label: 'DO-160 abnormal B',
    peakV: 60,
    forSec: 0.1,
    categories: ['do160-b'],
    source: do160('60 V 100 ms'),
  },
  {
    id: 'do160-abnormal-z',
    lineKind: DC,
    label: 'DO-160 abnormal Z',
    peakV: 80,
    forSec: 0.1,
    categories: ['do160-z'],
    source: do160('80 V 100 ms'),
  },
  {
    id: 'do160-abnormal-long-a',
    lineKind: DC,
    label: 'DO-160 abnormal A, 1 s',
    peakV: 37.8,
    forSec: 1,
    categories: ['do160-a'],
    source: do160('37.8 V 1 s'),
  },
  {
    id: 'do160-abnormal-long-b',
    lineKind: DC,
    label: 'DO-160 abnormal B, 1 s',
    peakV: 40,
    forSec: 1,
    categories: ['do160-b'],
    source: do160('40 V 1 s'),
  },
  {
    id: 'do160-abnormal-long-z',
    lineKind: DC,
    label: 'DO-160 abnormal Z, 1 s',
    peakV: 48,
    forSec: 1,
    categories: ['do160-z'],
    source: do160('48 V 1 s'),
  },
  {
    id: 'std704-normal-28',
    lineKind: DC,
    label: 'MIL-STD-704 normal',
    peakV: 50,
    forSec: 0.0125,
    categories: STD_704,
    source: std704('50 V 12.5 ms'),
  },
  {
    id: 'std704-abnormal-28',
    lineKind: DC,
    label: 'MIL-STD-704 abnormal',
    peakV: 50,
    forSec: 0.05,
    categories: STD_704,
    source: std704('50 V about 50 ms'),
  },
  {
    id: 'std704-normal-270',
    lineKind: 'power-270-vdc',
    label: 'MIL-STD-704 normal',
    peakV: 330,
    forSec: 0.02,
    categories: STD_704,
    source: std704('330 V 20 ms'),
  },
  {
    id: 'std704-abnormal-270',
    lineKind: 'power-270-vdc',
    label: 'MIL-STD-704 abnormal',
    peakV: 350,
    forSec: 0.05,
    categories: STD_704,
    source: std704('350 V about 50 ms'),
  },
  ...ac('power-115-vac-400'),
  ...ac('power-115-vac-variable'),
]

/** The envelopes of one kind of supply, of one category where it is named; empty for a signal line. */
export const busSurgesOf = (lineKind: string, category?: string): readonly BusSurge[] =>
  BUS_SURGES.filter(
    (row) => row.lineKind === lineKind && (category === undefined || row.categories.some((each) => each === category)),
  )
