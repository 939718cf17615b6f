/** The line itself: direction, kind, frequency, need, impedance, and whether the box can be changed. */
import type { Next, Question, SetFact } from '../types.ts'

const IS_PLAN = { answered: { node: 'wrong', options: ['plan'] } }
const TREATS_SOURCE = { answered: { node: 'source-fix', options: ['filter'] } }
const AFTER_FREQUENCY: Next = [{ when: IS_PLAN, go: 'need' }, { go: 'box' }]
const AFTER_KIND: Next = [
  { when: { kindFamily: ['ground'] }, go: 'bond-first' },
  { when: { kindFamily: ['drive'] }, go: 'coil-first' },
  { go: 'frequency' },
]

const band = (ends: string): readonly SetFact[] => [
  {
    fact: 'noiseHz',
    text: ends,
    why: 'only the band is known, so both its ends are taken; enter the measured frequency when you have it',
    assumed: true,
  },
]

/** The result for one answer to `box`: by the side the noise comes from, then by the answer. */
const placed = (place: 'box' | 'inline' | 'either'): Next => [
  { when: TREATS_SOURCE, go: `filter-source-${place}` },
  { when: { answered: { node: 'plan-direction', options: ['emission'] } }, go: `filter-source-${place}` },
  { when: { answered: { node: 'plan-direction', options: ['dont-know'] } }, go: 'filter-open-way' },
  { when: { answered: { node: 'ptt', options: ['gone-cable'] } }, go: 'filter-own-tx' },
  { go: `filter-victim-${place}` },
]

/** The questions about the line and the place of the part. */
export const LINE_CHAPTER: readonly Question[] = [
  {
    is: 'question',
    id: 'plan-direction',
    chapter: 'Which way',
    text: 'Does the box make the noise, or must it stand it?',
    why: 'The noise side is the source of every figure: swap it and the inductor changes ends.',
    findOut:
      'An emission test or a disturbed neighbour: the box makes it. A susceptibility, radio-field or injection test: it comes in by the cable. With a current probe, move along the cable: it reads most towards the source.',
    options: [
      { id: 'emission', label: 'It makes noise: emission, or a disturbed neighbour', next: 'mode' },
      { id: 'stand', label: 'It must stand noise that comes in by its cable', next: 'mode' },
      { id: 'surge', label: 'It must stand lightning, static or switching', next: 'suppressor-plan' },
      { id: 'dont-know', label: "Both, or don't know", next: 'mode' },
    ],
  },
  {
    is: 'question',
    id: 'kind',
    chapter: 'Which line',
    text: 'What kind of line is it?',
    why: 'The kind says how much capacitance the signal can still stand, and whether the line may be touched at all.',
    findOut: 'Read the wiring diagram: signal name, wire pair or single, and what drives it.',
    options: [
      { id: 'dont-know', label: "Don't know", hint: 'no ceiling will be known until you do', next: 'frequency' },
    ],
    picker: { fact: 'lineKind', next: AFTER_KIND, barredNext: 'stop-kind' },
  },
  {
    is: 'question',
    id: 'kind-source',
    chapter: 'Which line',
    text: 'Which line of the source carries the noise out?',
    why: 'The part goes on that line, at the source, and its own signal must still work.',
    findOut:
      'Current probe on each cable of the source, one at a time. Without a probe: a clamp ferrite on each, and listen.',
    options: [
      { id: 'dont-know', label: "Don't know", hint: 'no ceiling will be known until you do', next: 'frequency' },
    ],
    picker: { fact: 'lineKind', next: AFTER_KIND, barredNext: 'stop-kind' },
  },
  {
    is: 'question',
    id: 'frequency',
    chapter: 'Frequency and level',
    text: 'What do you know about its frequency and level?',
    why: 'A capacitor fit for a connector acts on radio frequencies; audio-rate noise needs a thousand times more.',
    findOut:
      'The radio or band that suffers tells the band. A spectrum analyser or the receiver itself, tuned, tells the frequency. Enter the exact figure on the check when you have it.',
    options: [
      { id: 'audio', label: 'Audio: below 20 kHz on the line itself', next: 'low-frequency' },
      {
        id: 'own-band',
        label: 'Inside the band the signal itself uses',
        next: [
          { when: { answered: { node: 'mode', options: ['differential', 'single'] } }, go: 'in-band' },
          { when: { answered: { node: 'cable', options: ['one-wire'] } }, go: 'in-band' },
          ...AFTER_FREQUENCY,
        ],
      },
      {
        id: 'lf',
        label: '20 kHz to 2 MHz',
        hint: 'converters, ADF',
        sets: band('20 kHz; 2 MHz'),
        next: AFTER_FREQUENCY,
      },
      {
        id: 'hf',
        label: '2 to 30 MHz',
        hint: 'HF, clocks, converters',
        sets: band('2 MHz; 30 MHz'),
        next: AFTER_FREQUENCY,
      },
      {
        id: 'vhf',
        label: '30 to 400 MHz',
        hint: 'VHF COM, NAV, marker, glideslope',
        sets: band('30 MHz; 400 MHz'),
        next: AFTER_FREQUENCY,
      },
      {
        id: 'uhf',
        label: '400 MHz to 2 GHz',
        hint: 'ELT, DME, transponder, GNSS',
        sets: band('400 MHz; 2 GHz'),
        next: AFTER_FREQUENCY,
      },
      { id: 'probe', label: 'I only have a current-probe reading', hint: 'dBµA', next: 'measure-probe' },
      { id: 'headset', label: 'I have no instrument, only a headset', next: 'measure-headset' },
      { id: 'dont-know', label: "Don't know", next: AFTER_FREQUENCY },
    ],
  },
  {
    is: 'question',
    id: 'need',
    chapter: 'How much',
    text: 'How many decibels are needed?',
    why: 'Without a need there is no least capacitance, only a most.',
    findOut:
      'Measured level minus limit plus margin, all in the same unit and bandwidth. For an upset: injected level minus the level that upsets.',
    options: [
      { id: 'measured', label: 'I have a level and a limit', hint: 'entered on the check', next: 'impedance' },
      {
        id: 'twenty',
        label: 'A target of 20 dB',
        hint: 'ten times less',
        sets: [{ fact: 'neededDb', text: '20', why: 'a target you chose, not a measurement' }],
        next: 'impedance',
      },
      {
        id: 'forty',
        label: 'A target of 40 dB',
        hint: 'a hundred times less',
        sets: [{ fact: 'neededDb', text: '40', why: 'a target you chose, not a measurement' }],
        next: 'impedance',
      },
      { id: 'dont-know', label: "Don't know", next: 'impedance' },
    ],
  },
  {
    is: 'question',
    id: 'impedance',
    chapter: 'Source and load',
    text: 'What impedance has the noise behind it?',
    why: 'The same part gives 20 dB or nothing, depending on what stands before and behind it.',
    findOut:
      'It is rarely known. Data sheet of the driver or converter, or a network of known impedance in the test. Otherwise take the spread: the worst of 1, 10, 50 and 150 Ω then decides. A trial with two capacitors can solve for it later.',
    options: [
      {
        id: 'low',
        label: 'Low: 1 to 10 Ω',
        hint: 'power bus, driver output, converter',
        sets: [{ fact: 'noiseSourceOhm', text: '1; 10' }],
        next: 'box',
      },
      {
        id: 'fifty',
        label: '50 Ω, by a network or a generator',
        sets: [{ fact: 'noiseSourceOhm', text: '50' }],
        next: 'box',
      },
      {
        id: 'cable',
        label: '50 to 150 Ω: a cable that works as an antenna',
        sets: [{ fact: 'noiseSourceOhm', text: '50; 150' }],
        next: 'box',
      },
      {
        id: 'dont-know',
        label: "Don't know",
        hint: '1, 10, 50 and 150 Ω assumed and marked',
        sets: [
          {
            fact: 'noiseSourceOhm',
            text: '1; 10; 50; 150',
            why: 'not known; the worst value of the spread decides',
            assumed: true,
          },
        ],
        next: 'box',
      },
    ],
  },
  {
    is: 'question',
    id: 'box',
    chapter: 'Where it can go',
    text: 'Can the box or its receptacle be changed?',
    why: 'A filter in the receptacle is best; a box that is qualified or not ours leaves only the cable side.',
    findOut: 'Ask who holds the approved data of the box, and whether a modification is open anyway.',
    cautions: ['permanent-approved'],
    options: [
      {
        id: 'yes',
        label: 'Yes: new, or being modified',
        next: placed('box'),
      },
      {
        id: 'no',
        label: 'No: already qualified, or not ours',
        next: placed('inline'),
      },
      {
        id: 'dont-know',
        label: "Don't know",
        next: placed('either'),
      },
    ],
  },
]
