/** Tables of hardware: bonds, shields, contacts, dielectrics, capacitors as built, preferred values and codes. */
import { BOND_CLASSES } from '../../../reference/bond-classes.ts'
import { DIELECTRICS } from '../../../reference/constructions.ts'
import { CONTACT_SIZES } from '../../../reference/contact-sizes.ts'
import { biasPoints, CASE_NAMES, CASE_SIZES } from '../../../reference/dielectric-bias.ts'
import { WIRE_H_PER_M } from '../../../reference/instruments.ts'
import { DERIVED, PRACTICE } from '../../../reference/line-kinds/cite.ts'
import { E6, E12, TOLERANCE_LETTERS, TOLERANCE_SOURCE } from '../../../reference/preferred-values.ts'
import { percent, print, type Table } from './print.ts'

const TAILS_M = [0.01, 0.025, 0.05, 0.1] as const
const TAIL_HZ = [1e6, 10e6, 100e6] as const

/** Ohms of a straight wire: 2π·f·L. */
const tailOhm = (lengthM: number, hz: number): number => 2 * Math.PI * hz * WIRE_H_PER_M.henriesPerM * lengthM

const bonds = (): Table => ({
  id: 'bonds',
  title: 'Bonds: what for, and how many ohms',
  inShort: 'Classes of bonds with their direct-current figures; the manual’s limit wins',
  words: ['bonding', 'class R', 'milliohm', 'class H', 'class S', 'jumper', 'static bond', 'bond resistance'],
  before: ['Read with four wires, both polarities, flexed. A good reading proves the joint, not its inductance.'],
  head: ['For', 'Class', 'At most', ''],
  rows: BOND_CLASSES.map(({ purpose, letter, mostOhm, note }) => [
    purpose,
    letter ?? '–',
    print(mostOhm, 'resistance'),
    note,
  ]),
  sources: BOND_CLASSES.map(({ source }) => source),
  related: [{ page: 'test-with-milliohm-meter' }, { page: 'bond-four-wire' }, { item: 'bond' }],
})

const shields = (): Table => ({
  id: 'shield-ends',
  title: 'Shield ends: what a tail costs',
  inShort: 'Ohms of a pigtail by its length, against a shield closed all round',
  words: ['pigtail', 'shield termination', 'drain wire', 'back-shell', '360 degrees'],
  before: [
    'All round at both ends for radio frequencies. A tail adds its own reactance between shield and shell.',
    'Audio and sensors at low frequency: one end, where the drawing says.',
  ],
  head: ['Tail', ...TAIL_HZ.map((hz) => `at ${print(hz, 'frequency', 2)}`)],
  rows: TAILS_M.map((lengthM) => [
    print(lengthM, 'length', 2),
    ...TAIL_HZ.map((hz) => print(tailOhm(lengthM, hz), 'resistance', 2)),
  ]),
  sources: [WIRE_H_PER_M.basis, DERIVED],
  related: [{ page: 'shield-ends' }, { page: 'drawing-shield-ends' }],
})

const contacts = (): Table => ({
  id: 'contact-sizes',
  title: 'Contact sizes, wires and current',
  inShort: 'What one contact of a circular connector may carry by itself',
  words: ['pin size', 'size 20', 'size 22D', 'AWG', 'ampacity', 'current rating'],
  before: [
    'One contact alone, in free air. A full connector, a hot zone or height takes a good part of it: the specification’s derating counts.',
  ],
  head: ['Size', 'Wire, AWG', 'At most'],
  rows: CONTACT_SIZES.map(({ size, wire, mostA }) => [size, `${wire[0]} to ${wire[1]}`, print(mostA, 'current')]),
  sources: CONTACT_SIZES.map(({ source }) => source),
})

const dielectrics = (): Table => ({
  id: 'dielectrics',
  title: 'Dielectrics: temperature, age, bias',
  inShort: 'What is left of the marked capacitance, by class of ceramic',
  words: ['C0G', 'NP0', 'X7R', 'BX', 'class 1', 'class 2', 'DC bias', 'ageing', 'aging', 'ceramic'],
  before: ['Shares of the marked value. Tolerance comes on top. Ageing is for each tenfold of hours.'],
  head: ['Dielectric', 'Temperature', 'Age, a decade', 'Lost at rated volts', 'Loss factor'],
  rows: DIELECTRICS.map((one) => [
    one.name,
    `±${percent(one.temperatureFrac)}`,
    percent(one.ageingFracPerDecade),
    one.biasFrac === undefined
      ? 'ask the maker'
      : one.biasFrac[1] === 0
        ? 'none'
        : `${percent(one.biasFrac[0])} to ${percent(one.biasFrac[1])}`,
    percent(one.dissipationFrac),
  ]),
  more: [
    { is: 'heading', text: 'Class 2 at its rated voltage, by build' },
    {
      is: 'rows',
      rows: CASE_SIZES.map((size) => ({
        label: CASE_NAMES[size],
        text: `loses up to ${percent(Math.max(...DIELECTRICS.flatMap((one) => biasPoints(one, size).map(({ lostFrac }) => lostFrac))))}`,
      })),
    },
  ],
  sources: DIELECTRICS.flatMap(({ sources }) => sources),
  related: [{ page: 'worst-case-capacitor' }, { check: 'window' }],
})

const preferred = (): Table => ({
  id: 'preferred-values',
  title: 'Preferred values and codes on parts',
  inShort: 'E6 and E12, tolerance letters, and how a value is written on a part',
  words: ['E6', 'E12', 'IEC 60063', 'IEC 60062', 'code', '103', '4n7', 'tolerance letter', 'marking'],
  before: [
    `E6: ${E6.join(', ')}. E12: ${E12.join(', ')}. And so on in every decade.`,
    'The letter stands where the point would: 4n7, 1k5, R47. Three digits on a capacitor are two figures and a count of zeros, in picofarads.',
  ],
  head: ['Letter', 'Tolerance', ''],
  rows: TOLERANCE_LETTERS.map(({ letter, text, note }) => [
    letter,
    text.startsWith('+') ? text.replace('-', '−') : `±${text}`,
    note ?? '',
  ]),
  sources: [{ id: 'iec-60063', standing: 'memory' }, { id: 'iec-60062', standing: 'memory' }, TOLERANCE_SOURCE],
  related: [{ page: 'codes' }],
})

const audio = (): Table => ({
  id: 'audio-isolation',
  title: 'Audio: what stands off from what',
  inShort: 'Jacks, shields and returns of the audio system, and what a meter has to show',
  words: ['jack', 'insulating washer', 'audio ground', 'headset jack', 'ground loop', 'isolation'],
  before: ['With the system dead and plugs out. One ground, at the audio panel, and nowhere else.'],
  head: ['Between', 'Good', 'Bad'],
  rows: [
    ['Jack frame and skin', 'open, washers in', 'a few ohms or less: a second ground'],
    ['Microphone return and headphone return', 'joined at the panel only', 'joined at the jack as well'],
    ['Shield of an audio pair and skin', 'at one end only, as drawn', 'at both ends: a loop'],
    ['Unused lug or bare shield and skin', 'open', 'touches when the panel is pushed'],
    ['Primary and secondary of an audio transformer', 'open', 'joined: no isolation left'],
  ],
  sources: [{ id: 'D01', standing: 'read' }, PRACTICE],
  related: [{ page: 'audio-ground' }, { page: 'drawing-audio-ground' }, { page: 'test-with-multimeter' }],
})

export const HARDWARE_TABLES = (): readonly Table[] => [
  bonds(),
  shields(),
  audio(),
  contacts(),
  dielectrics(),
  preferred(),
]
