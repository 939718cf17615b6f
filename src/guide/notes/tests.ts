/** Field notes that the tests of the guide need: how each is done, and what misleads. */
import { clampFallDb } from '../../calc/network/clamp.ts'
import { BOND_NOTE } from '../../reference/constructions.ts'
import { AC_BUS, DISCHARGER, GNSS_CHANNELS, ONE_PASS, PHONE_BURSTS } from '../../reference/field-figures.ts'
import { ARINC_429_RECEIVER, CAN_LINE, RS422_LINE, RS485_LINE } from '../../reference/line-kinds/bus-ends.ts'
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import { bandById, channelHz } from '../../reference/radio-bands.ts'
import { CS115_PULSE } from '../../reference/waveforms/military.ts'
import {
  CLAMP_OHM,
  clampFall,
  HF,
  HIGH_LOOP_OHM,
  hfLoss,
  LOW_LOOP_OHM,
  reactanceOhm,
  TAIL,
  tailOhm,
} from '../figures.ts'
import { bare, decibels, farads, henries, hertz, megahertz, metres, ohms, seconds } from '../print.ts'
import type { FieldNote } from '../types.ts'
import { tenths } from './worked.ts'

/** Loops of the clamp's table, in ohms. */
const LOOPS_OHM = [25, LOW_LOOP_OHM, 150, HIGH_LOOP_OHM] as const

/** Channels of the radio whose harmonics fall beside satellite position. */
function satelliteExample(): string {
  const { thirteenth, twelfth } = GNSS_CHANNELS
  const [first, last] = thirteenth.hz
  return `Satellite position (GNSS) sits at ${megahertz(GNSS_HZ)}. The ${ordinal(nearestOrder(first))} harmonic of ${bare(megahertz(first))} to ${megahertz(last)} and the ${ordinal(nearestOrder(twelfth.hz))} of ${megahertz(twelfth.hz)} fall beside it.`
}

const GNSS_HZ = channelHz('gnss-l1')
const nearestOrder = (hz: number): number => Math.round(GNSS_HZ / hz)
const ordinal = (order: number): string => `${order}th`

const [LEAST_KEYED, MOST_KEYED] = GNSS_CHANNELS.key.sec

/** Notes on tests on the aircraft. */
export const TEST_NOTES: readonly FieldNote[] = [
  {
    id: 'dummy-load',
    title: 'The dummy load: two places, four answers',
    paragraphs: [
      'Own transmitter: load at the set, then at the antenna end of the coax. Still at the set: the set leaks. Gone at the set, still at the far end: the coax. Gone in both: the antenna radiates it.',
      'Victim’s antenna: load at the receiver’s input, then at the antenna end. Gone in both: by the antenna. Gone at the receiver only: the coax picks it up. The same: another way in.',
      'Rated for the power. Never key into a small one. A DC block where the antenna is fed. Not by hand on transponder, collision-avoidance or radio-altimeter ports.',
      'Squelch open, a weak station on: else "gone" may be only the squelch.',
    ],
    picture: 'dummy-load',
    sources: [PRACTICE],
    related: [{ note: 'vhf-and-gnss' }],
  },
  {
    id: 'breaker-matrix',
    title: 'The breaker matrix: one, or two together',
    paragraphs: [
      'All off but the victim, on the battery, engine stopped. Then one at a time: on, off, on. Only breakers the manual allows, on the ground.',
      'None alone: try pairs. Four cells tell two together: neither, first, second, both.',
      'Fill it in: 0 gone, 1 just there, 2 disturbs. It is kept with the complaint.',
    ],
    fillIn: 'breakers',
    picture: 'breaker-matrix',
    sources: [PRACTICE],
    related: [{ note: 'on-off-on' }],
  },
  {
    id: 'bond-four-wire',
    title: 'A bond: four wires, and its shape',
    paragraphs: [
      'Two wires carry the current, two read the voltage: the leads fall out. Read both polarities and average; unequal readings are a rectifier.',
      `Flex the strap while reading. ${ohms(BOND_NOTE.ohm)} is usual for a class R bond; the manual’s limit wins.`,
      `Milliohms prove a joint, not a path: ${henries(TAIL.henries)} of strap is ${ohms(reactanceOhm(TAIL.henries, 10e6), 1)} at ${hertz(10e6)}. A face, or a strap at most five times as long as wide.`,
      'Near fuel only a tester approved for that zone.',
    ],
    picture: 'bond-four-wire',
    sources: [{ id: 'W4', clause: '11-188', standing: 'read' }, ...BOND_NOTE.sources, DERIVED, PRACTICE],
    related: [{ note: 'lead-and-bond' }],
  },
  {
    id: 'shield-ends',
    title: 'Shield ends: all round, one end or both',
    paragraphs: [
      `Radio frequencies: closed all round at both ends. A tail of ${metres(TAIL.metres)} is some ${henries(TAIL.henries)}: ${tailOhm()} at ${hertz(TAIL.hz)}.`,
      'Audio: one end, where the drawing says; a second end makes a loop.',
      'A ground that is itself noisy drives the shield: try the other end. Electric coupling: one end is enough. Magnetic coupling below the audio range: twist, not shield.',
    ],
    picture: 'shield-ends',
    sources: [{ id: 'D41', standing: 'read' }, DERIVED, PRACTICE],
    related: [{ note: 'lead-and-bond' }],
  },
  {
    id: 'audio-ground',
    title: 'Audio grounds and jacks',
    paragraphs: [
      'One ground for the audio, at the audio panel. Each jack stands off the skin on insulating washers.',
      'One noisy seat: mirror behind its jacks. An unused lug or a bare shield on the skin is a second ground.',
      'Volume at zero and still heard: it enters behind the volume control, so by ground, supply or wiring.',
      `${hertz(AC_BUS.hz)} hum is the alternating bus: switch inverter or bus off and listen. ${hertz(AC_BUS.hz)} is no work for a small capacitor.`,
    ],
    picture: 'audio-ground',
    sources: [{ id: 'D01', standing: 'read' }, AC_BUS.basis, PRACTICE],
    related: [{ note: 'noise-signatures' }],
  },
  {
    id: 'bus-first-aid',
    title: 'A data bus: test it before anything is added',
    paragraphs: [
      'Dead: ohms between the legs, each leg to shield and to chassis. Legs must be equal. Double the ohms: a terminator is off. Half: one too many.',
      'Alive: levels, one receiver or all, stub length, legs exchanged. Errors with all else off are the bus.',
      'A capacitor on one leg unbalances it; a filter connector on a fast bus stops it.',
    ],
    table: {
      head: ['Bus', 'ohms between the legs, dead'],
      rows: [
        ['CAN, RS-485', `${ohms(CAN_LINE.ohm / 2)}: two of ${ohms(CAN_LINE.ohm)}`],
        ['RS-422', `${ohms(RS422_LINE.ohm)}: one only, at the far receiver`],
        ['MIL-STD-1553', 'half its impedance, on the bus, not on a coupled stub'],
        ['ARINC 429', `no terminator: ${ohms(ARINC_429_RECEIVER.leastOhm)} and more for each receiver`],
      ],
    },
    picture: 'bus-ohms',
    sources: [
      { id: 'D35', standing: 'read' },
      CAN_LINE.basis,
      RS485_LINE.basis,
      RS422_LINE.basis,
      ARINC_429_RECEIVER.basis,
      PRACTICE,
    ],
    related: [{ check: 'loading' }],
  },
  {
    id: 'clamp-ferrites',
    title: 'Clamp ferrites: what they read',
    paragraphs: [
      'Over the whole cable, over both legs, over each leg; at the victim, and a quarter wave away. Whole helps: common. Each leg helps and both do nothing: differential. One wire alone is not yet differential.',
      `The fall reads the loop: 20·log10(1 + Zb/Zloop). ${ohms(CLAMP_OHM)} gives ${clampFall(LOW_LOOP_OHM)} in ${ohms(LOW_LOOP_OHM)}, ${clampFall(HIGH_LOOP_OHM)} in ${ohms(HIGH_LOOP_OHM)}.`,
      `Below ${hertz(ONE_PASS.fromHz)} one pass does little: turns count by their square. Over one wire with direct current it saturates. A reactive loop can even show a gain.`,
    ],
    table: {
      head: [`${ohms(CLAMP_OHM)} clamp, loop of`, 'falls by'],
      rows: LOOPS_OHM.map((loopOhm) => [ohms(loopOhm), tenths(clampFallDb({ clampOhm: CLAMP_OHM, loopOhm }))]),
    },
    picture: 'clamp-places',
    sources: [DERIVED, PRACTICE],
    related: [{ check: 'loop' }, { note: 'current-probe' }, { note: 'common-or-differential' }],
  },
  {
    id: 'bus-dip',
    title: 'Recording a dip or a surge of the supply',
    paragraphs: [
      'Scope at the power contacts of the box, single shot, trigger below its lower limit, then above the steady limit.',
      'Write the lowest volts and how long. Compare with the hold-up of the box: shorter is harmless.',
      'A dip: contacts, wire, breaker, ground, order of switching. No suppressor gives volts back. A surge: its source, then stand-off above it.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'suppressor-facts' }],
  },
  {
    id: 'lamps-and-chargers',
    title: 'Lamps and chargers: squelch and noise floor',
    paragraphs: [
      'Weak station on, squelch set so that it just closes. Lamp or charger on: it opens. That is a raised noise floor; no tone is heard.',
      'Repeat on three channels, and with the receiver’s own meter if it has one. A monitor on a mast away from the lamp hears less.',
      'A bare capacitor across a converter can upset its regulation. Another make with its own filter is the cure.',
    ],
    sources: [
      { id: 'W2', standing: 'read' },
      { id: 'D09', standing: 'read' },
    ],
    related: [{ note: 'radio-bands' }],
  },
  {
    id: 'vhf-and-gnss',
    title: 'VHF radio against satellite position',
    paragraphs: [
      satelliteExample(),
      `Satellite page open, key each radio beside those channels, ${bare(seconds(LEAST_KEYED))} to ${seconds(MOST_KEYED)} each. Never on or near ${megahertz(channelHz('elt-121'))} itself.`,
      'Load on the radio: still lost means the set or its harness leaks. A bag of conductive film over its face tells face from coax.',
    ],
    sources: [...GNSS_CHANNELS.thirteenth.basis, GNSS_CHANNELS.twelfth.basis, bandById('elt-121').source, DERIVED],
    related: [{ note: 'dummy-load' }],
  },
  {
    id: 'hf-on-the-airframe',
    title: 'HF radio on the airframe',
    paragraphs: [
      'At HF the whole airframe is the antenna. Current runs in every strap, and a poor coupler ground sends it into the cabin wiring.',
      'Load on the set: clean means the antenna side. Then the coupler’s ground: short, wide, below the manual’s limit.',
      'Joints that rectify: press and knock brackets, hinges and wires near the antenna while it is keyed low.',
      `${farads(HF.capacitanceF)} gives ${hfLoss()} at ${hertz(HF.hz)} from ${ohms(HF.sourceOhm)} into a high input: bond, choke and shield come first.`,
    ],
    sources: [DERIVED, PRACTICE],
    related: [{ note: 'bond-four-wire' }],
  },
  {
    id: 'l-band',
    title: 'L-band: transponder, distance and collision sets',
    paragraphs: [
      `They pulse between ${bare(megahertz(bandById('dme').fromHz))} and ${megahertz(bandById('dme').toHz)}, and a suppression line blanks the others meanwhile.`,
      'Ticks at a fixed rate, a ghost of the own ship, a lost lock: each set to standby in turn.',
      'Scope the pulse at both ends of the line; a meter may miss the fault. Never a capacitor on it.',
    ],
    sources: [{ id: 'W5', standing: 'read' }, bandById('dme').source, PRACTICE],
    related: [{ note: 'radio-bands' }],
  },
  {
    id: 'water',
    title: 'Water and corrosion',
    paragraphs: [
      'Wet for days is water; only while in cloud is charging. It goes after dry days and comes back with rain or a wash.',
      'Insulation by the manual, filtered contacts isolated, before and after drying.',
      'Find the way in: seals, drip loops, drains. Green or white at a contact: replace it.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'insulation-tests' }],
  },
  {
    id: 'intermittents',
    title: 'Faults that come and go',
    paragraphs: [
      'Watch the victim all the time. Flex, tap and press each plug, splice and clamp, three rounds. Cold spray and a warm air gun where the manual allows.',
      'A jump at one place is a contact. A smooth change with distance is coupling.',
      'What moved when it happened? A heater cable, a seat, a door. Look for chafe.',
    ],
    sources: [{ id: 'D57', standing: 'read' }, PRACTICE],
    related: [{ note: 'event-table' }],
  },
  {
    id: 'event-table',
    title: 'Only in flight: a table of events',
    paragraphs: [
      'Ten events, one line each, written at once. Two columns that agree are the answer.',
      'Weather: charging. Place: a field. Height, cold or shaking: a contact or pressure. Configuration: repeat it on the ground.',
      'Never pull a breaker in flight to find noise.',
    ],
    fillIn: 'events',
    sources: [PRACTICE],
    related: [{ note: 'intermittents' }],
  },
  {
    id: 'p-static',
    title: 'Precipitation static',
    paragraphs: [
      'Snow, ice, dust and cloud charge the skin. It ticks, hisses, roars, then bangs and is quiet for seconds.',
      'Bond of every wick, panel, door, cowling, radome strip and antenna base. One open strip is enough.',
      `After a repair: no event in three times the usual exposure. Dischargers are credited with about ${decibels(DISCHARGER.db)}.`,
      'High-voltage mapping finds the spot; it is lethal and for trained staff only.',
    ],
    sources: [{ id: 'D31', standing: 'read' }, { id: 'R38', standing: 'read' }, PRACTICE],
    related: [{ note: 'bond-four-wire' }],
  },
  {
    id: 'drives',
    title: 'Motors, drives, dimmers and pulse-width control',
    paragraphs: [
      'A brush motor makes hash: brushes, a capacitor pair and chokes at the motor. A drive makes fast edges: a choke on all its leads and a closed shield.',
      'Leads together; feed and return twisted. The shield of a drive at both ends, unless that ground is the noisy one.',
      'A capacitor at the output of a drive overloads it. It goes at its input.',
    ],
    sources: [{ id: 'D41', standing: 'read' }, PRACTICE],
    related: [{ note: 'shield-ends' }],
  },
  {
    id: 'compass-and-fields',
    title: 'Compass and steady fields',
    paragraphs: [
      'Hand compass along the structure, power off: a swing is magnetised steel. Each load on: a swing is feed and return apart.',
      'Demagnetise or replace the steel; twist feed and return; no structure return near the sensor. Then compensate again.',
      'Alternating current through a wire shakes the needle at its rate; a steady error is never a filter’s work.',
    ],
    sources: [{ id: 'D61', standing: 'read' }, PRACTICE],
  },
  {
    id: 'cabin-devices',
    title: 'Cabin and carry-on devices',
    paragraphs: [
      'Truly off, not in flight mode; those in bags count. Same seat, off, on, off.',
      'It went quiet once is no proof: a loose ground can go quiet too. Three agreements are.',
      `${hertz(PHONE_BURSTS.hz, 3)} is the rate of one sort of phone only; chargers and players have others.`,
    ],
    sources: [{ id: 'C11', standing: 'read' }, { id: 'D55', standing: 'read' }, PHONE_BURSTS.basis],
    related: [{ note: 'on-off-on' }],
  },
  {
    id: 'lightning-and-pulses',
    title: 'Lightning, EMP and CS115, CS116',
    paragraphs: [
      'After a strike: inspect by the manual, test the suppressors, then design.',
      `EMP is the electromagnetic pulse of a nuclear burst. CS115 is a ${seconds(CS115_PULSE.widthSec)} pulse and CS116 a damped sine, both driven into cables in a test.`,
      'Filter and suppressor are designed together: the suppressor takes the energy, the filter the edge. Enter each in the surge check.',
    ],
    sources: [{ id: 'mil-std-461', standing: 'memory' }, PRACTICE],
    related: [{ check: 'surge' }, { note: 'after-a-strike' }],
  },
  {
    id: 'rack-trays',
    title: 'Rack trays and adapters',
    paragraphs: [
      'A box in a tray mates blind: no adapter fits between. The tray’s wiring or a disconnect behind it carries the part.',
      'Tray springs and straps are the bond: clean, tight, measured to structure.',
      'Box and position exchanged tell box from wiring. An empty adapter tells a part from a re-seated plug.',
    ],
    picture: 'placements',
    sources: [PRACTICE],
    related: [{ note: 'in-line-trial' }],
  },
]
