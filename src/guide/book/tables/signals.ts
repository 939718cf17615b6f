/** Tables of signals and surges: buses, receiver bands, waveform sets, suppressor classes, conversions of levels. */
import { DERIVED, PRACTICE } from '../../../reference/line-kinds/cite.ts'
import { LINE_KINDS } from '../../../reference/line-kinds.ts'
import { RADIO_BANDS } from '../../../reference/radio-bands.ts'
import {
  CLAMP_RATIO,
  LEAST_BREAKDOWN_RATIO,
  MOST_BREAKDOWN_RATIO,
  PULSE_POWER_CLASSES_W,
  STAND_OFF_STEPS_V,
  SUPPRESSOR_TYPES,
} from '../../../reference/suppressors.ts'
import { WAVEFORMS } from '../../../reference/waveforms.ts'
import { print, type Table } from './print.ts'

const buses = (): Table => {
  const kinds = LINE_KINDS.filter(({ z0Ohm, barredWhy }) => z0Ohm !== undefined && barredWhy === undefined)
  return {
    id: 'bus-ohms',
    title: 'Buses: impedance and what the contact sees',
    inShort: 'Impedance of the line, ohms at the contact, volts of each leg, for every kind of data line',
    words: ['termination', 'terminator', '120 ohm', 'levels', 'bus', 'characteristic impedance', 'Z0'],
    before: ['Measure ohms on the dead bus. A terminator too many or too few explains more faults than noise does.'],
    head: ['Line', 'Impedance', 'At the contact', 'Each leg'],
    rows: kinds.map(({ name, z0Ohm, signalOhm, ownPeaks }) => [
      name,
      print(z0Ohm, 'resistance'),
      print(signalOhm?.ohm, 'resistance'),
      ownPeaks === undefined ? '–' : `${print(ownPeaks.leg[0], 'voltage')} to ${print(ownPeaks.leg[1], 'voltage')}`,
    ]),
    sources: kinds.flatMap(({ sources }) => sources),
    related: [{ page: 'bus-first-aid' }, { page: 'test-with-multimeter' }, { check: 'loading' }],
  }
}

const bands = (): Table => ({
  id: 'receiver-bands',
  title: 'Receiver bands',
  inShort: 'Where the radios listen, and how noise in each band shows',
  words: ['frequency', 'VHF', 'HF', 'ADF', 'DME', 'GPS', 'L1', 'localizer', 'glide slope', 'transponder', 'bands'],
  head: ['System', 'From', 'To', 'Noise shows as'],
  rows: RADIO_BANDS.map(({ system, fromHz, toHz, symptom }) => [
    system,
    print(fromHz, 'frequency', 5),
    print(toHz, 'frequency', 5),
    symptom,
  ]),
  sources: RADIO_BANDS.map(({ source }) => source),
  related: [{ check: 'harmonics' }, { page: 'radio-bands' }],
})

const waves = (): Table => {
  const printed = WAVEFORMS.filter(({ levels }) => levels.length > 0)
  return {
    id: 'waveform-levels',
    title: 'Surge waveforms and their levels',
    inShort: 'Open-circuit volts and short-circuit amperes of each printed level',
    words: ['DO-160', 'section 22', 'lightning', 'waveform 3', 'waveform 4', 'waveform 5', 'ESD', 'burst', 'level'],
    before: ['Which set and level a zone has is for the design authority to say. A pin level is not a cable level.'],
    head: ['Waveform', 'Level', 'Open circuit', 'Short circuit'],
    rows: printed.flatMap(({ name, levels }) =>
      levels.map(({ level, openCircuitV, shortCircuitA }) => [
        name,
        String(level),
        print(openCircuitV, 'voltage'),
        print(shortCircuitA, 'current'),
      ]),
    ),
    sources: printed.flatMap(({ levels }) => levels.map(({ source }) => source)),
    related: [{ check: 'surge' }, { item: 'surge-level' }],
  }
}

/** Stand-offs of the table: a step for the usual lines, lowest first. */
const SHOWN_V = [5, 12, 15, 28, 33, 58, 220] as const

const suppressors = (): Table => ({
  id: 'suppressor-classes',
  title: 'Suppressors by class',
  inShort: 'Stand-off, where it starts and where it holds at its rated pulse; power classes',
  words: [
    'TVS',
    'clamp',
    'stand-off',
    'breakdown',
    '1500 W',
    'varistor',
    'gas tube',
    'crowbar',
    'transient suppressor',
  ],
  before: [
    `Avalanche diodes of close tolerance, at room temperature: least breakdown ${LEAST_BREAKDOWN_RATIO.value} × stand-off. Clamp at the rated pulse ${CLAMP_RATIO.value.toPrecision(3)} × the most breakdown.`,
    `Power classes for the 10/1000 µs pulse: ${PULSE_POWER_CLASSES_W.map((watt) => print(watt, 'power')).join(', ')}.`,
  ],
  head: ['Stand-off', 'Starts at least at', 'and at most at', 'Holds at rated pulse'],
  rows: STAND_OFF_STEPS_V.filter((volt) => SHOWN_V.some((shown) => shown === volt)).map((volt) => {
    const least = volt * LEAST_BREAKDOWN_RATIO.value
    const most = least * MOST_BREAKDOWN_RATIO.value
    return [volt, least, most, most * CLAMP_RATIO.value].map((si) => print(si, 'voltage'))
  }),
  more: [
    { is: 'heading', text: 'Sorts' },
    {
      is: 'rows',
      rows: Object.values(SUPPRESSOR_TYPES).map(({ label, wears, latches }) => ({
        label,
        text: `${wears ? 'wears with every pulse' : 'does not wear within its rating'}; ${latches ? 'stays on until the current falls away. Never across a supply that can hold it' : 'lets go by itself'}`,
      })),
    },
  ],
  sources: [LEAST_BREAKDOWN_RATIO.source, MOST_BREAKDOWN_RATIO.source, CLAMP_RATIO.source, PRACTICE, DERIVED],
  related: [{ check: 'surge' }, { page: 'suppressor-facts' }],
})

/** Impedance the levels of receivers are read in. */
const REFERENCE_OHM = 50
const LEVELS_DBM = [-107, -90, -60, -30, 0, 30] as const

/** A whole number with a true minus; no zero with a sign. */
const whole = (value: number): string => String(Math.round(value) + 0).replace('-', '−')

const levels = (): Table => ({
  id: 'level-conversion',
  title: 'dBm, dBµV and dBµA',
  inShort: 'One level in three units at the impedance of a receiver, with its volts',
  words: ['conversion', 'dBm to dBuV', 'dBµA', 'decibel', 'convert', 'level'],
  before: [
    'Volts and amperes of the same level belong together only in the impedance named. In another one convert volts to volts.',
  ],
  head: ['dBm', 'dBµV', 'dBµA', 'Volts'],
  rows: LEVELS_DBM.map((dbm) => {
    const watt = 1e-3 * 10 ** (dbm / 10)
    const volt = Math.sqrt(watt * REFERENCE_OHM)
    const micro = (si: number) => whole(20 * Math.log10(si / 1e-6))
    return [whole(dbm), micro(volt), micro(volt / REFERENCE_OHM), print(volt, 'voltage')]
  }),
  sources: [DERIVED],
  related: [{ check: 'need' }, { check: 'trace' }],
})

export const SIGNAL_TABLES = (): readonly Table[] => [buses(), bands(), waves(), suppressors(), levels()]
