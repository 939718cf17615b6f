/** Line cards of sensors, carriers, audio and video. */
import { DERIVED, memory, PRACTICE, read } from '../line-kinds/cite.ts'
import { ends, notKnown, ohms, open, signalOhm, told } from './told.ts'
import type { CardRow } from './types.ts'

const INPUT_UNKNOWN = notKnown(
  'ohms of the input: an amplifier, and often a test current',
  'on a good box, power off; or compare its channels',
)

export const ANALOG_CARDS: Readonly<Record<string, CardRow>> = {
  'sensor-low-level': {
    carries: told('Millivolts of a bridge or shunt, on two legs that both float a little.'),
    wave: {
      is: 'slow',
      fromV: 0.01,
      toV: 0.04,
      overSec: 2,
      fromLabel: 'small load',
      toLabel: 'large load',
      source: { id: 'practice', clause: 'a shunt of 50 mV', standing: 'practice' },
    },
    box: [ohms('between the legs of the input', [1e6, 10e6], memory('textbook', 'instrument amplifier'))],
    line: [signalOhm('between the legs, towards the sensor')],
    faults: [
      told('A keyed transmitter drives current into unshielded shunt leads.', read('C15')),
      told('Legs that are not alike: what both share becomes reading.'),
      told('A return tied to chassis at the sensor as well.'),
    ],
  },
  thermocouple: {
    carries: told('Microvolts for each degree between the probe and the cold end.', memory('iec-60584')),
    wave: {
      is: 'slow',
      fromV: 0.8e-3,
      toV: 25e-3,
      overSec: 30,
      fromLabel: 'cold engine',
      toLabel: 'hot engine',
      source: { id: 'iec-60584', clause: 'type K, about 41 µV per °C', standing: 'memory' },
    },
    suppressor: [
      { farads: 100e-9, source: { id: 'practice', clause: 'its leakage decides first', standing: 'practice' } },
    ],
    box: [INPUT_UNKNOWN],
    line: [signalOhm('the whole loop through the probe'), open('each leg to chassis, where the probe is insulated')],
    measure: told('Read the loop both ways round and take the mean: its own volts move a meter.'),
    faults: [
      told('A plug or splice of plain copper in the loop: the reading follows the temperature there.'),
      told('Legs crossed at a splice: it reads lower as it gets hotter.'),
      told('Loop ohms that have grown: a moving-coil gauge reads low.'),
    ],
  },
  rtd: {
    carries: told('The ohms of a platinum element, sensed with a small steady current.', memory('iec-60751')),
    wave: {
      is: 'slow',
      fromV: 0.1,
      toV: 0.1385,
      overSec: 60,
      fromLabel: 'freezing',
      toLabel: 'boiling',
      source: memory('iec-60751', '100 Ω at 0 °C, 138.5 Ω at 100 °C, 1 mA'),
    },
    suppressor: [
      { farads: 100e-9, source: { id: 'practice', clause: 'its leakage decides first', standing: 'practice' } },
    ],
    box: [INPUT_UNKNOWN],
    line: [ohms('across the element, from −50 to 150 °C', [80, 157], memory('iec-60751')), open('each leg to chassis')],
    measure: told('Across the element, then the two wires of one end: that is the lead, and comes off.'),
    faults: [
      told('A contact that adds an ohm or two: the reading is some degrees high.'),
      told('Water in the bulb: it reads low.'),
      told('A suppressor that leaks when hot: it reads low.'),
    ],
  },
  'fuel-flow': {
    carries: told('Pulses of a turbine, a pair of pulses, or a synchro: each maker has his own.'),
    wave: notKnown('its levels and its code', 'from its maker’s manual, or on a test bench'),
    line: [notKnown('ohms of the transmitter', 'on a good transmitter, winding by winding; write them down')],
    never: [
      told('Never a part here when it feeds an engine control.'),
      told('Never open a connector in fuel vapour.'),
      told('Never a part on one leg alone.'),
    ],
  },
  potentiometer: {
    carries: told('A share of a reference voltage: the position of a flap, trim or lever.'),
    wave: {
      is: 'slow',
      fromV: 1,
      toV: 4,
      overSec: 5,
      fromLabel: 'one end',
      toLabel: 'other end',
      source: { id: 'practice', clause: 'reference of 5 V', standing: 'practice' },
    },
    box: [INPUT_UNKNOWN],
    line: [
      ohms('from end to end', [1e3, 10e3]),
      notKnown('ohms at the wiper', 'end to wiper while it is moved: no jump, no gap'),
    ],
    measure: told('Power off and measured dead. End to end first, then end to wiper through the whole travel.'),
    faults: [
      told('A worn spot: the reading jumps at one position.'),
      told('A reference that is shared with a noisy load.'),
      told('A wiper contact gone high: the reading wanders.'),
    ],
    never: [
      told('Never a part here when it closes a control loop.'),
      told('Never a large capacitor at the wiper: the reading lags.'),
    ],
  },
  lvdt: {
    carries: told('A carrier out to the sensor and its share back: size and sign are the position.'),
    wave: {
      is: 'carrier',
      hz: 3e3,
      fromShare: 0.5,
      toShare: -0.5,
      source: memory('textbook', '3 to 7 V rms, 2.5 to 3 kHz usual'),
    },
    box: [ohms('between the legs of the demodulator input', [10e3, 100e3], memory('textbook', 'usual values'))],
    line: [signalOhm('between the legs of a secondary')],
  },
  synchro: {
    carries: told('A shaft angle, as three voltages of one carrier.', memory('arinc-407')),
    wave: {
      is: 'three-legs',
      legRmsV: 11.8,
      shaftDeg: 20,
      source: memory('arinc-407', '26 V reference, 11.8 V between legs'),
    },
    box: [ohms('between two legs of a control transformer', [1e3, undefined], memory('textbook', 'usual values'))],
    line: [signalOhm('between any two of the three legs: all three alike')],
    measure: told('Three readings between the three legs: all alike. Then each leg to chassis: open.'),
    faults: [
      told('Two legs crossed: it runs backwards, or sits off by a third of a turn.'),
      told('One leg open: it sticks, or swings between two headings.'),
      told('Reference of another phase: off by half a turn, or weak.'),
    ],
    never: [
      told('Never a part on one or two of the three legs.'),
      told('Never a part in a heading or attitude line that can mislead without a flag.'),
    ],
  },
  'speed-pickup': {
    carries: told('One swing for each tooth that passes: the count in a second is the speed.'),
    wave: { is: 'pick-up', peakV: 5, leastV: 0.1, hz: 1e3, source: PRACTICE },
    box: [ohms('between the legs of the input', [1e3, 10e3], memory('textbook', 'usual values'))],
    line: [signalOhm('the coil, between the legs'), open('each leg to chassis')],
    faults: [
      told('A gap too wide: no speed below some rate.'),
      told('Noise counted as teeth: the needle jumps up, never down.'),
      told('A shorted turn: weak at low speed.'),
    ],
    never: [
      told('Never a part here when it feeds an engine control or a governor.'),
      told('Never a part on one leg alone.'),
      told('Never a capacitor that shifts the crossing that is counted.'),
    ],
  },
  audio: {
    carries: told('Speech and tones to headsets and speakers.', memory('do-214')),
    wave: { is: 'voice', rmsV: 7.75, biasV: 0, source: memory('do-214', '100 mW in 600 Ω') },
    box: [
      notKnown(
        'ohms of the output: a transformer or a capacitor stands there',
        'on a good box; or compare its two sides',
      ),
    ],
    line: [signalOhm('high to low, one headset')],
    faults: [
      told('A jack that touches the skin: a second ground, and every return is heard.', read('D01')),
      told('Low side taken from structure instead of from the audio box.'),
      told('Wires of a buzzer or lamp beside the jacks.', read('D03')),
    ],
  },
  microphone: {
    carries: told('Speech on top of a direct bias that feeds the microphone.', memory('do-214')),
    wave: { is: 'voice', rmsV: 0.5, biasV: 10, source: memory('do-214', '0.1 to 1 V rms on 8 to 16 V') },
    box: [
      notKnown('ohms of the input: the bias resistor and what follows', 'volts at the open jack, power on: the bias'),
    ],
    line: [notKnown('ohms of a microphone with an amplifier in it', 'volts across it in use: about half of the bias')],
    measure: told('Power on, at the jack: bias open, bias with the microphone in. Both steady.'),
    faults: [
      told('A shield not closed: the own transmitter is heard in the own speech.'),
      told('Bias that carries the whine of the bus.'),
      told('Key and microphone returns shared up to the radio.'),
    ],
  },
  'composite-video': {
    carries: told('One picture on a coax: brightness, colour and sync together.', memory('textbook')),
    wave: {
      is: 'picture-line',
      whiteV: 0.7,
      syncV: -0.3,
      lineSec: 64e-6,
      syncSec: 4.7e-6,
      blankSec: 12e-6,
      frontSec: 1.5e-6,
      source: memory('textbook', '1 V peak to peak'),
    },
    box: [ends('centre to shield of a receiving box', 1, memory('textbook', '75 Ω'))],
    line: [ends('centre to shield, both boxes on', 2, memory('textbook', '75 Ω'))],
    measure: told('Power off, centre to shield. One box reads its end, both read half.'),
    suppressor: [{ farads: 10e-12, source: DERIVED }],
  },
}
