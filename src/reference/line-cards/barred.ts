/** Cards of the lines in which nobody fits a part: what they carry, what fails there, and what nobody does. */
import { memory, read } from '../line-kinds/cite.ts'
import { told } from './told.ts'
import type { BarredCard } from './types.ts'

const BY_THE_MANUAL = told('Never measure, part or load it outside the maintenance manual.')
const NO_PART = told('Never a trial part, a clamp with a test signal, or an adapter in it.')

export const BARRED_CARDS: Readonly<Record<string, BarredCard>> = {
  pyrotechnic: {
    carries: told('Current that fires a cartridge once.', memory('R37')),
    faults: [
      told('A shield or bond open: stray current has a way in.'),
      told('Static on people and tools: their bracelet and ground first, by the manual.'),
    ],
    never: [
      NO_PART,
      told('Never an ordinary meter on it: its test current can fire it.'),
      told('Never key a transmitter near it while it is connected.'),
      BY_THE_MANUAL,
    ],
  },
  'fuel-quantity': {
    carries: told('The capacitance of probes in the tank, read with a small alternating voltage.', memory('ac-25-981')),
    faults: [
      told('Water or contamination in a probe.'),
      told('A shield open outside the tank: it wanders with hands and doors.'),
      told('A connector with fuel or salt in it.'),
    ],
    never: [
      NO_PART,
      told('Never an insulation tester, nor any meter that is not approved for it.'),
      told('Never a repair or splice that its design does not show.'),
      BY_THE_MANUAL,
    ],
  },
  'engine-control': {
    carries: told('Speeds, positions and torque-motor currents of an engine.'),
    faults: [
      told('Radio fields on a speed signal have closed a throttle.', read('C01')),
      told('A back-shell loose or a shield open at the engine.'),
      told('A connector with oil or water in it.'),
    ],
    never: [
      NO_PART,
      told('Never break into it to look for noise with the engine running.'),
      told('Never swap a sensor or a cable for one that looks alike.'),
      BY_THE_MANUAL,
    ],
  },
  'flight-control': {
    carries: told('Commands and positions of surfaces and servos.'),
    faults: [
      told('A shield or bond open.'),
      told('A worn contact in a flexing loom.'),
      told('A coax laid beside a servo.', read('D21')),
    ],
    never: [
      NO_PART,
      told('Never move a surface to test it without a clear ramp and a second person.'),
      told('Never change its routing without approved data.'),
      BY_THE_MANUAL,
    ],
  },
  'stall-warning': {
    carries: told('The vane or lift sensor, and the horn or shaker.'),
    faults: [
      told('Its buzzer is the source of a noise: found with its breaker, on the ground.', read('C17')),
      told('A heater that shares its return.'),
    ],
    never: [NO_PART, told('Never fly with its breaker open.'), BY_THE_MANUAL],
  },
  'fire-detection': {
    carries: told('The ohms or capacitance of a sensing loop, or the state of a smoke detector.'),
    faults: [told('A kinked or chafed loop.'), told('Water in a connector: a false warning in rain.')],
    never: [
      NO_PART,
      told('Never a filter that could make it fail silent.'),
      told('Never an insulation tester on a loop outside its manual.'),
      BY_THE_MANUAL,
    ],
  },
  'magneto-lead': {
    carries: told('The grounding of a magneto, or the pulses to an igniter.'),
    faults: [
      told('A shield not closed at the magneto or at the switch: popping on the radio.'),
      told('A lead that is open: the magneto stays hot with the key off.'),
      told('A plug or harness with cracked insulation.'),
    ],
    never: [
      NO_PART,
      told('Never turn the propeller: treat every magneto as hot.'),
      told('Never touch an exciter before its stored charge was bled by the manual.'),
      BY_THE_MANUAL,
    ],
  },
  'strobe-high-voltage': {
    carries: told('Several hundred volts to a flash tube, and its trigger.'),
    faults: [
      told('Its cable shield open at the supply: a tick at every flash.'),
      told('The return of its supply shared with audio: a whine between flashes.'),
    ],
    never: [
      NO_PART,
      told('Never part its plug before the time its manual gives: it stays charged after switching off.'),
      told('Never reverse the leads of a supply: it is destroyed at once.'),
      BY_THE_MANUAL,
    ],
  },
  'antenna-coax': {
    carries: told('The wanted signal, and the power of a transmitter.'),
    faults: [
      told('A plug with its shield not clamped: noise gets in, power gets out.'),
      told('Water in the coax or under the antenna.'),
      told('An antenna that lost its ground on the skin.'),
    ],
    never: [
      told('Never a filter contact in it: a coaxial filter made for the band is another part.'),
      told('Never key a transmitter into an open coax or a small load.'),
      told('Never a meter on the port of an active antenna: it carries direct current.'),
    ],
  },
  'intrinsically-safe': {
    carries: told('Signals whose energy is kept too small to light a vapour.'),
    faults: [told('A barrier that has opened after a fault.'), told('A barrier whose ground is open.')],
    never: [
      NO_PART,
      told('Never add wire, capacitance or inductance that its certificate does not count.'),
      BY_THE_MANUAL,
    ],
  },
  'l-band-suppression': {
    carries: told('A short pulse by which one pulse set blanks the others while it sends.', read('W5')),
    faults: [
      told('The line is open at one box: that box hears the others and loses targets.', read('W5')),
      told('A coax that a meter calls good, and that the pulse does not pass.', read('W5')),
      told('A box that holds the line down.'),
    ],
    never: [
      told('Never any capacitor on it: the pulse is gone first.'),
      told('Never judge it by a continuity test alone: scope the pulse at both ends.'),
    ],
  },
}
