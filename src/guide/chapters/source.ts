/** Which source: isolated battery and breakers, what the rhythm follows, what is on the breaker, can it be treated. */
import type { Question } from '../types.ts'

/** The questions that name the source. */
export const SOURCE_CHAPTER: readonly Question[] = [
  {
    is: 'question',
    id: 'battery',
    chapter: 'Isolated battery and breakers',
    text: 'Victim on a clean battery, all else off: is it still there?',
    why: 'This clears about half the suspects at once: what stays comes by antenna or from outside, what goes came from on board.',
    findOut:
      'On the ground, feed the victim from its own battery, everything else off, ground supply unplugged. Then bring systems back one breaker at a time, non-essential ones only, by the manual. Never in flight.',
    options: [
      {
        id: 'still',
        label: 'Still there',
        next: [{ when: { answered: { node: 'wrong', options: ['data', 'reset'] } }, go: 'cable' }, { go: 'path' }],
      },
      { id: 'one-breaker', label: 'Gone; one breaker or switch brings it back', next: 'source-kind' },
      { id: 'engine', label: 'Gone; it comes with the engine, or with no single one', next: 'rhythm' },
      { id: 'ground-supply', label: 'Gone; it came from the ground supply', next: 'ground-supply' },
      { id: 'dont-know', label: "Not tried, or don't know", next: 'rhythm' },
    ],
    cautions: ['breakers'],
  },
  {
    is: 'question',
    id: 'rhythm',
    chapter: 'What the rhythm follows',
    text: 'What does its rhythm or pitch follow?',
    why: 'Every source has its own clock, and the clock names it.',
    findOut:
      'Record the audio and look at its spectrum on a phone. Change one thing: engine speed, a landing light, a dimmer, the transmit key.',
    options: [
      { id: 'whine', label: 'A whine that climbs with engine speed', next: 'whine-alternator' },
      { id: 'popping', label: 'Popping or chopping with engine speed', next: 'ignition' },
      { id: 'load', label: 'Pitch moves when a load is switched', next: 'whine-regulator' },
      { id: 'steady', label: 'A steady hum or whistle: 400 Hz, 2.4 or 4.8 kHz', next: 'whine-rectifier' },
      { id: 'flash', label: 'Each flash, with a rising whine between', next: 'strobe-supply' },
      { id: 'transmit', label: 'Our own transmit key', next: 'ptt' },
      { id: 'device', label: 'The 217 Hz buzz of a phone', next: 'portable-device' },
      { id: 'dimmer', label: 'A dimmer, heater, lamp or charger', next: 'source-fix' },
      { id: 'motor', label: 'A motor, pump or blower running', next: 'source-fix' },
      { id: 'traffic', label: 'Bus traffic, or a fixed tone from a computer', next: 'source-fix' },
      { id: 'dont-know', label: "Nothing, or don't know", next: 'cable' },
    ],
  },
  {
    is: 'question',
    id: 'source-kind',
    chapter: 'Isolated battery and breakers',
    text: 'What is on that breaker, or what is the new unit?',
    why: 'Each kind of source is quietened in its own place.',
    findOut: 'Read the breaker chart, then switch off the units behind it one by one.',
    options: [
      { id: 'converter', label: 'A converter, LED lamp, charger or dimmer', next: 'source-fix' },
      { id: 'motor', label: 'A motor, pump or blower', next: 'source-fix' },
      { id: 'computer', label: 'A computer, display or data box', next: 'source-fix' },
      { id: 'coil', label: 'A relay, solenoid or valve', next: 'coil-first' },
      { id: 'alternator', label: 'The alternator, its field or regulator', next: 'whine-alternator' },
      { id: 'rectifier', label: 'An inverter or a rectifier unit', next: 'whine-rectifier' },
      { id: 'strobe', label: 'A strobe supply', next: 'strobe-supply' },
      { id: 'transmitter', label: 'A transmitter', next: 'ptt' },
      {
        id: 'listed',
        label: 'A line of the safety list',
        hint: 'stall warning, fuel, fire, ignition, flight or engine control',
        gate: 'barred',
        next: 'stop-source-listed',
      },
      { id: 'dont-know', label: "Something else, or don't know", next: 'cable' },
    ],
  },
  {
    is: 'question',
    id: 'source-fix',
    chapter: 'At the source',
    text: 'Can the source itself be made quiet?',
    why: 'One cure at the source helps every victim; one at a victim helps only that one.',
    findOut:
      'Swap in a known good unit of the same kind. If that one is as noisy, the design is noisy and its own connector is the place; if it is quiet, the old one has a fault.',
    options: [
      { id: 'faulty', label: 'A good one is quiet: ours is faulty', next: 'source-fault' },
      { id: 'filter', label: 'It is healthy; its own connector could be treated', next: 'kind-source' },
      { id: 'no', label: 'No: only the victim can be treated', next: 'mode' },
      { id: 'dont-know', label: "Don't know", next: 'mode' },
    ],
  },
]
