/**
 * What each kind of line stands, written a second time from the documents and practices behind it, not from the rows of
 * the app: what a row of the app has wrong shows as a refuted answer. `ohm` is the resistance the signal sees.
 */

export type MaskPart = {
  readonly fromHz: number
  readonly toHz: number
  readonly db: (hz: number) => number
}

export type Limit =
  /** slowest 10–90 % edge, root of the sum of squares with the driver's */
  | { readonly is: 'edge'; readonly driverSec: number; readonly slowestSec: number }
  /** own edge within a share of the bit; matched both ways */
  | { readonly is: 'own-edge'; readonly share: number }
  /** recessive decay 2.0 → 0.5 V within a share of the bit */
  | { readonly is: 'recessive'; readonly share: number }
  /** 30–70 % rise */
  | { readonly is: 'rise'; readonly mostSec: number }
  /** ±3 V crossed within a share of the bit, at most so long, at so many amperes */
  | { readonly is: 'crossing'; readonly share: number; readonly mostSec: number; readonly amps: number }
  /** least impedance of the terminal over a band */
  | { readonly is: 'terminal'; readonly leastOhm: number; readonly fromHz: number; readonly toHz: number }
  /** return loss against every impedance the document names */
  | {
      readonly is: 'mask'
      readonly againstOhm: readonly number[]
      readonly cornerOhm?: readonly number[]
      readonly parts: readonly MaskPart[]
    }
  | { readonly is: 'loss'; readonly mostDb: number }
  | { readonly is: 'phase'; readonly mostDeg: number }
  /** 10–90 % edge of the capacitance alone */
  | { readonly is: 'slow-edge'; readonly mostSec: number }
  /** a supply: a rule book or a limit decides */
  | { readonly is: 'supply'; readonly hz: number; readonly worstHz: number; readonly worstRmsV: number }
  | { readonly is: 'unknown' }

export type LineFacts = {
  readonly isPair?: true
  readonly limit: Limit
  readonly ohm?: number
  readonly bitHz?: number
  /** bit rates it runs at, where it has several */
  readonly ratesHz?: readonly [number, number]
  /** highest useful frequency of the signal */
  readonly usefulHz?: number
  /** figures of documents: F between the wires (or of a single line), and of each leg to chassis */
  readonly permittedBetweenF?: number
  readonly permittedLegF?: number
}

const flat = (fromHz: number, toHz: number, db: number): MaskPart => ({ fromHz, toHz, db: () => db })
const PAIR = { isPair: true } as const
const OWN_EDGE = { is: 'own-edge', share: 0.3 } as const
const A_MILLISECOND = { is: 'slow-edge', mostSec: 1e-3 } as const
const HALF_DB = { is: 'loss', mostDb: 0.5 } as const
const A_DEGREE = { is: 'phase', mostDeg: 1 } as const
const RECEIVER_429 = { ...PAIR, ohm: 75, permittedBetweenF: 50e-12, permittedLegF: 50e-12 } as const
const STUB = { ...PAIR, usefulHz: 3.5e6 } as const
const I2C = { ohm: 2200 } as const

export const LINES: Readonly<Record<string, LineFacts>> = {
  'power-28-vdc': { limit: { is: 'supply', hz: 0, worstHz: 0, worstRmsV: 29 } },
  'power-270-vdc': { limit: { is: 'supply', hz: 0, worstHz: 0, worstRmsV: 280 } },
  'power-115-vac-400': { usefulHz: 6e3, limit: { is: 'supply', hz: 400, worstHz: 407, worstRmsV: 118 } },
  'power-115-vac-variable': { usefulHz: 12e3, limit: { is: 'supply', hz: 800, worstHz: 800, worstRmsV: 118 } },
  'pwm-drive': { limit: { is: 'unknown' }, ohm: 5, usefulHz: 5e6 },
  'discrete-ground': { limit: A_MILLISECOND, ohm: 30e3, usefulHz: 100 },
  'discrete-28v': { limit: A_MILLISECOND, ohm: 20e3, usefulHz: 100 },
  'push-to-talk': { limit: A_MILLISECOND, ohm: 10e3, usefulHz: 100 },
  'sensor-low-level': { ...PAIR, limit: HALF_DB, ohm: 1e3, usefulHz: 10e3 },
  thermocouple: { ...PAIR, limit: HALF_DB, ohm: 100, usefulHz: 10 },
  rtd: { ...PAIR, limit: HALF_DB, ohm: 100, usefulHz: 10 },
  lvdt: { ...PAIR, limit: A_DEGREE, ohm: 2e3, usefulHz: 10e3 },
  synchro: { ...PAIR, limit: A_DEGREE, ohm: 300, usefulHz: 400 },
  'speed-pickup': { ...PAIR, limit: A_DEGREE, ohm: 2e3, usefulHz: 10e3 },
  audio: { limit: HALF_DB, ohm: 600, usefulHz: 20e3 },
  microphone: { limit: HALF_DB, ohm: 150, usefulHz: 20e3 },
  'composite-video': {
    limit: { is: 'mask', againstOhm: [75], parts: [flat(100e3, 6e6, 26)] },
    ohm: 37.5,
    usefulHz: 6e6,
  },
  'arinc-429-high': { ...RECEIVER_429, limit: { is: 'edge', driverSec: 1.5e-6, slowestSec: 2e-6 }, usefulHz: 350e3 },
  'arinc-429-low': { ...RECEIVER_429, limit: { is: 'edge', driverSec: 10e-6, slowestSec: 15e-6 }, usefulHz: 70e3 },
  'mil-std-1553-stub': { ...STUB, limit: { is: 'terminal', leastOhm: 1000, fromHz: 75e3, toHz: 1e6 } },
  'mil-std-1553-direct': { ...STUB, limit: { is: 'terminal', leastOhm: 2000, fromHz: 75e3, toHz: 1e6 } },
  'arinc-708': { ...STUB, limit: { is: 'terminal', leastOhm: 1000, fromHz: 75e3, toHz: 1e6 } },
  'arinc-717': { ...PAIR, limit: { is: 'unknown' }, usefulHz: 100e3 },
  'rs-232': {
    limit: { is: 'crossing', share: 0.04, mostSec: 1e-3, amps: 10e-3 },
    ratesHz: [1200, 115_200],
    usefulHz: 60e3,
    permittedBetweenF: 2500e-12,
  },
  'rs-422': { ...PAIR, limit: OWN_EDGE, ohm: 50, ratesHz: [1e5, 1e7] },
  'rs-485': { ...PAIR, limit: OWN_EDGE, ohm: 60, ratesHz: [1e5, 1e7] },
  can: {
    ...PAIR,
    limit: { is: 'recessive', share: 0.1 },
    ohm: 60,
    ratesHz: [83.3e3, 1e6],
    usefulHz: 10e6,
    permittedLegF: 100e-12,
  },
  lin: { limit: { is: 'unknown' }, ohm: 1e3, usefulHz: 60e3, permittedLegF: 205e-12 },
  'i2c-standard': { ...I2C, limit: { is: 'rise', mostSec: 1000e-9 }, bitHz: 100e3, permittedBetweenF: 400e-12 },
  'i2c-fast': { ...I2C, limit: { is: 'rise', mostSec: 300e-9 }, bitHz: 400e3, permittedBetweenF: 400e-12 },
  'i2c-fast-plus': { ...I2C, limit: { is: 'rise', mostSec: 120e-9 }, bitHz: 1e6, permittedBetweenF: 550e-12 },
  lvds: { ...PAIR, limit: OWN_EDGE, ohm: 50, ratesHz: [1e7, 655e6] },
  spacewire: { ...PAIR, limit: OWN_EDGE, ohm: 50, ratesHz: [2e6, 400e6], usefulHz: 500e6 },
  'usb-low-speed': { ...PAIR, limit: OWN_EDGE, ohm: 45, bitHz: 1.5e6, usefulHz: 4.7e6, permittedLegF: 450e-12 },
  'usb-full-speed': { ...PAIR, limit: OWN_EDGE, ohm: 45, bitHz: 12e6, usefulHz: 88e6, permittedLegF: 75e-12 },
  'usb-high-speed': { ...PAIR, limit: OWN_EDGE, ohm: 45, bitHz: 480e6, usefulHz: 700e6 },
  'ieee-1394': { ...PAIR, limit: OWN_EDGE, ohm: 55, ratesHz: [122.88e6, 491.52e6], usefulHz: 600e6 },
  'ethernet-10base-t': {
    ...PAIR,
    limit: { is: 'mask', againstOhm: [100], parts: [flat(5e6, 10e6, 15)] },
    ohm: 50,
    usefulHz: 20e6,
  },
  'ethernet-100base-tx': {
    ...PAIR,
    limit: {
      is: 'mask',
      againstOhm: [85, 100, 115],
      parts: [
        flat(2e6, 30e6, 16),
        { fromHz: 30e6, toHz: 60e6, db: (hz) => 16 - 20 * Math.log10(hz / 30e6) },
        flat(60e6, 80e6, 10),
      ],
    },
    ohm: 50,
    usefulHz: 100e6,
  },
  'ethernet-1000base-t': {
    ...PAIR,
    limit: {
      is: 'mask',
      againstOhm: [100],
      // the ends of the cable range: over them a document's figure is exceeded, the mask itself is not
      cornerOhm: [85, 115],
      parts: [flat(1e6, 40e6, 16), { fromHz: 40e6, toHz: 100e6, db: (hz) => 10 - 20 * Math.log10(hz / 80e6) }],
    },
    ohm: 50,
    usefulHz: 100e6,
  },
}

/** Kinds whose signal resistance nobody can know: the pull-up has to be entered. */
export const ASKS_OHM: ReadonlySet<string> = new Set(['i2c-standard', 'i2c-fast', 'i2c-fast-plus'])
