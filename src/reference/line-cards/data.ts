/** Line cards of the avionics buses and serial lines. */
import { DERIVED, memory, PRACTICE, read } from '../line-kinds/cite.ts'
import { PAIR_MEASURE } from './families.ts'
import { ends, notKnown, ohms, open, SHIP_V, signalOhm, told } from './told.ts'
import type { CardRow } from './types.ts'

const WINDING_MOST_OHM = 10
const LEGS_OPEN = 'each leg to chassis'

const RECEIVER_OHM = 8e3
const RECEIVERS = 20

const ARINC_429: Omit<CardRow, 'suppressor'> = {
  carries: told('One transmitter, many receivers, words of labelled data on a shielded pair.', memory('R1')),
  wave: { is: 'return-to-zero', levelV: 10, leastV: 6.5, nullV: 2.5, source: memory('R1', 'levels at a receiver') },
  box: [ohms('between the legs of one receiver', [RECEIVER_OHM, undefined], memory('R1', '2.2.4'))],
  line: [
    ohms(
      'between the legs, all receivers on, transmitter off the line',
      [RECEIVER_OHM / RECEIVERS, undefined],
      read('R6'),
    ),
    open(`${LEGS_OPEN}, receivers off the line`),
  ],
  measure: told(
    'Part the transmitter first: its output reads low, powered or not. Then the legs, then each to chassis.',
  ),
  shield: told('Shield to ground at both ends and at every break, all round or by the shortest pigtail.', memory('R1')),
  faults: [
    told('Legs swapped at one receiver: it sees no word, the others do.'),
    told('One leg to chassis: it still works nearby, and fails at the far receiver.'),
    told('A receiver that lost power and loads the bus.'),
    told('A suppressor with far more capacitance than a receiver may have.'),
  ],
  never: [
    told('Never a part on one leg alone.'),
    told('Never two transmitters on one pair.'),
    told('Never more capacitance at a receiver than its document allows without design approval.'),
  ],
}

const MUX_BUS: Pick<CardRow, 'measure' | 'shield' | 'faults' | 'never'> = {
  measure: told(
    'The couplers are windings: the meter tells open, shorted and chassis, not the state of the ends. Those need a bus tester.',
  ),
  shield: told('Twinax, its shield closed all round at every plug and coupler.', memory('R7')),
  faults: [
    told('An end resistor missing or a stub left open: reflections, retries at some terminals only.'),
    told('Legs swapped at one plug: that terminal is silent.'),
    told('A shield open at a coupler.'),
  ],
  never: [
    told('Never a filter contact chosen by its attenuation alone: the terminal must stay a high impedance.'),
    told('Never a part on one leg alone.'),
    told('Never test it while stores or weapons hang on it.'),
  ],
}

const TRANSFORMER_OHMS: Pick<CardRow, 'box' | 'line'> = {
  box: [ohms('between the legs: a winding', [undefined, WINDING_MOST_OHM]), open(LEGS_OPEN)],
  line: [ohms('between the legs: the winding of the coupler', [undefined, WINDING_MOST_OHM]), open(LEGS_OPEN)],
}

const I2C: Omit<CardRow, 'pullUpsOhm'> = {
  carries: told('Clock and data between chips: inside a box, or over a very short harness.', read('R21')),
  wave: { is: 'pulled-up', supplyV: 5, highShare: 0.7, lowShare: 0.3, source: read('R22') },
  box: [ohms('line to its supply contact: the pull-up', [1e3, 10e3])],
  line: [ohms('line to ground, nothing pulled up there', [100e3, undefined])],
  measure: told('Power off. From each of the two wires to the supply of the bus: both pull-ups must be alike.'),
  faults: [
    told('Too much wire: the rise is late, and the fast mode fails first.'),
    told('A chip that holds the data wire down until power is cycled.'),
    told('Two pull-ups in parallel from two boards.'),
  ],
}

const RECEIVER_422 = ohms('between the legs of one receiver', [4e3, undefined], memory('tia-422', 'input'))

export const DATA_CARDS: Readonly<Record<string, CardRow>> = {
  'arinc-429-high': {
    ...ARINC_429,
    suppressor: [{ farads: 1e-9, source: PRACTICE }],
  },
  'arinc-429-low': {
    ...ARINC_429,
    suppressor: [{ farads: 2e-9, source: PRACTICE }],
  },
  'mil-std-1553-stub': {
    ...MUX_BUS,
    ...TRANSFORMER_OHMS,
    carries: told('Command and response of a bus controller and its terminals, one stub to each.', read('R7')),
    wave: {
      is: 'manchester',
      one: 'down',
      leastSentV: 9,
      heardFromV: 0.5,
      edgeSec: 150e-9,
      source: read('R7', '18 to 27 V sent; 1 to 14 V at the stub'),
    },
    suppressor: [{ farads: 30e-12, ofPair: true, source: DERIVED }],
  },
  'mil-std-1553-direct': {
    ...MUX_BUS,
    carries: told('The same bus without a coupler: resistors in the box, a very short stub.', read('R7')),
    wave: {
      is: 'manchester',
      one: 'down',
      leastSentV: 3,
      heardFromV: 0.7,
      edgeSec: 150e-9,
      source: memory('R7', '6 to 9 V sent; 1.4 to 20 V at the stub'),
    },
    box: [
      ohms('between the legs: two resistors and a winding', [110, 130], memory('R7', '55 Ω in each leg')),
      open(LEGS_OPEN),
    ],
    line: [ends('between the legs: both ends of the bus', 2, memory('R7')), open(LEGS_OPEN)],
    measure: told('Every terminal lies across the bus: part them all, or the reading is lower than its ends.'),
    suppressor: [{ farads: 30e-12, ofPair: true, source: DERIVED }],
  },
  'arinc-708': {
    ...MUX_BUS,
    ...TRANSFORMER_OHMS,
    carries: told('The picture of the weather radar to its displays, one way.', memory('arinc-708')),
    wave: {
      is: 'manchester',
      one: 'down',
      leastSentV: 9,
      heardFromV: 0.5,
      edgeSec: 150e-9,
      source: memory('arinc-708', 'taken as MIL-STD-1553B'),
    },
    suppressor: [{ farads: 30e-12, ofPair: true, source: DERIVED }],
  },
  'arinc-717': {
    carries: told('Frames of flight data to the recorder, one way, in bi-phase code.', memory('arinc-717')),
    wave: notKnown(
      'its levels and edges',
      'scope between the legs at the recorder of a good aircraft; keep the picture',
    ),
    measure: PAIR_MEASURE,
  },
  csdb: {
    carries: told('Data of one radio or instrument to several, one way.', memory('csdb')),
    wave: notKnown(
      'its bit rate and edges',
      'scope between the legs at a receiver; if the driver is an RS-422 part, see RS-422',
    ),
    box: [RECEIVER_422],
    measure: PAIR_MEASURE,
  },
  'rs-232': {
    carries: told('Serial data between two boxes, one wire each way against a common ground.', memory('R8')),
    wave: {
      is: 'single',
      highV: 12,
      lowV: -12,
      highFromV: 3,
      lowToV: -3,
      rateHz: 9600,
      edgeSec: 4e-6,
      source: memory('R8', '±5 to ±15 V, seen from ±3 V'),
    },
    box: [
      ohms('receive contact to signal ground', [3e3, 7e3], memory('R8')),
      ohms('transmit contact to signal ground', [300, undefined], memory('R8', 'power off')),
    ],
    line: [ohms('the far receiver, contact to signal ground', [3e3, 7e3], memory('R8'))],
    measure: told('Power off. To the signal ground of the plug, not to chassis.'),
    ratesHz: [9600, 115200],
    suppressor: [{ farads: 300e-12, source: memory('R8', '2500 pF less the cable') }],
  },
  'rs-422': {
    carries: told('Serial data from one driver to up to ten receivers, on a balanced pair.', memory('tia-422')),
    wave: {
      is: 'balanced',
      middleV: 2,
      swingV: 2,
      thresholdV: 0.2,
      rateHz: 1e6,
      edgeShare: 0.1,
      source: memory('R12', '2 to 6 V between the legs, seen from ±0.2 V'),
    },
    box: [RECEIVER_422],
    line: [ends('between the legs: the far end', 1, read('R12'))],
    ratesHz: [1e6, 10e6],
    suppressor: [
      { farads: 200e-12, rateHz: 1e6, source: DERIVED },
      { farads: 50e-12, rateHz: 10e6, source: DERIVED },
    ],
  },
  'rs-485': {
    carries: told('Serial data between many boxes on one pair; they talk in turn.', memory('R13')),
    wave: {
      is: 'balanced',
      middleV: 2.5,
      swingV: 2,
      thresholdV: 0.2,
      rateHz: 1e6,
      edgeShare: 0.2,
      source: memory('R13', '1.5 to 5 V between the legs, seen from ±0.2 V'),
    },
    box: [ohms('between the legs of one node', [12e3, undefined], read('R13', 'one unit load'))],
    line: [ends('between the legs: both ends', 2, read('R14'))],
    ratesHz: [1e6, 10e6],
    suppressor: [
      { farads: 200e-12, rateHz: 1e6, source: DERIVED },
      { farads: 50e-12, rateHz: 10e6, source: DERIVED },
    ],
    faults: [
      told('An end resistor missing, or a third one inside a box.'),
      told('Nobody drives the bus and nothing holds it apart: noise is read as data.'),
      told('A ground wire missing between boxes: the common volts leave their range.'),
    ],
  },
  can: {
    carries: told('Short messages between many nodes; the lower number wins the bus.', memory('R16')),
    wave: {
      is: 'dominant',
      recessiveV: 2.5,
      highV: 3.5,
      lowV: 1.5,
      seenFromV: 0.9,
      notSeenToV: 0.5,
      rateHz: 500e3,
      busF: 1e-9,
      source: read('R16', 'levels in transceiver data sheets'),
    },
    box: [ohms('between the legs of one node without an end resistor', [10e3, 100e3], memory('R16'))],
    line: [
      ends('between the legs: both ends', 2, read('R16')),
      ohms('each leg to chassis, the two alike', [2e3, undefined]),
    ],
    measure: told('Between the legs first. Half the reading means a third end resistor, double means one is missing.'),
    ratesHz: [125e3, 500e3, 1e6],
    suppressor: [
      { farads: 100e-12, rateHz: 500e3, source: PRACTICE },
      { farads: 50e-12, rateHz: 1e6, source: PRACTICE },
      { farads: 20e-12, rateHz: 5e6, source: PRACTICE },
    ],
    faults: [
      told('An end resistor missing, or a third one left in a test lead.'),
      told('One leg open or to chassis: it limps on, error counters climb.'),
      told('Stubs too long or too close together.'),
      told('A node of another bit rate.'),
    ],
    never: [
      told('Never a third end resistor to quieten it.'),
      told('Never a part on one leg alone.'),
      told('Never power suppressors on its legs: the recessive edge is lost first.'),
    ],
  },
  lin: {
    carries: told('Slow data from one master to a few slaves on a single wire.', memory('iso-17987')),
    wave: {
      is: 'single',
      highV: SHIP_V,
      lowV: 1,
      highFromV: 0.6 * SHIP_V,
      lowToV: 0.4 * SHIP_V,
      rateHz: 19.2e3,
      edgeSec: 10e-6,
      source: memory('iso-17987', 'seen at 0.6 and 0.4 of the supply'),
    },
    box: [
      notKnown(
        'a steady reading: a diode stands before the pull-up',
        'volts at the wire with the power on: nearly those of the supply',
      ),
    ],
    line: [signalOhm('through the master’s pull-up, to its supply contact')],
    suppressor: [{ farads: 205e-12, source: read('R33') }],
  },
  'i2c-standard': { ...I2C, pullUpsOhm: [4.7e3], suppressor: [{ farads: 50e-12, source: DERIVED }] },
  'i2c-fast': { ...I2C, pullUpsOhm: [2.2e3], suppressor: [{ farads: 25e-12, source: DERIVED }] },
  'i2c-fast-plus': { ...I2C, pullUpsOhm: [1e3] },
  'one-pps': {
    carries: told('The start of each second, as one edge, from a receiver of satellite time.'),
    wave: { is: 'pulse', highV: 5, everySec: 1, forSec: 0.1, source: PRACTICE },
    shield: told('Coax or a shielded wire, closed at both ends: its edge must arrive as it left.'),
    faults: [
      told('An end resistor where the driver is too weak for it, or none where the cable rings.'),
      told('A filter that makes the edge late by a fixed time nobody took off.'),
      told('The other edge taken for the mark.'),
    ],
    never: [
      told('Never filter it before the user of the time says what delay and jitter he stands.'),
      told('Never share its return with a load.'),
    ],
  },
}
