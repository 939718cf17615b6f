/**
 * The limits a measured trace is held against, each with what its method reads: emission, or what equipment has to
 * withstand. Points of MIL-STD-461 are from memory, with consistency checks: the limit of the test plan counts.
 * Not here, because their points were not confirmed: RTCA DO-160 sections 20 and 21, CE101, RE102 below 2 MHz and its
 * ground and ship curves. They are entered as a line of one's own.
 */
import { LIMIT_LINES, type LimitLine, type LimitPoint } from './limit-lines.ts'
import { memory, read } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

export type Detector = 'peak' | 'quasi-peak' | 'average' | 'rms'

/** Resolution bandwidth of a method from one frequency on, up to the next row. */
export type MethodBandwidth = { readonly fromHz: number; readonly bandwidthHz: number }

export type MethodLine = LimitLine & {
  /** emission: the trace has to stay below; susceptibility: equipment has to withstand this much */
  readonly side: 'emission' | 'susceptibility'
  readonly reads: Detector
  /** none where a single tone is injected */
  readonly bandwidths: readonly MethodBandwidth[]
  readonly bandwidthSource?: Citation
  /** relaxed by the nominal voltage of the equipment */
  readonly isRelaxed?: true
}

const at = (hz: number, db: number): LimitPoint => ({ hz, db })

const MILITARY: readonly MethodBandwidth[] = [
  { fromHz: 30, bandwidthHz: 10 },
  { fromHz: 1e3, bandwidthHz: 100 },
  { fromHz: 10e3, bandwidthHz: 1e3 },
  { fromHz: 150e3, bandwidthHz: 10e3 },
  { fromHz: 30e6, bandwidthHz: 100e3 },
  { fromHz: 1e9, bandwidthHz: 1e6 },
]
const MILITARY_SOURCE = memory('mil-std-461', 'bandwidth table')

const COMMERCIAL: readonly MethodBandwidth[] = [{ fromHz: 150e3, bandwidthHz: 9e3 }]
const COMMERCIAL_SOURCE = memory('cispr-16')

const ENTER_YOUR_OWN = 'From memory: enter the limit of your own test plan where one exists.'

const emission: readonly MethodLine[] = LIMIT_LINES.map((line) => {
  const isMilitary = line.id === 'ce102-base'
  return {
    ...line,
    side: 'emission',
    reads: isMilitary ? 'peak' : line.id.endsWith('average') ? 'average' : 'quasi-peak',
    bandwidths: isMilitary ? MILITARY : COMMERCIAL,
    bandwidthSource: isMilitary ? MILITARY_SOURCE : COMMERCIAL_SOURCE,
    ...(isMilitary ? { isRelaxed: true } : {}),
  }
})

const radiated = (id: string, name: string, lowDb: number, highDb: number): MethodLine => ({
  id,
  name,
  quantity: 'dBµV/m',
  detector: 'peak, at 1 m',
  segments: [
    [at(2e6, lowDb), at(100e6, lowDb)],
    [at(100e6, lowDb), at(18e9, highDb)],
  ],
  note: ENTER_YOUR_OWN,
  source: memory('mil-std-461', 'RE102'),
  side: 'emission',
  reads: 'peak',
  bandwidths: MILITARY,
  bandwidthSource: MILITARY_SOURCE,
})

const leadRipple = (id: string, name: string, lowDb: number, highDb: number): MethodLine => ({
  id,
  name,
  quantity: 'dBµV',
  detector: 'rms on the lead',
  segments: [
    [at(30, lowDb), at(5e3, lowDb)],
    [at(5e3, lowDb), at(150e3, highDb)],
  ],
  note: `${ENTER_YOUR_OWN} AC leads start at the second harmonic of the supply.`,
  source: memory('mil-std-461', 'CS101'),
  side: 'susceptibility',
  reads: 'rms',
  bandwidths: [],
})

/** Rises 20 dB a decade to 1 MHz, flat to 30 MHz, falls 10 dB a decade to 200 MHz. */
const cableInjection = (curve: number, flatDb: number): MethodLine => ({
  id: `cs114-curve-${curve}`,
  name: `MIL-STD-461 CS114, curve ${curve}`,
  quantity: 'dBµA',
  detector: 'rms, as calibrated in the 50 Ω fixture',
  segments: [
    [at(10e3, flatDb - 40), at(1e6, flatDb)],
    [at(1e6, flatDb), at(30e6, flatDb)],
    [at(30e6, flatDb), at(200e6, flatDb - 10 * Math.log10(200 / 30))],
  ],
  note: `${ENTER_YOUR_OWN} Which curve a platform has is in the specification.`,
  source: memory('mil-std-461', 'CS114'),
  side: 'susceptibility',
  reads: 'rms',
  bandwidths: [],
})

export const METHOD_LINES: readonly MethodLine[] = [
  ...emission,
  radiated('re102-external', 'MIL-STD-461 RE102, fixed-wing external and helicopters', 24, 69),
  radiated('re102-internal-short', 'MIL-STD-461 RE102, fixed-wing internal, under 25 m', 34, 79),
  radiated('re102-internal-long', 'MIL-STD-461 RE102, fixed-wing internal, 25 m and more', 44, 89),
  leadRipple('cs101-above-28', 'MIL-STD-461 CS101, above 28 V', 136, 106.5),
  leadRipple('cs101-28', 'MIL-STD-461 CS101, 28 V and below', 126, 96.5),
  cableInjection(1, 77),
  cableInjection(2, 89),
  cableInjection(3, 97),
  cableInjection(4, 103),
  cableInjection(5, 109),
]

/**
 * Lines that people look for and that are not here: nobody read their points. What was read of each, with its source.
 * They are entered by their corners, from the document itself.
 */
export const UNCONFIRMED_LINES: readonly {
  readonly name: string
  /** what is known of it, as a sentence */
  readonly known: string
  readonly source?: Citation
}[] = [
  { name: 'RTCA DO-160 section 20', known: 'Its categories and levels stand in the document and in the test plan.' },
  {
    name: 'RTCA DO-160 section 21',
    known:
      '150 kHz to 6 GHz at 1 m, leads at the 5 µH network, notches that protect receivers. Category B is a tolerable level, L far from apertures, M in cabin and cockpit, H in view of antennas, P and Q near HF, VHF and satellite receivers.',
    source: read('S36'),
  },
  {
    name: 'MIL-STD-461 CE101',
    known: '30 Hz to 10 kHz, for ships, submarines, Army and Navy aircraft.',
    source: read('S31'),
  },
  {
    name: 'MIL-STD-461 RE102 below 2 MHz',
    known: 'It applies to Army aircraft from 10 kHz, Air Force and Navy aircraft from 2 MHz.',
    source: read('S31'),
  },
]

/** From what reads most of the same emission to what reads least. From memory: only peak above all others is certain. */
export const READS_MOST: readonly Detector[] = ['peak', 'quasi-peak', 'rms', 'average']
export const DETECTOR_ORDER_SOURCE: Citation = memory('cispr-16')

export const methodLineById = (id: string): MethodLine | undefined => METHOD_LINES.find((line) => line.id === id)

/** Bandwidths a method allows at a frequency: where two rows meet, both. */
export function bandwidthsAt({ bandwidths }: Pick<MethodLine, 'bandwidths'>, hz: number): readonly number[] {
  return bandwidths.flatMap(({ fromHz, bandwidthHz }, i) => {
    const toHz = bandwidths[i + 1]?.fromHz ?? Number.POSITIVE_INFINITY
    return hz >= fromHz && hz <= toHz ? [bandwidthHz] : []
  })
}
