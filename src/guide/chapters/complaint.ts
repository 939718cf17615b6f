/** What is wrong, what changed, and when it comes. */
import type { Question } from '../types.ts'

/** The first questions after the gate. */
export const COMPLAINT_CHAPTER: readonly Question[] = [
  {
    is: 'question',
    id: 'wrong',
    chapter: 'What is wrong',
    text: 'What exactly goes wrong?',
    why: 'Something that broke was hit by a surge; something that recovers was disturbed by noise. The cures are different parts.',
    findOut:
      'Read the fault log and ask the crew for their words. Swap in a known good unit: if the fault goes with the old unit, something in it broke.',
    options: [
      { id: 'noise', label: 'Noise in a headset or on a receiver', next: 'changed' },
      { id: 'reading', label: 'A wrong reading, a wandering needle or a flag', next: 'changed' },
      { id: 'data', label: 'Data errors, lost messages or a bus fault', next: 'changed' },
      { id: 'reset', label: 'A reset, a false trip or a latched discrete', next: 'changed' },
      { id: 'broken', label: 'Something broke and stayed broken', next: 'damage' },
      {
        id: 'plan',
        label: 'No complaint: a new box, or a failed test',
        hint: 'design question, emission or susceptibility test',
        next: 'plan-direction',
      },
      { id: 'dont-know', label: "Don't know", next: 'changed' },
    ],
  },
  {
    is: 'question',
    id: 'damage',
    chapter: 'Damage',
    text: 'What happened just before it broke?',
    why: 'Lightning, a hand and a coil differ a thousandfold in energy, so they ask for different suppressors.',
    findOut:
      'Ask for the flight and maintenance history of the last days. Look at which contact failed: near the antenna or wing, at a test connector, or beside a relay output.',
    options: [
      { id: 'storm', label: 'A lightning strike, or a storm close by', next: 'suppressor-strike' },
      {
        id: 'touch',
        label: 'Somebody touched or mated the connector',
        hint: 'dry air, carpet, plastic covers',
        next: 'suppressor-static',
      },
      {
        id: 'switching',
        label: 'A relay, motor, bus or ground supply switched',
        next: 'suppressor-switching',
      },
      { id: 'wear', label: 'Water, heat, rough handling or old age', next: 'box-damage' },
      { id: 'dont-know', label: "Don't know", next: 'measure-damage' },
    ],
  },
  {
    is: 'question',
    id: 'changed',
    chapter: 'What changed',
    text: 'What was fitted or touched before it started?',
    why: 'The last change is the usual cause, and undoing it is the cheapest test there is.',
    findOut:
      'Read the work orders since the last flight without the fault. Compare with a sister ship. Ask about washing, paint, panels and doors.',
    options: [
      { id: 'new-unit', label: 'A new box, radio, lamp, charger or wiring', next: 'when' },
      { id: 'own-filter', label: 'A filter, suppressor or adapter was added', next: 'own-filter' },
      {
        id: 'disturbed',
        label: 'A connector, bond, shield or panel was disturbed',
        hint: 'also washing, paint, corrosion treatment',
        next: 'bond',
      },
      { id: 'nothing', label: 'Nothing', next: 'when' },
      { id: 'dont-know', label: "Don't know", next: 'when' },
    ],
  },
  {
    is: 'question',
    id: 'when',
    chapter: 'When it comes',
    text: 'When does it come?',
    why: 'What you can switch on and off three times can be found. Weather and places point outside the aircraft.',
    findOut:
      'Try it on the ground: on, off, on. If it will not come, ask for time, position, height, weather and configuration on every occurrence for a week.',
    options: [
      {
        id: 'on-demand',
        label: 'On the ground, on demand, three times out of three',
        next: [
          { when: { answered: { node: 'changed', options: ['new-unit'] } }, go: 'source-kind' },
          { go: 'battery' },
        ],
      },
      { id: 'transmit', label: 'Only while we transmit', next: 'ptt' },
      { id: 'switching', label: 'At the moment something is switched', next: 'switching' },
      { id: 'device', label: 'With a phone or carry-on device in use', next: 'portable-device' },
      { id: 'weather', label: 'In rain, snow, ice, dust or cloud', next: 'weather-static' },
      { id: 'place', label: 'At one place, or near a transmitter', next: 'location' },
      { id: 'flight', label: 'Only in flight: height, cold or shaking', next: 'measure-flight' },
      { id: 'dont-know', label: "No pattern, or don't know", next: 'battery' },
    ],
  },
  {
    is: 'question',
    id: 'ptt',
    chapter: 'When it comes',
    text: 'Transmit into a dummy load at the set: what happens?',
    why: 'The dummy load takes the antenna away and leaves the set and its cables.',
    findOut:
      'Fit a 50 Ω dummy load rated for the power in place of the antenna coax. Key briefly, at low power if the set has it. Check people, fuel and the rules for HF and radar first.',
    options: [
      { id: 'gone-receiver', label: 'Gone; the victim is a receiver with an antenna', next: 'own-tx-antenna' },
      {
        id: 'gone-cable',
        label: 'Gone; the victim is a reading, audio or a bus',
        sets: [
          {
            fact: 'noiseMode',
            text: 'common',
            why: 'a radiated field drives all wires of a cable alike; not probed',
            assumed: true,
          },
        ],
        next: 'kind',
      },
      { id: 'still', label: 'Still there with the dummy load', next: 'own-tx-leak' },
      { id: 'dont-know', label: "Don't know, or no dummy load", next: 'mode' },
    ],
    cautions: ['transmitter-hazard'],
  },
  {
    is: 'question',
    id: 'switching',
    chapter: 'When it comes',
    text: 'What is being switched at that moment?',
    why: 'A coil throws hundreds of volts for microseconds; a bus transfer lifts the whole supply for milliseconds.',
    findOut:
      'Switch one thing at a time and watch the victim. A scope across the coil shows the kick; a scope on the bus shows the transfer.',
    options: [
      { id: 'coil', label: 'A relay, solenoid, valve or contactor', next: 'coil-first' },
      { id: 'bus', label: 'A bus, generator or ground supply', next: 'suppressor-switching' },
      { id: 'motor', label: 'A motor or pump', next: 'source-fix' },
      { id: 'hand', label: 'Nothing: it comes when somebody touches it', next: 'suppressor-static' },
      { id: 'dont-know', label: "Don't know", next: 'cable' },
    ],
  },
]
