/** The quantities a field or an output can have, with the symbol and the prefixes that are used for each. */

export type Quantity =
  | 'capacitance'
  | 'inductance'
  | 'resistance'
  | 'frequency'
  | 'bitRate'
  | 'voltage'
  | 'current'
  | 'power'
  | 'energy'
  | 'time'
  | 'decibel'
  | 'slope'
  | 'level'
  | 'fraction'
  | 'temperature'
  | 'angle'
  | 'length'
  | 'count'
  | 'number'

export type QuantityRule = {
  /** plain word used in messages: "a capacitance" */
  readonly word: string
  /** symbol printed after the number */
  readonly symbol: string
  /** spellings accepted after the prefix, case-sensitive unless `foldCase` */
  readonly symbolsIn: readonly string[]
  /** prefixes accepted and printed, smallest first; '' is the unit itself */
  readonly prefixes: readonly string[]
  /** an example that would be accepted, for messages */
  readonly example: string
}

export const PREFIX_POWER: Readonly<Record<string, number>> = {
  f: -15,
  p: -12,
  n: -9,
  µ: -6,
  m: -3,
  '': 0,
  k: 3,
  M: 6,
  G: 9,
  T: 12,
}

export const QUANTITIES: Readonly<Record<Quantity, QuantityRule>> = {
  capacitance: {
    word: 'a capacitance',
    symbol: 'F',
    symbolsIn: ['F', 'f'],
    prefixes: ['f', 'p', 'n', 'µ', 'm', ''],
    example: '4.7 nF',
  },
  inductance: {
    word: 'an inductance',
    symbol: 'H',
    symbolsIn: ['H', 'h'],
    prefixes: ['p', 'n', 'µ', 'm', ''],
    example: '2.2 µH',
  },
  resistance: {
    word: 'a resistance',
    symbol: 'Ω',
    symbolsIn: ['Ω', 'ohm', 'Ohm', 'OHM', 'ohms', 'R'],
    prefixes: ['µ', 'm', '', 'k', 'M', 'G'],
    example: '75 Ω',
  },
  frequency: {
    word: 'a frequency',
    symbol: 'Hz',
    symbolsIn: ['Hz', 'hz', 'HZ', 'b/s', 'bit/s', 'Bd'],
    prefixes: ['m', '', 'k', 'M', 'G'],
    example: '12 MHz',
  },
  bitRate: {
    word: 'a bit rate',
    symbol: 'bit/s',
    // every spelling of a frequency is one of a bit rate too, so that no text stored or linked loses its meaning
    symbolsIn: ['bit/s', 'b/s', 'bps', 'Bd', 'baud', 'Hz', 'hz', 'HZ'],
    prefixes: ['m', '', 'k', 'M', 'G'],
    example: '500 kbit/s',
  },
  voltage: {
    word: 'a voltage',
    symbol: 'V',
    symbolsIn: ['V', 'v', 'Vrms', 'Vpk'],
    prefixes: ['n', 'µ', 'm', '', 'k'],
    example: '28 V',
  },
  current: {
    word: 'a current',
    symbol: 'A',
    symbolsIn: ['A', 'a'],
    prefixes: ['p', 'n', 'µ', 'm', '', 'k'],
    example: '5 mA',
  },
  power: {
    word: 'a power',
    symbol: 'W',
    symbolsIn: ['W', 'w'],
    prefixes: ['n', 'µ', 'm', '', 'k', 'M'],
    example: '600 W',
  },
  energy: {
    word: 'an energy',
    symbol: 'J',
    symbolsIn: ['J', 'j'],
    prefixes: ['p', 'n', 'µ', 'm', '', 'k'],
    example: '150 mJ',
  },
  time: {
    word: 'a time',
    symbol: 's',
    symbolsIn: ['s', 'S', 'sec'],
    prefixes: ['f', 'p', 'n', 'µ', 'm', ''],
    example: '1.5 µs',
  },
  decibel: { word: 'a figure in dB', symbol: 'dB', symbolsIn: ['dB', 'db', 'DB'], prefixes: [''], example: '40 dB' },
  slope: {
    word: 'a slope',
    symbol: 'dB/decade',
    symbolsIn: ['dB/decade', 'dB/dec'],
    prefixes: [''],
    example: '60 dB/decade',
  },
  level: {
    word: 'a level',
    symbol: 'dB',
    symbolsIn: ['dBµV', 'dBuV', 'dBµA', 'dBuA', 'dBm', 'dBV', 'dBµV/m', 'dBuV/m', 'dB'],
    prefixes: [''],
    example: '105 dBµV',
  },
  fraction: { word: 'a share', symbol: '%', symbolsIn: ['%'], prefixes: [''], example: '20 %' },
  temperature: { word: 'a temperature', symbol: '°C', symbolsIn: ['°C', 'C', '℃'], prefixes: [''], example: '85 °C' },
  angle: { word: 'an angle', symbol: '°', symbolsIn: ['°', 'deg'], prefixes: [''], example: '1 °' },
  length: { word: 'a length', symbol: 'm', symbolsIn: ['m'], prefixes: ['µ', 'm', '', 'k'], example: '1.5 m' },
  count: { word: 'a whole number', symbol: '', symbolsIn: [], prefixes: [''], example: '3' },
  number: { word: 'a number', symbol: '', symbolsIn: [], prefixes: [''], example: '2' },
}
