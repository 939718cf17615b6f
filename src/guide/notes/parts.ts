/** Field notes about filters, bonds, pairs and suppressors as parts. */
import { formatQuantity } from '../../calc/quantity/format.ts'
import { BOND_NOTE, DIELECTRICS } from '../../reference/constructions.ts'
import { TOLERANCE_LETTERS, TOLERANCE_SOURCE } from '../../reference/preferred-values.ts'
import type { FieldNote } from '../types.ts'

const PRACTICE = { id: 'practice', standing: 'practice' } as const
const DERIVED = { id: 'derived', standing: 'derived' } as const

const percent = (frac: number): string => formatQuantity(frac, 'fraction')

/** What is lost at rated DC; a dielectric that specifies it with the temperature says so in its note. */
function lostAtRatedDc([least, most]: readonly [number, number]): string {
  return most === 0 ? 'nothing more' : `${percent(least)} to ${percent(most)}`
}

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
      head: ['Rs / Rl, 1 µH and 10 nF, 10 MHz', 'C', 'L', 'LC', 'CL', 'Pi', 'T'],
      rows: [
        ['1 Ω / 10 Ω', '1.2', '15.3', '31.0', '16.6', '32.4', '46.7'],
        ['5 Ω / 1 kΩ', '10.3', '0.0', '31.7', '10.3', '41.8', '31.7'],
        ['1 kΩ / 5 Ω', '10.3', '0.0', '10.3', '31.7', '41.8', '31.7'],
        ['1 kΩ / 1 kΩ', '49.9', '0.0', '50.0', '50.0', '81.4', '50.0'],
        ['50 Ω / 50 Ω', '23.9', '1.4', '27.9', '27.9', '55.4', '31.9'],
      ],
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
      head: ['bond', '1 MHz', '10 MHz', '100 MHz'],
      rows: [
        ['0 nH', '80.0', '80.0', '80.0'],
        ['1 nH', '71.4', '52.0', '32.0'],
        ['5 nH', '58.0', '38.0', '18.1'],
        ['20 nH, an inch of wire', '46.0', '26.0', '7.0'],
      ],
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
      rows: [
        ['+100/−0 %', '−9.5 dB'],
        ['±20 %', '−14.0 dB'],
        ['±10 %', '−20.0 dB'],
        ['±5 %', '−26.0 dB'],
        ['±1 %', '−40.0 dB'],
      ],
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
