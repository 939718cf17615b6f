/** Field notes about filters, bonds, pairs and suppressors as parts. */
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../calc/network/circuit.ts'
import { BOND_NOTE, DIELECTRICS } from '../../reference/constructions.ts'
import { CLASS_2_BIAS } from '../../reference/dielectric-bias.ts'
import { BENCH_ENDS, INCH_OF_WIRE } from '../../reference/field-figures.ts'
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import { TOLERANCE_LETTERS, TOLERANCE_SOURCE } from '../../reference/preferred-values.ts'
import { factOf, INCH_OF_BOND_SOURCES, wireH } from '../figures.ts'
import { bare, decibels, farads, henries, hertz, ohms, percent, volts } from '../print.ts'
import type { FieldNote } from '../types.ts'
import { benchExample, coded, pointed, threeDigits, WAYS_TO_WRITE, worstCaseExample } from './parts-worked.ts'
import { bondFloor, idealGain, idealLoss, idealLossDb, TABLE_PARTS, worstConversion } from './worked.ts'

/** What is lost at rated DC; a dielectric that specifies it with the temperature says so in its note. */
function lostAtRatedDc([least, most]: readonly [number, number]): string {
  return most === 0 ? 'nothing more' : `${percent(least)} to ${percent(most)}`
}

/** Ends of the table of topologies, in ohms. */
const ENDS = [
  { sourceOhm: 1, loadOhm: 10 },
  { sourceOhm: 5, loadOhm: 1000 },
  { sourceOhm: 1000, loadOhm: 5 },
  { sourceOhm: 1000, loadOhm: 1000 },
  { sourceOhm: 50, loadOhm: 50 },
] as const

const PARTS_OF_TABLE = `${henries(TABLE_PARTS.inductanceH)} and ${farads(TABLE_PARTS.capacitanceF)}`
const TABLE_HEAD = `Rs / Rl, ${PARTS_OF_TABLE}, ${hertz(TABLE_PARTS.hz)}`

/** The ends at which the two ways round differ: noise out of a low impedance into a high one. */
const LOW_TO_HIGH = ENDS[1]
const lcRings = () => idealGain('LC', LOW_TO_HIGH)

const FLOOR_HZ = [1e6, 10e6, 100e6] as const
const BONDS: readonly { readonly bondH: number; readonly name?: string }[] = [
  { bondH: 0, name: 'no inductance' },
  { bondH: 1e-9 },
  { bondH: 5e-9 },
  { bondH: INCH_OF_WIRE.henries, name: `${henries(INCH_OF_WIRE.henries)}, an inch of wire` },
]

const TOLERANCES = [
  { name: `+${bare(percent(1))}/−${percent(0)}`, least: 1, most: 2 },
  ...[0.2, 0.1, 0.05, 0.01].map((frac) => ({ name: `±${percent(frac)}`, least: 1 - frac, most: 1 + frac })),
]

const busVolts = (): string => volts(factOf('power-28-vdc', 'supply').nominalRmsV)

/** What a small chip loses where it works, from half its rated volts on. */
const [, AT_HALF, ABOVE_HALF] = CLASS_2_BIAS['small-chip'].map(({ lostFrac }) => lostFrac)

/** Notes on parts and how they stand in the circuit. */
export const PART_NOTES: readonly FieldNote[] = [
  {
    id: 'which-way-round',
    title: 'Which way the inductor faces',
    paragraphs: [
      'The inductor faces the lower impedance, the capacitor the higher. LC has its inductor at the side the noise comes from.',
      `LC − CL = 20·log10(Rl/Rs). With ${ohms(LOW_TO_HIGH.sourceOhm)} before and ${ohms(LOW_TO_HIGH.loadOhm)} behind, LC gives ${decibels(20 * Math.log10(LOW_TO_HIGH.loadOhm / LOW_TO_HIGH.sourceOhm), 2)} more than CL. That holds where the reactance of L is above Rl: above ${hertz(LOW_TO_HIGH.loadOhm / (2 * Math.PI * TABLE_PARTS.inductanceH), 2)} with ${henries(TABLE_PARTS.inductanceH)}.`,
      `Below it the difference is smaller: at ${hertz(TABLE_PARTS.hz)}, with ${PARTS_OF_TABLE}, the table shows ${idealLoss('LC', LOW_TO_HIGH)} − ${idealLoss('CL', LOW_TO_HIGH)} = ${decibels(idealLossDb('LC', LOW_TO_HIGH) - idealLossDb('CL', LOW_TO_HIGH), 2)}.`,
      'Capacitor or inductor first: compare √(Rs·Rl) with √(L/C) of the parts. Above it, C and Pi win; below it, L and T.',
      'The same part serves both directions: for noise out of the box the box is the source, for noise into it the cable is. Look at both.',
      `The right way round can ring. This LC between ${ohms(LOW_TO_HIGH.sourceOhm)} and ${ohms(LOW_TO_HIGH.loadOhm)} makes noise at ${hertz(lcRings().atHz, 2)} louder by ${decibels(lcRings().gainDb, 2)}. The filter check shows it.`,
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
      worstCaseExample(),
      'The most takes tolerance and temperature up, and no bias or ageing loss.',
      `Small high-value class 2 chips lose ${bare(percent(AT_HALF ?? Number.NaN))} to ${percent(ABOVE_HALF ?? Number.NaN)} at working voltage. C0G loses none.`,
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
      `${BOND_NOTE.text} Wire has about ${henries(wireH(1e-3))} per millimetre.`,
      'A Pi loses most, because both its capacitors use the same bond. A T has one.',
      `The table: ${ohms(BENCH_ENDS.fixtureOhm)} both ends, ${ohms(BOND_NOTE.ohm)}, decibels.`,
    ],
    table: {
      head: ['bond', ...FLOOR_HZ.map((hz) => hertz(hz))],
      rows: BONDS.map(({ bondH, name }) => [
        name ?? henries(bondH),
        ...FLOOR_HZ.map((hz) =>
          bondFloor({
            sourceOhm: BENCH_ENDS.fixtureOhm,
            loadOhm: BENCH_ENDS.fixtureOhm,
            bondOhm: BOND_NOTE.ohm,
            bondH,
            hz,
          }),
        ),
      ]),
    },
    sources: INCH_OF_BOND_SOURCES,
    related: [{ check: 'filter' }, { note: 'inductance-as-built' }],
  },
  {
    id: 'bench-figure',
    title: `The ${ohms(BENCH_ENDS.fixtureOhm)} figure is not your circuit`,
    paragraphs: [
      `MIL-STD-220 measures between ${ohms(BENCH_ENDS.fixtureOhm)} and ${ohms(BENCH_ENDS.fixtureOhm)}. Its own foreword calls it a check of production quality with little relation to the installed performance.`,
      benchExample(),
      `CISPR 17 adds ${ohms(BENCH_ENDS.lowOhm)} against ${ohms(BENCH_ENDS.highOhm)} and the reverse. Compute with your own ends, and with those two.`,
    ],
    sources: [BENCH_ENDS.fixtureBasis, BENCH_ENDS.basis, DERIVED],
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
      `The letter stands where the point would. So 4n7 is ${coded('4n7', 'capacitance')} and 1k5 is ${coded('1k5', 'resistance')}. R47 is ${pointed('R47')} of an ohm, ${coded('R47', 'resistance')}, and 2µ2 is ${coded('2µ2', 'capacitance')}.`,
      `Three digits on a capacitor are two figures and a number of zeros, in picofarads. So 103 is ${farads(threeDigits('103'))}, and 104 is ${farads(threeDigits('104'))}.`,
      `Every field of the app takes ${WAYS_TO_WRITE.slice(0, -1).join(', ')} and ${WAYS_TO_WRITE.at(-1)} alike.`,
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
      `One rated ${busVolts()} on a ${busVolts()} bus is marginal: cold, such a part can conduct below the bus’s own upper limit.`,
      'Long bus surges of tens of milliseconds are not for it: stand off above them, or limit in series.',
      'On fast lines the low-capacitance form. Its capacitance comes off the room of the signal and earns no attenuation.',
      'A capacitor is no substitute: nanofarads are charged to nearly the full voltage of a lightning pulse.',
    ],
    picture: 'suppressor-side',
    sources: [DERIVED, PRACTICE],
    related: [{ note: 'after-a-strike' }],
  },
]
