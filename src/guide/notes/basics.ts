/** Field notes for the first year: what the words mean, why the parts do what they do, and how to check it. */
import { ELEMENT_COUNT, TOPOLOGIES, TOPOLOGY_LABEL } from '../../calc/network/circuit.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import { BENCH_ENDS } from '../../reference/field-figures.ts'
import { RISE_BANDWIDTH, WIRE_H_PER_M } from '../../reference/instruments.ts'
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import { amperes, hertz, ohms, volts } from '../print.ts'
import type { FieldNote } from '../types.ts'

const times = (ratio: number): string => String(Number(ratio.toPrecision(3)))

/** Slope of one reactive element, in decibels a decade. */
const DB_PER_ELEMENT = 20

/** Decibels that are met at the aircraft. */
const DECIBELS = [3, 6, 10, 20, 40, 60] as const

/** A capacitor on a step: C·dV/dt. */
const STEP = { farads: 1e-6, volts: 28, seconds: 10e-6 } as const

/** A surge through the lead of a suppressor: L·di/dt. */
const LEAD = { metres: 0.05, amperes: 100, seconds: 1e-6 } as const

export const BASIC_NOTES: readonly FieldNote[] = [
  {
    id: 'decibels',
    title: 'Decibels: what the figure means',
    paragraphs: [
      'A decibel figure is a ratio, never an amount. Volts and amperes count twenty times the logarithm, watts ten times.',
      'Minus means less. Two filters one behind the other do not simply add: each is the other’s load.',
      'How to check: read before and after in the same unit, at the same place, in the same bandwidth.',
    ],
    table: {
      head: ['Decibels', 'Volts, times', 'Watts, times'],
      rows: DECIBELS.map((db) => [String(db), times(10 ** (db / 20)), times(10 ** (db / 10))]),
    },
    sources: [DERIVED],
    related: [{ check: 'need' }],
  },
  {
    id: 'insertion-loss',
    title: 'Insertion loss is of the circuit, not of the part',
    paragraphs: [
      'Noise at the victim without the part, divided by noise with it. That is insertion loss.',
      'It depends on the impedance on both sides. A capacitor does nothing across a low impedance, an inductor nothing in series with a high one.',
      `How to check: enter your own source and load. Then compare with the figure for ${ohms(BENCH_ENDS.fixtureOhm)}.`,
    ],
    sources: [BENCH_ENDS.fixtureBasis, DERIVED],
    related: [{ check: 'filter' }, { note: 'bench-figure' }],
  },
  {
    id: 'which-topology',
    title: 'Which topology, and how steep',
    paragraphs: [
      'High impedance on both sides: a capacitor. Low on both sides: an inductor. One of each: two elements, the inductor to the low side.',
      'High on both sides and much to take: Pi. Low on both sides and much to take: T.',
      'Each element adds its slope far above the corner only. Near it a filter can ring and make the noise larger.',
      'How to check: the window works all six out, over the whole range of what you do not know.',
    ],
    table: {
      head: ['Topology', 'Elements', 'Slope, a decade'],
      rows: TOPOLOGIES.map((topology) => [
        TOPOLOGY_LABEL[topology],
        String(ELEMENT_COUNT[topology]),
        formatQuantity(DB_PER_ELEMENT * ELEMENT_COUNT[topology], 'decibel', 2),
      ]),
    },
    picture: 'way-round',
    sources: [DERIVED, PRACTICE],
    related: [{ check: 'window' }, { note: 'which-way-round' }],
  },
  {
    id: 'edges-and-frequency',
    title: 'How fast a signal really is',
    paragraphs: [
      'Not the bit rate but the edge decides what a capacitor harms. The highest useful frequency is about a third over the rise time.',
      `Example: an edge of ${formatQuantity(10e-6, 'time', 2)} needs ${hertz(RISE_BANDWIDTH.product / 10e-6)}. One of ${formatQuantity(10e-9, 'time', 2)} needs ${hertz(RISE_BANDWIDTH.product / 10e-9)}.`,
      'A filter may take everything above that and nothing below it. Where noise lies inside, no filter tells the two apart.',
      'How to check: scope at the receiving end, short ground, and read ten to ninety percent.',
    ],
    sources: [RISE_BANDWIDTH.basis, PRACTICE],
    related: [{ check: 'loading' }],
  },
  {
    id: 'return-and-ground',
    title: 'Return, ground and bond are three things',
    paragraphs: [
      'A return carries the current of a circuit back. A ground is the point volts are counted from. A bond joins metal so that both stay alike.',
      'Trouble begins where one wire has to be two of them. Audio return and lamp return on one stud make hum.',
      'How to check: millivolts between the two grounds, with the load off and on. If it follows the load, they share a way.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'audio-ground' }, { note: 'bond-four-wire' }],
  },
  {
    id: 'twisting',
    title: 'Why twisting helps, and when not',
    paragraphs: [
      'Each turn catches the field the other way round, so that the next takes back what one took in.',
      'It helps against magnetic fields and only if the current comes back in the same pair. A return through structure undoes it.',
      'Against electric fields it is the shield that helps. Untwisted ends at a connector are a small loop: keep them short.',
      'How to check: clamp over both wires. What is left there does not come back in the pair.',
    ],
    picture: 'clamp-places',
    sources: [PRACTICE],
    related: [{ note: 'common-or-differential' }, { note: 'shield-ends' }],
  },
  {
    id: 'choke-or-capacitor',
    title: 'Choke or capacitor on a pair',
    paragraphs: [
      'A fast pair cannot stand a capacitor. A common-mode choke is in the way of what both wires carry alike, and out of the way of the signal.',
      'It works where the impedance around the loop is low: long cables, both ends bonded. In a high loop it does little.',
      'Its own leak inductance slows the pair a little, and a supply current in one wire only saturates it.',
      'How to check: clamp a ferrite around both wires first. That is a choke without opening anything.',
    ],
    sources: [PRACTICE, DERIVED],
    related: [{ check: 'window' }, { note: 'clamp-ferrites' }],
  },
  {
    id: 'inrush',
    title: 'A filter takes current when it is switched on',
    paragraphs: [
      'Charging current is capacitance times the rise of the volts.',
      `Example: ${formatQuantity(STEP.farads, 'capacitance', 2)} stepped by ${volts(STEP.volts)} in ${formatQuantity(STEP.seconds, 'time', 2)} draws ${amperes((STEP.farads * STEP.volts) / STEP.seconds)}.`,
      'Electronic breakers and contacts of small relays notice it. With the inductance of a lead it also rings to nearly twice the supply.',
      'How to check: current probe on the supply wire, single shot, at switching on.',
    ],
    sources: [DERIVED],
    related: [{ check: 'power' }, { check: 'surge' }],
  },
  {
    id: 'suppressor-lead',
    title: 'The lead of a suppressor is part of the clamp',
    paragraphs: [
      'A fast surge makes volts along every lead. They are its inductance times the rise of current.',
      `Example: ${formatQuantity(LEAD.metres, 'length', 2)} of lead and ${amperes(LEAD.amperes)} in ${formatQuantity(LEAD.seconds, 'time', 2)} add ${volts((LEAD.metres * WIRE_H_PER_M.henriesPerM * LEAD.amperes) / LEAD.seconds)}.`,
      'So the part sits at the entry, its other end on the shell. Both leads are as good as none.',
      'How to check: measure the lead with a ruler and enter it. The ladder shows the rung it makes.',
    ],
    picture: 'suppressor-side',
    sources: [WIRE_H_PER_M.basis, DERIVED],
    related: [{ check: 'surge' }, { note: 'suppressor-facts' }],
  },
  {
    id: 'hole-in-the-wall',
    title: 'One bare contact is a hole in the wall',
    paragraphs: [
      'A filtered connector is a wall. A contact beside the others without a filter carries noise through it and couples to the rest behind.',
      'So every contact gets what its signal can stand, if only a few picofarads. Grounds and spares are joined to the shell or taken out.',
      'How to check: go through the schedule, contact by contact. Each bare one has to have a reason.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'lead-and-bond' }],
  },
  {
    id: 'worst-case-first',
    title: 'Typical is not a promise',
    paragraphs: [
      'A part has tolerance, temperature, age and the volts across it. A source impedance is a range, a cable length a guess.',
      'A yes holds over all of it together. One good corner is not a yes, and the middle is not the worst.',
      'Where a fact is missing the answer is “not known”, with the name of the fact. That is a result: it says what to measure next.',
      'How to check: open the working and look which corner was the worst.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'worst-case-capacitor' }, { check: 'window' }],
  },
  {
    id: 'ferrite-and-current',
    title: 'Ferrite and current',
    paragraphs: [
      'A ferrite holds a field only up to a point. Beyond it, the part is a piece of wire.',
      'A supply current through one turn can be enough. Around supply and return together the currents cancel, and it works.',
      'How to check: read the noise at small and at full load. If it comes back with the load, the ferrite is full.',
    ],
    sources: [PRACTICE],
    related: [{ check: 'filter' }, { note: 'clamp-ferrites' }],
  },
  {
    id: 'static-at-a-connector',
    title: 'Static at a connector',
    paragraphs: [
      'A charged hand discharges into the first metal it meets. With a shell bonded to the case it stays outside.',
      'Into a contact it goes on along the wire: several amperes for each kilovolt, within a nanosecond. There a suppressor at the shell helps, and a lead of millimetres already costs volts.',
      `At ${hertz(300e6)} a centimetre of wire is ${ohms(2 * Math.PI * 300e6 * 0.01 * WIRE_H_PER_M.henriesPerM)}.`,
      'How to check: ohms from shell to case, and an insulated stick instead of a hand.',
    ],
    sources: [{ id: 'D53', standing: 'read' }, { id: 'iec-61000-4', standing: 'memory' }, DERIVED, PRACTICE],
    related: [{ check: 'surge' }, { note: 'bond-four-wire' }],
  },
  {
    id: 'first-ten-minutes',
    title: 'The first ten minutes of a complaint',
    paragraphs: [
      'Let the person tell it, and write down the words. Ask what was last touched, and when it began.',
      'Then from the seat: volume to zero, squelch open, another headset, one load after the other. Key each radio once nobody is near its antenna or fuelling. That costs nothing and settles most.',
      'Only then take the torch, then the meter, then anything that opens a circuit.',
      'How to check: after ten minutes you can say what it follows. If not, measure; do not fit.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'on-off-on' }, { note: 'breaker-matrix' }],
  },
  {
    id: 'when-to-stop',
    title: 'When to stop and hand over',
    paragraphs: [
      'Stop at smoke, heat or anything that moves by itself. Stop where a line is on the list without trials.',
      'Hand over with what you have: the words of the crew, the answers, the readings with their times, and what is not known.',
      'A filter is a change of the aircraft. Who decides on it is the holder of the design data, not the one who measured.',
      'How to check: read your sheet as if you had not been there.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'may-i-fly' }, { note: 'no-trial-lines' }],
  },
]
