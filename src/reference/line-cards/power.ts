/** Line cards of power, returns, drives, discretes and what belongs to them. */
import { mostBondOhm } from '../bond-classes.ts'
import { memory, PRACTICE } from '../line-kinds/cite.ts'
import { STEADY_28_VDC } from '../supply-steady.ts'
import { notKnown, ohms, open, SHIP_V, signalOhm, told } from './told.ts'
import type { CardRow } from './types.ts'

const LOAD = notKnown(
  'ohms of the load: converters do not read like resistors',
  'on a good box, bled and dead; write it down',
)
const FEED = notKnown(
  'ohms of the feed: far below what a plain meter reads',
  'the volts lost from breaker to contact, by procedure, under full load',
)
const LETHAL = [
  told('Never work on it live; never alone.'),
  told('Never a trial part in it. It is worked out on paper first.'),
  told('Never touch its capacitors before they were bled and measured dead.'),
] as const
const WINDINGS = notKnown(
  'ohms of the windings behind it',
  'phase to phase on a good unit, power off: three alike, and far from chassis',
)
const SWITCHED_OPEN = ohms('switch open', [100e3, undefined], memory('arinc-700'))
const SWITCHED_CLOSED = ohms('switch closed', [undefined, 10], memory('arinc-700'))
const PHASES_ALIKE = told('Power off, capacitors bled. Phase to phase: three alike. Phase to chassis: open.')

export const POWER_CARDS: Readonly<Record<string, CardRow>> = {
  'power-28-vdc': {
    carries: told('Direct current to the box, with the ripple of whatever makes it.', memory('mil-std-704')),
    wave: {
      is: 'steady',
      leastV: STEADY_28_VDC.leastV,
      ripplePeakV: 1.5,
      rippleHz: 2.4e3,
      source: memory('mil-std-704', '22 to 29 V, ripple to 1.5 V'),
    },
    box: [LOAD],
    line: [FEED, open('feed to chassis with every load off and its breaker open')],
    suppressor: [{ farads: 100e-9, source: { id: 'practice', clause: 'inrush decides first', standing: 'practice' } }],
  },
  'power-270-vdc': {
    carries: told('High-voltage direct current to large loads.', memory('mil-std-704')),
    wave: {
      is: 'steady',
      leastV: 250,
      ripplePeakV: 6,
      rippleHz: 4.8e3,
      source: memory('mil-std-704', '250 to 280 V, ripple to 6 V'),
    },
    box: [LOAD],
    never: LETHAL,
  },
  'power-115-vac-400': {
    carries: told('Alternating current of constant frequency, one of three phases.', memory('mil-std-704')),
    wave: {
      is: 'sine',
      leastRmsV: 108,
      source: memory('mil-std-704', '108 to 118 V rms'),
    },
    box: [WINDINGS],
    measure: PHASES_ALIKE,
    never: LETHAL,
  },
  'power-115-vac-variable': {
    carries: told('Alternating current whose frequency follows the engine.', memory('mil-std-704')),
    wave: {
      is: 'sine',
      leastRmsV: 108,
      source: memory('mil-std-704', '108 to 118 V rms, to 800 Hz'),
    },
    box: [WINDINGS],
    measure: PHASES_ALIKE,
    never: LETHAL,
  },
  'power-230-vac': {
    carries: told(
      'Alternating current of twice the usual voltage, whose frequency follows the engine.',
      memory('do-160'),
    ),
    wave: notKnown(
      'its steady limits and transients',
      'from the power document of the aircraft; never from a live probe of ours',
    ),
    box: [WINDINGS],
    measure: PHASES_ALIKE,
    never: LETHAL,
  },
  'power-hvdc': {
    carries: told('Direct current of several hundred volts to motors and converters.'),
    wave: notKnown(
      'its steady limits, ripple and transients',
      'from the power document of the aircraft; never from a live probe of ours',
    ),
    box: [LOAD],
    never: LETHAL,
  },
  'panel-lighting': {
    carries: told('Dimmed supply of lamps: chopped by modern dimmers, lowered by old ones.'),
    wave: { is: 'chopped', supplyV: SHIP_V, hz: 200, onShare: 0.4, source: PRACTICE },
    box: [
      notKnown(
        'ohms of lamps: cold filaments read low, lamps with electronics read nothing',
        'on a good panel; compare',
      ),
    ],
    faults: [
      told('A dimmer that switches fast edges onto a long unshielded bus.'),
      told('A lamp with electronics that a dimmer was never meant for.'),
      told('The return of the lamps shared with audio.'),
    ],
    never: [
      told('Never a capacitor across the output of a dimmer that chops.'),
      told('Never a filter at the lamps: quieten the dimmer at its input and leads.'),
    ],
  },
  'chassis-return': {
    carries: told('Everybody’s current back. A good one shows no volts between its ends.'),
    wave: { is: 'steady', leastV: -1, ripplePeakV: 0.05, rippleHz: 400, source: PRACTICE },
    box: [
      ohms(
        'case to structure, where a bond of this class is called for',
        [undefined, mostBondOhm('radio')],
        memory('mil-std-464'),
      ),
    ],
    line: [ohms('across a bonding jumper', [undefined, mostBondOhm('jumper')], memory('ac-43-13', 'chapter 11'))],
    measure: told(
      'With four wires and an approved milliohm meter, both ways round. A plain meter reads its own leads.',
    ),
    shield: told('A strap: short, wide, bare metal to bare metal, sealed afterwards.'),
  },
  'pwm-drive': {
    carries: told('Supply to a coil, lamp or heater, switched or chopped.'),
    wave: { is: 'chopped', supplyV: SHIP_V, hz: 1e3, onShare: 0.4, kickV: 20, source: PRACTICE },
    box: [notKnown('ohms of the switch: a transistor with a diode in it', 'on a good driver; compare its outputs')],
    line: [ohms('across the coil', [5, 1e3]), open('coil to chassis')],
    measure: told('Power off. Across the coil both ways round: a diode shows in one of them.'),
  },
  'motor-phases': {
    carries: told('Three chopped voltages that make the turning field of a motor.'),
    wave: notKnown(
      'bus volts and chopping rate of the drive',
      'from its maker; with a differential probe rated for the bus, by procedure',
    ),
    box: [notKnown('ohms of the drive output: its diodes', 'diode range, each phase to plus and minus: six alike')],
    line: [notKnown('ohms of the motor', 'phase to phase with four wires: three alike; each to chassis: open')],
    measure: PHASES_ALIKE,
    faults: [
      told('A shield not closed at the motor: the whole bay hears the edges.'),
      told('Insulation worn by steep edges: a phase to chassis.'),
      told('Current in bearings and shafts for lack of a bond.'),
    ],
    never: [
      told('Never a capacitor on the output of a drive.'),
      told('Never one phase alone through a core: all of them together.'),
      told('Never open it before its bus was bled and measured dead.'),
    ],
  },
  'generator-control': {
    carries: told('Field current, the sensed bus volts, and the commands between regulator and contactors.'),
    wave: notKnown('its volts and ripple: each regulator has its own', 'from the manual of the generator system'),
    box: [notKnown('ohms of the regulator', 'on a good unit, by its manual')],
    line: [notKnown('ohms of the field', 'across the field, power off, by the manual; nobody turns an engine for it')],
    faults: [
      told('Ohms in the sense lead: the bus is raised by what is lost there.'),
      told('A worn brush or slip ring: hash that follows the speed.'),
      told('An open diode: more ripple, of a lower pitch.'),
    ],
    never: [
      told('Never a part in a sense lead: the whole bus follows it.'),
      told('Never disconnect a generator under load.'),
    ],
  },
  'discrete-ground': {
    carries: told('Yes or no: a switch to ground, a pull-up in the box.', memory('arinc-700')),
    wave: {
      is: 'contact',
      idleV: SHIP_V,
      activeV: 0,
      bounceSec: 3e-3,
      settledSec: 10e-3,
      source: { id: 'practice', clause: 'debounced over 10 to 100 ms', standing: 'practice' },
    },
    box: [signalOhm('contact to the supply of its pull-up')],
    line: [SWITCHED_CLOSED, SWITCHED_OPEN],
  },
  'discrete-28v': {
    carries: told('Yes or no: supply through a switch, a pull-down or lamp in the box.'),
    wave: {
      is: 'contact',
      idleV: 0,
      activeV: SHIP_V,
      onFromV: 18.5,
      bounceSec: 3e-3,
      settledSec: 10e-3,
      source: { id: 'practice', clause: '18.5 to 36 V is on', standing: 'practice' },
    },
    box: [signalOhm('contact to return: the pull-down')],
    line: [
      notKnown(
        'ohms through a switch that is fed',
        'volts at the contact, switch open: none, closed: those of the bus',
      ),
    ],
  },
  'push-to-talk': {
    carries: told('The key of a transmitter: a switch to ground.', memory('do-214')),
    wave: {
      is: 'contact',
      idleV: 12,
      activeV: 0,
      bounceSec: 3e-3,
      settledSec: 10e-3,
      source: memory('do-214', '5 to 28 V open'),
    },
    box: [signalOhm('contact to the supply of its pull-up')],
    line: [SWITCHED_CLOSED, SWITCHED_OPEN],
    shield: told('In one shield with its microphone, its return up to the radio, not to structure.'),
    faults: [
      told('Radio frequencies on the key line: the radio keys itself, or never lets go.'),
      told('A relay keyed from this line kicks back into it.'),
      told('Return through structure: the key moves the microphone.'),
    ],
  },
  'altitude-encoder': {
    carries: told('Height in steps, one wire for each bit: open collectors to ground.'),
    wave: {
      is: 'contact',
      idleV: SHIP_V,
      activeV: 0,
      bounceSec: 0,
      settledSec: 1e-3,
      source: PRACTICE,
    },
    box: [signalOhm('code contact to the supply of its pull-up')],
    line: [notKnown('ohms of an open collector', 'diode range, each code wire to ground: all alike')],
    faults: [
      told('One wire open or to ground: height wrong by a fixed step over some bands.'),
      told('One wire slower than the rest: a wrong height for a moment at each step.'),
      told('A second encoder left on the same wires.'),
    ],
    never: [
      told('Never a part on some of the wires only: all alike, or none.'),
      told('Never a slow edge on a wire that the transponder strobes.'),
    ],
  },
  'not-listed': {
    carries: told('Nobody knows it here. The drawing says what drives it, how fast, and into what.'),
    wave: notKnown('how it looks when it is good', 'see it with a scope on a good aircraft, and keep the picture'),
    never: [
      told('Never a trial part in a line whose volts and purpose are not known.'),
      told('Never part or mate its connector with the power on.'),
    ],
  },
}
