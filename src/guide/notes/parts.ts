/** Field notes about filters, bonds, pairs and suppressors as parts. */
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../calc/network/circuit.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import { BOND_NOTE, DIELECTRICS } from '../../reference/constructions.ts'
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import { TOLERANCE_LETTERS, TOLERANCE_SOURCE } from '../../reference/preferred-values.ts'
import type { FieldNote } from '../types.ts'
import { bondFloor, idealLoss, TABLE_PARTS, worstConversion } from './worked.ts'

const percent = (frac: number): string => formatQuantity(frac, 'fraction')

/** What is lost at rated DC; a dielectric that specifies it with the temperature says so in its note. */
function lostAtRatedDc([least, most]: readonly [number, number]): string {
  return most === 0 ? 'nothing more' : `${percent(least)} to ${percent(most)}`
}

const ohms = (si: number): string => formatQuantity(si, 'resistance', 3)

/** Ends of the table of topologies, in ohms. */
const ENDS = [
  { sourceOhm: 1, loadOhm: 10 },
  { sourceOhm: 5, loadOhm: 1000 },
  { sourceOhm: 1000, loadOhm: 5 },
  { sourceOhm: 1000, loadOhm: 1000 },
  { sourceOhm: 50, loadOhm: 50 },
] as const

const TABLE_HEAD = `Rs / Rl, ${formatQuantity(TABLE_PARTS.inductanceH, 'inductance', 2)} and ${formatQuantity(TABLE_PARTS.capacitanceF, 'capacitance', 2)}, ${formatQuantity(TABLE_PARTS.hz, 'frequency', 2)}`

const FLOOR_HZ = [1e6, 10e6, 100e6] as const
const BONDS: readonly { readonly bondH: number; readonly name?: string }[] = [
  { bondH: 0, name: '0\u00a0nH' },
  { bondH: 1e-9 },
  { bondH: 5e-9 },
  { bondH: 20e-9, name: '20\u00a0nH, an inch of wire' },
]

const TOLERANCES = [
  { name: '+100/−0\u00a0%', least: 1, most: 2 },
  ...[0.2, 0.1, 0.05, 0.01].map((frac) => ({ name: `±${percent(frac)}`, least: 1 - frac, most: 1 + frac })),
]

/** Notes on parts and how they stand in the circuit. */
export const PART_NOTES: readonly FieldNote[] = [
  {
    id: 'which-way-round',
    title: 'Which way the inductor faces',
    paragraphs: [
      'The inductor faces the lower impedance, the capacitor the higher. LC has its inductor at the side the noise comes from.',
      'LC − CL = 20·log10(Rl/Rs). With 5 Ω before and 1 kΩ behind, LC gives 46 dB more than CL. That holds where the reactance of L is above Rl: above 160 MHz with 1 µH.',
      'Below it the difference is smaller: at 10 MHz, with 1 µH and 10 nF, the table shows 31.7 − 10.3 = 21 dB.',
      'Capacitor or inductor first: compare √(Rs·Rl) with √(L/C) of the parts. Above it, C and Pi win; below it, L and T.',
      'The same part serves both directions: for noise out of the box the box is the source, for noise into it the cable is. Look at both.',
      'The right way round can ring: an LC between 5 Ω and 1 kΩ showed 9 dB of gain at its resonance. The filter check shows it.',
    ],
    table: {
      head: [TABLE_HEAD, ...TOPOLOGIES.map((topology) => TOPOLOGY_LABEL[topology])],
      rows: ENDS.map((ends) => [
        `${ohms(ends.sourceOhm)} / ${ohms(ends.loadOhm)}`,
        ...TOPOLOGIES.map((topology) => idealLoss(topology, ends)),
      ]),
    },
    picture: 'way-round',
    sources: [{ id: 'S1', standing: 'read' }, { id: 'S2', standing: 'read' }, DERIVED],
    related: [{ check: 'filter' }, { note: 'bench-figure' }],
  },
  {
    id: 'worst-case-capacitor',
    title: 'The worst-case capacitor',
    paragraphs: [
      'Attenuation with the least, loading and current with the most. The losses multiply.',
      'Example: −20 % tolerance, −25 % for temperature and bias of a BX part, two decades of ageing at 2.5 %. What is left is 0.8 × 0.75 × 0.951 = 0.57 of the marked value. That is 4.9 dB less for one capacitor, 9.8 dB for a Pi on its slope.',
      'The most takes tolerance and temperature up, and no bias or ageing loss.',
      'Small high-value class 2 chips lose 50 to 80 % at working voltage. C0G loses none.',
    ],
    table: {
      head: ['Dielectric', 'Temperature, up to', 'At rated DC', 'Ageing a decade of hours', 'What is specified'],
      rows: DIELECTRICS.map(({ name, temperatureFrac, biasFrac, ageingFracPerDecade, note }) => [
        name,
        percent(temperatureFrac),
        biasFrac === undefined ? 'ask the maker' : lostAtRatedDc(biasFrac),
        ageingFracPerDecade === 0 ? 'none' : percent(ageingFracPerDecade),
        note,
      ]),
    },
    sources: [
      { id: 'S23', standing: 'read' },
      { id: 'S24', standing: 'read' },
      { id: 'S25', standing: 'read' },
      DERIVED,
    ],
    related: [{ check: 'window' }, { note: 'codes' }],
  },
  {
    id: 'lead-and-bond',
    title: 'The lead and the bond: the floor of a filter',
    paragraphs: [
      'Once the capacitor is a short, what is left is its lead and the bond it stands on: 20·log10|1 + Rp/(Rb + jωLb)|, with Rp = Rs·Rl/(Rs + Rl).',
      `${BOND_NOTE.text} Wire has about 1 nH per millimetre.`,
      'A Pi loses most, because both its capacitors use the same bond. A T has one.',
      'The table: 50 Ω both ends, 2.5 mΩ, decibels.',
    ],
    table: {
      head: ['bond', ...FLOOR_HZ.map((hz) => formatQuantity(hz, 'frequency', 3))],
      rows: BONDS.map(({ bondH, name }) => [
        name ?? formatQuantity(bondH, 'inductance', 2),
        ...FLOOR_HZ.map((hz) => bondFloor({ sourceOhm: 50, loadOhm: 50, bondOhm: BOND_NOTE.ohm, bondH, hz })),
      ]),
    },
    sources: [DERIVED, ...BOND_NOTE.sources, { id: 'S42', standing: 'read' }],
    related: [{ check: 'filter' }, { note: 'inductance-as-built' }],
  },
  {
    id: 'bench-figure',
    title: 'The 50 Ω figure is not your circuit',
    paragraphs: [
      'MIL-STD-220 measures between 50 Ω and 50 Ω. Its own foreword calls it a check of production quality with little relation to the installed performance.',
      'A data sheet can say 40 dB and the aircraft show 10. The ends are not 50 Ω, or the bond is not a test fixture.',
      'CISPR 17 adds 0.1 Ω against 100 Ω and the reverse. Compute with your own ends, and with those two.',
    ],
    sources: [
      { id: 'S7', standing: 'read' },
      { id: 'S6', standing: 'read' },
    ],
    related: [{ check: 'filter' }, { note: 'source-impedance' }],
  },
  {
    id: 'pair-balance',
    title: 'Pair balance',
    paragraphs: [
      'Capacitors from both legs to the shell: the signal sees half of one, common noise sees both.',
      'Unequal legs turn common noise into signal. At worst it is |C1 − C2|/(C1 + C2), at f = 1/(2π·R·√(C1·C2)).',
      'A capacitor from line to line, ten times each leg’s, takes most of it away, if the signal can stand it.',
      'One leg dead is worse than no filter at all.',
    ],
    table: {
      head: ['Tolerance', 'worst conversion'],
      rows: TOLERANCES.map(({ name, least, most }) => [name, worstConversion(least, most)]),
    },
    sources: [DERIVED, { id: 'S46', standing: 'read' }, { id: 'S48', standing: 'read' }],
    related: [{ check: 'pair' }],
  },
  {
    id: 'fits-contact',
    title: 'Does a part that size fit a contact?',
    paragraphs: [
      'Ask the maker for the largest capacitance in that contact size, dielectric and voltage. Enter it in the window check as the largest the contact takes. The window then ends there.',
      'Microfarads do not fit a signal contact: if the need says microfarads, the cure is at the source or in a separate filter.',
      'C0G of the same size holds far less than X7R. More volts hold less too.',
    ],
    sources: [PRACTICE],
    related: [{ check: 'window' }, { note: 'worst-case-capacitor' }],
  },
  {
    id: 'codes',
    title: 'Codes on parts (IEC 60062)',
    paragraphs: [
      'The letter stands where the point would. So 4n7 is 4.7 nF and 1k5 is 1.5 kΩ. R47 is 0.47 Ω and 2µ2 is 2.2 µF.',
      'Three digits on a capacitor are two figures and a number of zeros, in picofarads. So 103 is 10 nF, and 104 is 100 nF.',
      'Every field of the app takes 4n7, 4.7n, 4,7 nF and 0.0047uF alike.',
    ],
    table: {
      head: ['Letter', 'Tolerance'],
      rows: TOLERANCE_LETTERS.map(({ letter, text, note }) => [
        letter,
        // as a person writes it: both ways unless it names each, with a true minus
        `${text.startsWith('+') ? text.replace('-', '−') : `±${text}`}${note === undefined ? '' : ` (${note})`}`,
      ]),
    },
    sources: [{ id: 'iec-60062', standing: 'memory' }, TOLERANCE_SOURCE],
    related: [{ note: 'worst-case-capacitor' }],
  },
  {
    id: 'suppressor-facts',
    title: 'A suppressor: what to collect first',
    paragraphs: [
      'Waveform, open-circuit volts and short-circuit amperes, single or repeated, both polarities. Range of the line voltage with its longest surge. What the input stands, and for how long. Temperatures.',
      'It stands on the cable side, ahead of the filter, with the shortest lead: inductance in its lead is voltage on your input.',
      'One rated 28 V on a 28 V bus is marginal: cold, such a part can conduct below the bus’s own upper limit.',
      'Long bus surges of tens of milliseconds are not for it: stand off above them, or limit in series.',
      'On fast lines the low-capacitance form. Its capacitance comes off the room of the signal and earns no attenuation.',
      'A capacitor is no substitute: nanofarads are charged to nearly the full voltage of a lightning pulse.',
    ],
    picture: 'suppressor-side',
    sources: [DERIVED, PRACTICE],
    related: [{ note: 'after-a-strike' }],
  },
]
