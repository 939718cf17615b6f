/**
 * What a line looks like to noise in common mode, against the case: a resistance with a capacitance across it, so that
 * its class changes with frequency. And what stands behind the noise. Spans, each with its standing.
 */
import { ARINC_429_RECEIVER } from './line-kinds/bus-ends.ts'
import type { LineFamily } from './line-kinds.ts'
import type { SourceId } from './sources.ts'
import type { Cited } from './standing.ts'

export type Span = { readonly least: number; readonly most: number }

/** An input as noise sees it: R parallel C, each as a span. `inH`: a wound pair sees its stray capacitance only. */
export type NoiseInput = {
  readonly id: string
  readonly name: string
  readonly ohm: Span
  readonly farad: Span
  readonly kinds: readonly string[]
  readonly families: readonly LineFamily[]
  readonly source: Cited<SourceId>
}

const PRACTICE: Cited<SourceId> = { id: 'practice', standing: 'practice' }

/** The first row that names the kind, else the first that names its family. */
export const NOISE_INPUTS: readonly NoiseInput[] = [
  {
    id: 'arinc-429-receiver',
    name: 'ARINC 429 receiver',
    ohm: { least: ARINC_429_RECEIVER.leastOhm, most: ARINC_429_RECEIVER.leastOhm },
    farad: { least: 50e-12, most: 50e-12 },
    kinds: ['arinc-429-high', 'arinc-429-low'],
    families: [],
    source: { id: 'arinc-429', standing: 'memory' },
  },
  {
    id: 'differential-receiver',
    name: 'RS-422 receiver',
    ohm: { least: 4e3, most: 12e3 },
    farad: { least: 10e-12, most: 20e-12 },
    kinds: ['rs-422', 'csdb'],
    families: [],
    source: PRACTICE,
  },
  {
    id: 'transformer-pair',
    name: 'pair behind a transformer',
    ohm: { least: 1e5, most: 1e7 },
    farad: { least: 20e-12, most: 50e-12 },
    kinds: [
      'mil-std-1553-stub',
      'mil-std-1553-direct',
      'arinc-708',
      'ethernet-10base-t',
      'ethernet-100base-tx',
      'ethernet-1000base-t',
      'ieee-1394',
    ],
    families: [],
    source: PRACTICE,
  },
  {
    id: 'bus-driver',
    name: 'RS-485 or CAN driver',
    ohm: { least: 30, most: 120 },
    farad: { least: 20e-12, most: 100e-12 },
    kinds: ['can', 'rs-485'],
    families: [],
    source: PRACTICE,
  },
  {
    id: 'power-input',
    name: 'power input or drive output',
    ohm: { least: 0.1, most: 30 },
    farad: { least: 1e-9, most: 1e-6 },
    kinds: [],
    families: ['power-dc', 'power-ac', 'drive'],
    source: PRACTICE,
  },
  {
    id: 'audio',
    name: 'audio, microphone or synchro',
    ohm: { least: 50, most: 600 },
    farad: { least: 20e-12, most: 200e-12 },
    kinds: ['synchro'],
    families: ['audio'],
    source: PRACTICE,
  },
  {
    id: 'lin',
    name: 'LIN node',
    ohm: { least: 1e3, most: 30e3 },
    farad: { least: 20e-12, most: 250e-12 },
    kinds: ['lin'],
    families: [],
    source: { id: 'R33', standing: 'read' },
  },
  {
    id: 'high',
    name: 'discrete, sensor or other high input',
    ohm: { least: 1e3, most: 1e6 },
    farad: { least: 15e-12, most: 100e-12 },
    kinds: [],
    families: ['discrete', 'sensor', 'carrier', 'data-single'],
    source: PRACTICE,
  },
]

/**
 * What stands behind the noise. `short`: it holds only where the cable is longer than a tenth of a wave; a shorter one is
 * so many henries a metre when both its ends are grounded, else so many farads a metre.
 */
export type NoiseSource = {
  readonly id: 'cable' | 'bus' | 'converter'
  readonly name: string
  readonly ohm: Span
  readonly usualOhm: number
  readonly short?: { readonly henryPerM: number; readonly faradPerM: number }
  readonly source: Cited<SourceId>
}

export const NOISE_SOURCES: readonly NoiseSource[] = [
  {
    id: 'cable',
    name: 'cable in common mode',
    ohm: { least: 50, most: 300 },
    usualOhm: 150,
    short: { henryPerM: 1e-6, faradPerM: 20e-12 },
    source: PRACTICE,
  },
  { id: 'bus', name: 'supply bus', ohm: { least: 0.5, most: 10 }, usualOhm: 1, source: PRACTICE },
  { id: 'converter', name: 'converter', ohm: { least: 1, most: 30 }, usualOhm: 5, source: PRACTICE },
]

/** Why no class is given for these kinds: nothing was found that would carry one. */
const NOT_KNOWN: Readonly<Record<string, string>> = {
  'arinc-717': 'No figure of its input against the case was found.',
  lvds: 'No figure of its input against the case was found; it is a receiver on a board.',
  spacewire: 'No figure of its input against the case was found; it is a receiver on a board.',
  'usb-low-speed': 'No figure of its input against the case was found.',
  'usb-full-speed': 'No figure of its input against the case was found.',
  'usb-high-speed': 'No figure of its input against the case was found.',
  'one-pps': 'Its input may be 50 Ω or a gate: two classes, so none is taken.',
  'generator-control': 'Field, sense and regulator differ, so none is taken.',
  'l-band-suppression': 'Nothing is added to this line.',
  'not-listed': 'A kind that is not listed has no class.',
}
const FAMILY_NOT_KNOWN: Readonly<Partial<Record<LineFamily, string>>> = {
  ground: 'A return is bonded, not filtered.',
  video: 'Its shield carries the common current, so the input does not decide.',
  coax: 'Its shield carries the common current, so the input does not decide.',
  barred: 'Nothing is added to this line.',
}

type Kind = { readonly id: string; readonly family: LineFamily }

/** Why a kind has no class; undefined where it has one. */
export const noInputWhy = (kind: Kind): string | undefined => NOT_KNOWN[kind.id] ?? FAMILY_NOT_KNOWN[kind.family]

/** The row of a kind of line, or undefined where no class is known. */
export function noiseInputOf(kind: Kind): NoiseInput | undefined {
  if (noInputWhy(kind) !== undefined) return undefined
  return (
    NOISE_INPUTS.find(({ kinds }) => kinds.includes(kind.id)) ??
    NOISE_INPUTS.find(({ families }) => families.includes(kind.family))
  )
}
