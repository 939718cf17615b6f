/**
 * Radio bands an aircraft listens on, and what interference inside them looks like.
 * Where a system has one frequency, the edges here are a narrow band around it so that a noise nearby still finds it.
 */
import { memory, read } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

export type RadioBand = {
  readonly id: string
  readonly system: string
  readonly fromHz: number
  readonly toHz: number
  /** the one frequency it listens on, where it has one */
  readonly channelHz?: number
  /** how interference inside the band usually shows */
  readonly symptom: string
  readonly note?: string
  readonly source: Citation
}

const bandTable = memory('R39')
const manual = read('R38')

const NOT_RECORDED = 'not recorded'

export const RADIO_BANDS: readonly RadioBand[] = [
  {
    id: 'audio',
    system: 'Intercom and audio',
    fromHz: 300,
    toHz: 6e3,
    symptom: 'whine, buzz or clicks, also with the volume down',
    source: memory('do-214'),
  },
  {
    id: 'sferics',
    system: 'Lightning mapper',
    fromHz: 10e3,
    toHz: 100e3,
    symptom: 'false cells from engine or strobes',
    note: 'about 50 kHz',
    source: bandTable,
  },
  {
    id: 'loran-c',
    system: 'Loran-C (legacy)',
    fromHz: 90e3,
    toHz: 110e3,
    symptom: 'lost in precipitation static',
    source: bandTable,
  },
  {
    id: 'adf',
    system: 'NDB and ADF',
    fromHz: 190e3,
    toHz: 1750e3,
    symptom: 'needle wanders without a flag; noise with the ident',
    note: 'US 190 to 535 kHz; ident 400 or 1020 Hz',
    source: manual,
  },
  {
    id: 'hf',
    system: 'HF communication',
    fromHz: 2e6,
    toHz: 30e6,
    symptom: 'hash, combs from switch-mode converters',
    note: 'in use 2.8 to 22 MHz',
    source: bandTable,
  },
  {
    id: 'marker',
    system: 'Marker beacon',
    fromHz: 74.8e6,
    toHz: 75.2e6,
    channelHz: 75e6,
    symptom: 'false light or tone',
    note: '75 MHz; tones 400, 1300 and 3000 Hz',
    source: manual,
  },
  {
    id: 'vor',
    system: 'VOR',
    fromHz: 108e6,
    toHz: 117.95e6,
    symptom: 'bearing error, flag, noise in the audio',
    source: manual,
  },
  {
    id: 'localizer',
    system: 'Localizer',
    fromHz: 108.1e6,
    toHz: 111.95e6,
    symptom: 'needle shifts, flag',
    note: 'odd tenths of a megahertz',
    source: manual,
  },
  {
    id: 'vhf-com',
    system: 'VHF communication',
    fromHz: 117.975e6,
    toHz: 137e6,
    symptom: 'hiss, squelch opens, blanking',
    source: read('R39'),
  },
  { id: 'vdl', system: 'VDL and ACARS', fromHz: 129e6, toHz: 137e6, symptom: 'repeated messages', source: bandTable },
  {
    id: 'glideslope',
    system: 'Glideslope',
    fromHz: 328.6e6,
    toHz: 335.4e6,
    symptom: 'deflection or flag',
    note: 'channels 329.15 to 335.00 MHz',
    source: bandTable,
  },
  {
    id: 'uhf-com',
    system: 'UHF communication, military',
    fromHz: 225e6,
    toHz: 400e6,
    symptom: 'as VHF communication',
    source: bandTable,
  },
  {
    id: 'elt-121',
    system: 'ELT 121.5 MHz',
    fromHz: 121.45e6,
    toHz: 121.55e6,
    channelHz: 121.5e6,
    symptom: 'false activation; can re-radiate VHF',
    source: bandTable,
  },
  {
    id: 'elt-243',
    system: 'ELT 243 MHz',
    fromHz: 242.95e6,
    toHz: 243.05e6,
    channelHz: 243e6,
    symptom: 'false activation',
    source: bandTable,
  },
  {
    id: 'elt-406',
    system: 'ELT 406 MHz',
    fromHz: 406e6,
    toHz: 406.1e6,
    symptom: 'false activation',
    source: bandTable,
  },
  {
    id: 'dme',
    system: 'DME and TACAN',
    fromHz: 960e6,
    toHz: 1215e6,
    symptom: 'unlock, range jumps',
    note: 'in use 962 to 1213 MHz',
    source: bandTable,
  },
  {
    id: 'uat',
    system: 'UAT',
    fromHz: 977e6,
    toHz: 979e6,
    channelHz: 978e6,
    symptom: NOT_RECORDED,
    note: '978 MHz',
    source: bandTable,
  },
  {
    id: 'ssr-interrogation',
    system: 'SSR and TCAS, 1030 MHz',
    fromHz: 1029e6,
    toHz: 1031e6,
    channelHz: 1030e6,
    symptom: 'false or lost targets',
    source: bandTable,
  },
  {
    id: 'ssr-reply',
    system: 'SSR, TCAS and ADS-B, 1090 MHz',
    fromHz: 1089e6,
    toHz: 1091e6,
    channelHz: 1090e6,
    symptom: 'false or lost targets',
    source: bandTable,
  },
  {
    id: 'gnss-l5',
    system: 'GNSS L5',
    fromHz: 1164.45e6,
    toHz: 1188.45e6,
    channelHz: 1176.45e6,
    symptom: 'satellite bars drop, integrity alarm',
    note: '1176.45 MHz',
    source: bandTable,
  },
  {
    id: 'gnss-l2',
    system: 'GNSS L2',
    fromHz: 1215.6e6,
    toHz: 1239.6e6,
    channelHz: 1227.6e6,
    symptom: 'satellite bars drop, integrity alarm',
    note: '1227.60 MHz',
    source: bandTable,
  },
  {
    id: 'gnss-l1',
    system: 'GNSS L1',
    fromHz: 1563.42e6,
    toHz: 1587.42e6,
    channelHz: 1575.42e6,
    symptom: 'satellite bars drop, integrity alarm',
    note: '1575.42 MHz',
    source: read('C07'),
  },
  {
    id: 'satcom-l-receive',
    system: 'L-band satellite, receive',
    fromHz: 1525e6,
    toHz: 1559e6,
    symptom: NOT_RECORDED,
    source: bandTable,
  },
  {
    id: 'satcom-l-transmit',
    system: 'L-band satellite, transmit',
    fromHz: 1616e6,
    toHz: 1660.5e6,
    symptom: 'blocks GNSS nearby',
    note: 'low orbit 1616 to 1626.5, geostationary 1626.5 to 1660.5 MHz',
    source: bandTable,
  },
  {
    id: 'wifi-2',
    system: 'Wi-Fi and portable devices, 2.4 GHz',
    fromHz: 2.4e9,
    toHz: 2.4835e9,
    symptom: 'display flickers or blanks',
    source: bandTable,
  },
  {
    id: 'c-band-5g',
    system: 'Mobile networks in the C band (not aeronautical)',
    fromHz: 3.7e9,
    toHz: 3.98e9,
    symptom: 'blocks the radio altimeter',
    source: read('C05'),
  },
  {
    id: 'radio-altimeter',
    system: 'Radio altimeter',
    fromHz: 4.2e9,
    toHz: 4.4e9,
    symptom: 'false height, flag',
    source: bandTable,
  },
  { id: 'mls', system: 'MLS', fromHz: 5.03e9, toHz: 5.091e9, symptom: NOT_RECORDED, source: bandTable },
  {
    id: 'wifi-5',
    system: 'Wi-Fi, 5 GHz',
    fromHz: 5.15e9,
    toHz: 5.85e9,
    symptom: 'display flickers or blanks',
    source: bandTable,
  },
  {
    id: 'weather-radar-c',
    system: 'Weather radar, C band',
    fromHz: 5.35e9,
    toHz: 5.47e9,
    symptom: 'spokes, arcs',
    source: bandTable,
  },
  {
    id: 'doppler-low',
    system: 'Doppler navigation, 8.8 GHz',
    fromHz: 8.75e9,
    toHz: 8.85e9,
    symptom: NOT_RECORDED,
    source: bandTable,
  },
  {
    id: 'weather-radar-x',
    system: 'Weather radar, X band',
    fromHz: 9.3e9,
    toHz: 9.5e9,
    symptom: 'spokes, arcs',
    source: bandTable,
  },
  {
    id: 'satcom-ku',
    system: 'Ku-band satellite',
    fromHz: 10.7e9,
    toHz: 14.5e9,
    symptom: NOT_RECORDED,
    note: 'receive 10.7 to 12.75, transmit 14.0 to 14.5 GHz',
    source: bandTable,
  },
  {
    id: 'doppler-high',
    system: 'Doppler navigation, 13.3 GHz',
    fromHz: 13.25e9,
    toHz: 13.4e9,
    symptom: NOT_RECORDED,
    source: bandTable,
  },
  {
    id: 'satcom-ka',
    system: 'Ka-band satellite',
    fromHz: 17.7e9,
    toHz: 31e9,
    symptom: NOT_RECORDED,
    note: 'receive 17.7 to 21.2, transmit 27.5 to 31 GHz',
    source: bandTable,
  },
]

/** Bands that contain a frequency in Hz; empty when none does. */
export const bandsAt = (frequencyHz: number): readonly RadioBand[] =>
  RADIO_BANDS.filter((band) => frequencyHz >= band.fromHz && frequencyHz <= band.toHz)

/** A band by its id; asking for one that is not there is a fault of ours. */
export function bandById(id: string): RadioBand {
  const band = RADIO_BANDS.find((each) => each.id === id)
  if (band === undefined) throw new RangeError(`no radio band "${id}"`)
  return band
}

/** The one frequency a band listens on; one that has several is a fault of ours. */
export function channelHz(id: string): number {
  const hz = bandById(id).channelHz
  if (hz === undefined) throw new RangeError(`"${id}" has no one channel`)
  return hz
}
