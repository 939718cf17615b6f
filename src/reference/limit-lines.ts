/**
 * The two emission limits that are consistent enough to carry as data. Straight lines in log frequency and dB.
 * Points of MIL-STD-461 are from memory: enter the limit of your own test plan where one exists.
 * RTCA DO-160 section 21 is not here: its points were not confirmed, so it is "enter your own line".
 */
import { memory, read } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

export type LimitPoint = { readonly hz: number; readonly db: number }

export type LimitLine = {
  readonly id: string
  readonly name: string
  readonly quantity: 'dBµV' | 'dBµA' | 'dBµV/m'
  readonly detector: string
  /** straight segments, each from its first to its last point; a step has two segments meeting at one frequency */
  readonly segments: readonly (readonly [LimitPoint, LimitPoint])[]
  readonly note: string
  readonly source: Citation
}

const at = (hz: number, db: number): LimitPoint => ({ hz, db })

export const LIMIT_LINES: readonly LimitLine[] = [
  {
    id: 'ce102-base',
    name: 'MIL-STD-461 CE102, base curve (28 V)',
    quantity: 'dBµV',
    detector: 'peak, read in rms, at the 50 µH network',
    segments: [
      [at(10e3, 94), at(500e3, 60)],
      [at(500e3, 60), at(10e6, 60)],
    ],
    note: 'Relaxed by the nominal voltage of the equipment: see the relaxation by voltage.',
    source: memory('mil-std-461', 'CE102'),
  },
  ...(
    [
      ['en55022-b-quasi-peak', 'EN 55022 class B, quasi-peak', 'quasi-peak', 66, 56, 56, 60],
      ['en55022-b-average', 'EN 55022 class B, average', 'average', 56, 46, 46, 50],
      ['en55022-a-quasi-peak', 'EN 55022 class A, quasi-peak', 'quasi-peak', 79, 79, 73, 73],
      ['en55022-a-average', 'EN 55022 class A, average', 'average', 66, 66, 60, 60],
    ] as const
  ).map(
    ([id, name, detector, startDb, endDb, middleDb, highDb]): LimitLine => ({
      id,
      name,
      quantity: 'dBµV',
      detector,
      segments: [
        [at(150e3, startDb), at(500e3, endDb)],
        [at(500e3, middleDb), at(5e6, middleDb)],
        [at(5e6, highDb), at(30e6, highDb)],
      ],
      note: 'AC mains port, 50 µH network. A commercial sanity line, not an airborne limit.',
      source: read('S35'),
    }),
  ),
]

/** Relaxation of CE102 in dB by nominal voltage (10·log10(V/28), as rounded in the standard). From memory. */
export const CE102_RELAXATION: readonly { readonly nominalV: number; readonly db: number }[] = [
  { nominalV: 28, db: 0 },
  { nominalV: 115, db: 6 },
  { nominalV: 220, db: 9 },
  { nominalV: 270, db: 10 },
  { nominalV: 440, db: 12 },
]

/**
 * The limit in dB of the line's quantity at a frequency in Hz, straight in log frequency; undefined outside its span.
 * Where two segments meet in a step the lower limit counts.
 */
export function limitDbAt({ segments }: Pick<LimitLine, 'segments'>, hz: number): number | undefined {
  const found = segments
    .filter(([from, to]) => hz >= from.hz && hz <= to.hz)
    .map(([from, to]) => from.db + ((to.db - from.db) * Math.log(hz / from.hz)) / Math.log(to.hz / from.hz))
  return found.length === 0 ? undefined : Math.min(...found)
}
