/**
 * What is usually on a line of each kind beside the filter, for asking "and if that is not empty?". Never counted by
 * itself: only tried where nothing was entered, to see whether the answer rests on it.
 */
import { usualBiasFrac } from '../dielectric-bias.ts'
import { DERIVED, memory, PRACTICE, read } from './cite.ts'
import type { Citation, LineKind } from './types.ts'

export type UsualLoad = {
  /** other nodes and usual wiring: between the wires of a pair, to chassis on a single line */
  readonly existingF?: number
  /** a suppressor as is usually fitted to this kind, per leg, at 0 V */
  readonly suppressorF?: number
  /** share of an inductance, and of the impedance of a bead, that the current of such a line may take */
  readonly saturationFrac?: number
  readonly beadBiasFrac?: number
  /** share of its capacitance that a filter contact can lose at the line's own volts */
  readonly biasFrac?: number
  readonly why: string
  readonly source: Citation
}

const WIRING = { existingF: 3e-9, suppressorF: 1e-9, why: '30 m of wire at 100 pF per metre', source: PRACTICE }
const SHORT_WIRING = {
  existingF: 1e-9,
  suppressorF: 200e-12,
  why: '10 m of wire at 100 pF per metre',
  source: PRACTICE,
}
const RECEIVERS_429 = {
  existingF: 1e-9,
  suppressorF: 50e-12,
  why: '20 receivers of 50 pF between the lines',
  source: memory('R1', '2.2.4; up to 20 receivers'),
}
const BOX_1553 = { suppressorF: 5e-12, why: 'transformer and wiring of the box', source: PRACTICE }
const NODE_485 = {
  existingF: 50e-12,
  suppressorF: 50e-12,
  why: 'another node of 50 pF',
  source: memory('R13', '54 Ω with 50 pF'),
}
const LVDS_INPUT = { existingF: 2e-12, suppressorF: 0.5e-12, why: 'receiver and connector', source: PRACTICE }
const PORT = 'transceiver and magnetics take two thirds of the port'

const USUAL: Readonly<Record<string, UsualLoad>> = {
  'arinc-429-high': RECEIVERS_429,
  'arinc-429-low': RECEIVERS_429,
  'mil-std-1553-stub': { existingF: 30e-12, ...BOX_1553 },
  'mil-std-1553-direct': { existingF: 15e-12, ...BOX_1553 },
  'arinc-708': { existingF: 30e-12, ...BOX_1553 },
  'rs-232': { existingF: 900e-12, suppressorF: 50e-12, why: '30 ft of cable at 30 pF per foot', source: read('R9') },
  'rs-422': NODE_485,
  'rs-485': NODE_485,
  can: { existingF: 100e-12, suppressorF: 30e-12, why: 'ten nodes of 10 pF between the lines', source: PRACTICE },
  lvds: LVDS_INPUT,
  spacewire: LVDS_INPUT,
  'usb-low-speed': {
    existingF: 100e-12,
    suppressorF: 10e-12,
    why: '200 pF from each line, cable and device',
    source: read('R24', '7.1.1.2'),
  },
  'usb-full-speed': {
    existingF: 25e-12,
    suppressorF: 10e-12,
    why: '50 pF from each line',
    source: read('R24', '7.1.1.1'),
  },
  'usb-high-speed': LVDS_INPUT,
  'ieee-1394': LVDS_INPUT,
  'ethernet-10base-t': { existingF: 38e-12, suppressorF: 3e-12, why: PORT, source: DERIVED },
  'ethernet-100base-tx': { existingF: 8.8e-12, suppressorF: 2e-12, why: PORT, source: DERIVED },
  'ethernet-1000base-t': { existingF: 8.5e-12, suppressorF: 2e-12, why: PORT, source: DERIVED },
  'i2c-standard': {
    existingF: 100e-12,
    suppressorF: 30e-12,
    why: 'pins of 10 pF and their wiring',
    source: read('R21', '7.1'),
  },
  'i2c-fast': {
    existingF: 100e-12,
    suppressorF: 30e-12,
    why: 'pins of 10 pF and their wiring',
    source: read('R21', '7.1'),
  },
  'i2c-fast-plus': {
    existingF: 100e-12,
    suppressorF: 30e-12,
    why: 'pins of 10 pF and their wiring',
    source: read('R21', '7.1'),
  },
  'discrete-ground': WIRING,
  'discrete-28v': WIRING,
  'push-to-talk': WIRING,
  'sensor-low-level': SHORT_WIRING,
  thermocouple: SHORT_WIRING,
  rtd: SHORT_WIRING,
  lvdt: SHORT_WIRING,
  synchro: SHORT_WIRING,
  'speed-pickup': SHORT_WIRING,
  audio: SHORT_WIRING,
  microphone: SHORT_WIRING,
  'composite-video': { existingF: 5e-12, suppressorF: 5e-12, why: 'input and connector', source: PRACTICE },
}

const POWERED: UsualLoad = {
  saturationFrac: 0.3,
  beadBiasFrac: 0.9,
  why: 'a saturation current is stated where 20 to 30 % of the inductance is gone; a bead loses up to 90 % at half its rated current',
  source: memory('S18'),
}
const NOTHING_KNOWN: UsualLoad = { why: 'nothing usual is known for this kind', source: PRACTICE }

/** What is usually on a line of this kind; no figures where none is known, but for what its own volts take of a capacitor. */
export const usualLoadOf = ({ id, family, ownPeaks }: LineKind): UsualLoad => ({
  ...(USUAL[id] ?? (family === 'power-dc' || family === 'power-ac' ? POWERED : NOTHING_KNOWN)),
  biasFrac: usualBiasFrac(ownPeaks),
})
