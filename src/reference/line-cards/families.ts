/** What the kinds of one family have in common. A kind without a row of its own has a card from here alone. */
import { PRACTICE } from '../line-kinds/cite.ts'
import type { LineFamily } from '../line-kinds/types.ts'
import { notKnown, open, told } from './told.ts'
import type { LineCard } from './types.ts'

const OF_THE_MAKER = notKnown(
  'what it carries when it is good',
  'see it with a scope on a good aircraft, and keep the picture',
)
const BOX_UNKNOWN = notKnown(
  'the ohms of the box at this contact',
  'on a good box, power off, contact to its return; write them down',
)
const LINE_UNKNOWN = notKnown(
  'the ohms of the harness from here on',
  'on a good aircraft, power off, contact to its return; write them down',
)

const PLAIN_MEASURE = told(
  'Power off, tagged, measured dead, both connectors parted. Meter to the contact with a test lead of the right size.',
)
export const PAIR_MEASURE = told(
  'Power off and measured dead. Between the legs first, then each leg to chassis: the two must be alike.',
)
const BOTH_ENDS = told(
  'Shield closed all round at both connectors, on every plug on the way. A pigtail gives away most of it.',
)
const RUN_TOGETHER = told('Usually none. Run it beside its return, away from transmitter coax, drives and ignition.')
const NEVER_LIVE = told('Never part or mate its connector with the power on.')
const NEVER_ONE_LEG = told('Never a part on one leg alone: it turns what both legs share into signal.')

const COMMON = {
  carries: told('What it carries is said by the drawing of the installation.'),
  wave: OF_THE_MAKER,
  box: [BOX_UNKNOWN],
  line: [LINE_UNKNOWN],
  measure: PLAIN_MEASURE,
  shield: RUN_TOGETHER,
  faults: [
    told('A contact that is pushed back, bent or wet.'),
    told('A chafed wire that touches structure when something moves.'),
  ],
  never: [NEVER_LIVE, told('Never a part whose effect on the signal nobody has worked out.')],
} as const satisfies LineCard

const POWER: LineCard = {
  ...COMMON,
  shield: told('None. Feed and return side by side, or twisted; the return as short as the feed.'),
  measure: told(
    'Breaker open, power off, capacitors bled and measured dead. The reading climbs while they charge: wait until it stands.',
  ),
  faults: [
    told('A poor return or ground stud: every load on it is heard in every other.'),
    told('A crimp or breaker that warms and drops volts under load.'),
    told('A rectifier diode open: the ripple grows and its pitch falls.'),
  ],
  never: [
    NEVER_LIVE,
    told('Never close a breaker that tripped before its cause is found.'),
    told('Never add capacitance to chassis on an isolated return without asking who isolated it.'),
  ],
}

const PAIR: LineCard = {
  ...COMMON,
  measure: PAIR_MEASURE,
  shield: BOTH_ENDS,
  faults: [
    told('One leg open: it half works, and picks up everything.'),
    told('Legs crossed at one plug, or a stub that nobody drew.'),
    told('A shield left open at one connector after a repair.'),
    told('A suppressor or filter of ours that loads the edges.'),
  ],
  never: [NEVER_ONE_LEG, NEVER_LIVE, told('Never untwist more of the pair than the contact needs.')],
}

const CARRIER: LineCard = {
  ...COMMON,
  measure: PAIR_MEASURE,
  shield: told('A shielded twisted pair for each winding. Ground the shield as the maker of the box says.'),
  faults: [
    told('A winding open or shorted: one sector reads wrong, the rest right.'),
    told('Legs crossed: the reading runs the wrong way or sits off by a fixed angle.'),
    told('A loose contact that adds ohms: an error that moves with vibration.'),
  ],
  never: [
    NEVER_ONE_LEG,
    told('Never a part here when the reading moves a control surface or an engine.'),
    told('Never judge it by size alone: its phase is part of the reading.'),
  ],
}

const DISCRETE: LineCard = {
  ...COMMON,
  suppressor: [{ farads: 10e-9, source: PRACTICE }],
  faults: [
    told('A corroded contact: closed, but not below what the input calls closed.'),
    told('A leaking diode or wet connector that holds the input between its two states.'),
    told('A neighbour that couples a pulse longer than the box waits for.'),
  ],
  never: [
    NEVER_LIVE,
    told('Never a large capacitor straight across a dry contact: it welds and pits it.'),
    told('Never a slow edge into an input that has no hysteresis: it chatters.'),
  ],
}

const AUDIO: LineCard = {
  ...COMMON,
  shield: told(
    'A shielded pair, high and low together. Shield to ground at one end, at the audio box; jacks insulated from the skin.',
  ),
  faults: [
    told('A jack that touches the skin: a second ground, and every return is heard.'),
    told('Low side taken from structure instead of from the audio box.'),
    told('A shield that is not closed: the own transmitter is rectified in the first stage.'),
  ],
  never: [
    told('Never cure a whine with a capacitor at the jack: find the shared return.'),
    NEVER_LIVE,
    told('Never ground the low side at the jack as well as at the box.'),
  ],
}

const BARRED: LineCard = { ...COMMON, never: [told('Never a trial part in this line.'), NEVER_LIVE] }

const SENSOR: LineCard = {
  ...COMMON,
  measure: PAIR_MEASURE,
  shield: told('A shielded twisted pair. Shield to ground at the box; at both ends where radio frequencies get in.'),
  faults: [
    told('A contact with some ohms: the reading is off by a fixed amount.'),
    told('A leg to chassis somewhere: the reading follows the loads.'),
    told('A part of ours that leaks: the leak is read as signal.'),
  ],
  never: [NEVER_ONE_LEG, told('Never a suppressor here before its leakage, hot, has been worked out.'), NEVER_LIVE],
}

export const FAMILY_CARDS: Readonly<Record<LineFamily, LineCard>> = {
  'power-dc': POWER,
  'power-ac': POWER,
  ground: {
    ...COMMON,
    faults: [
      told('Paint, corrosion or sealant under a lug.'),
      told('Two grounds, and a current between them.'),
      told('A strap that is whole and long: it bonds for direct current, not for radio frequencies.'),
    ],
    never: [
      told('Never filter a ground: measure and repair its bond.'),
      told('Never open a bond that carries current from a running engine or a live bus.'),
      told('Never milliohm testers near fuel that are not approved for it.'),
    ],
  },
  discrete: DISCRETE,
  sensor: SENSOR,
  carrier: CARRIER,
  audio: AUDIO,
  drive: {
    ...COMMON,
    shield: told('All leads of the drive in one shield, closed all round at both ends, away from sensor wiring.'),
    faults: [
      told('A coil without its diode: one spike at every switching off.'),
      told('A return through structure: the whole bay carries the pulses.'),
      told('A shield left open at the driver.'),
    ],
    never: [
      told('Never a capacitor straight on a switched output: it is charged at every edge.'),
      told('Never a filter before the coil has its diode, suppressor or snubber.'),
      NEVER_LIVE,
    ],
  },
  'data-pair': PAIR,
  'data-single': {
    ...COMMON,
    shield: told('A shield over data and its ground wire together, closed at both plugs.'),
    faults: [
      told('Two different grounds: the levels move against each other.'),
      told('Too much cable or too large a suppressor: edges late, errors at the highest rate.'),
      told('A ground wire left out of the cable: structure carries it.'),
    ],
    never: [
      NEVER_LIVE,
      told('Never a suppressor for power on a data contact: it has far too much capacitance.'),
      told('Never count on structure as its return.'),
    ],
  },
  video: {
    ...COMMON,
    box: [open('centre to shield, before the end resistor')],
    shield: told(
      'Coax; its shield is the return. Closed all round at both plugs, and insulated where the maker says so.',
    ),
    faults: [
      told('An end resistor missing or doubled: ghosts, or a picture too bright or too dark.'),
      told('Shield grounded twice: a bar that rolls through the picture.'),
      told('A coax pinched at a clamp.'),
    ],
    never: [
      NEVER_LIVE,
      told('Never a filter contact made for power: it blurs the picture first.'),
      told('Never two end resistors on one line.'),
    ],
  },
  coax: BARRED,
  barred: BARRED,
  other: COMMON,
}
