/** Outcomes where a part at the connector is the cure, or the next thing to compute. */
import { BENCH_ENDS, MOVED, PIN_CAPACITOR, USUAL_MARGIN } from '../../reference/field-figures.ts'
import { HF, hfLoss } from '../figures.ts'
import { farads, hertz, metres, ohms } from '../print.ts'
import type { Outcome, OutcomeCheck } from '../types.ts'

/** Safety texts that go with every filter and trial. */
export const FILTER_CAUTIONS: readonly string[] = [
  'screening',
  'ok-bounds',
  'no-trial',
  'power-off',
  'stored-charge',
  'trial-authority',
  'trial-not-for-flight',
  'permanent-approved',
  'lightning-hirf-fuel',
  'chassis-capacitance',
  'hipot',
]

type Place = 'box' | 'inline' | 'either'

/** The checks every filter outcome opens, with the facts of the line already in them. */
export const LINE_CHECKS: readonly OutcomeCheck[] = [
  { check: 'window', prefill: {}, why: 'the capacitance that is enough, and the most the signal can stand' },
  {
    check: 'need',
    prefill: { marginDb: String(USUAL_MARGIN.db) },
    why: 'from a level and a limit to the decibels needed',
  },
  { check: 'loop', prefill: {}, why: 'source and load from a clamp, a current probe or trial capacitors' },
  { check: 'loading', prefill: {}, why: 'what a chosen value does to edge, eye, band and bus budget' },
  {
    check: 'filter',
    prefill: {},
    why: `attenuation in your circuit beside the ${ohms(BENCH_ENDS.fixtureOhm)} bench figure`,
  },
]

/** Who says the figures in those checks. */
export const CHECK_SOURCES = [BENCH_ENDS.fixtureBasis, USUAL_MARGIN.basis] as const

/** The rules every filter outcome evaluates with the facts of the line. */
export const LINE_RULES = [
  'in-band',
  'clamp-read',
  'line-class',
  'topology',
  'impedance',
  'need',
  'pair',
  'power-line',
  'fits-contact',
  'bond',
  'suppressor',
  'sharing',
  'filter-side',
  'trial',
] as const

const WHERE: Readonly<Record<Place, { rule: string; headline: string; step: string }>> = {
  box: {
    rule: 'place-box',
    headline: 'in the receptacle of the box',
    step: 'Plan the part into the receptacle of the box: filtered contacts against the shell, shell against structure.',
  },
  inline: {
    rule: 'place-inline',
    headline: 'as an in-line adapter on the cable side',
    step: 'The box stays closed: plan an in-line adapter on the cable side of its connector, shell bonded to structure.',
  },
  either: {
    rule: 'place-either',
    headline: 'at the connector, place open',
    step: 'Find out whether the box may be changed; receptacle first, in-line adapter second.',
  },
}

const PROOF =
  'Prove it by on/off/on: bare line, part in, bare line again. Three repeats must agree, and the signal must still be good.'

const SOURCES: Outcome['sources'] = [
  { id: 'S1', standing: 'read' },
  { id: 'S2', standing: 'read' },
  { id: 'derived', standing: 'derived' },
  ...CHECK_SOURCES,
]

const filter = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'rules' | 'steps' | 'nextMeasurement'> & Partial<Outcome>,
): Outcome => ({
  is: 'outcome',
  class: 'filter',
  sources: SOURCES,
  checks: LINE_CHECKS,
  cautions: FILTER_CAUTIONS,
  ...part,
})

const victim = (place: Place): Outcome =>
  filter({
    id: `filter-victim-${place}`,
    headline: `A filter at the box that suffers, ${WHERE[place].headline}`,
    noiseFrom: 'cable',
    reason: 'A capacitor to the shell, with an inductor if needed, turns radio noise back at the wall of the box.',
    rules: [WHERE[place].rule, ...LINE_RULES],
    steps: [
      'Open the window check and enter what is still missing; the signal decides the most, the noise the least.',
      WHERE[place].step,
      PROOF,
      'Write the sheet: value, worst case, place, proof. The certifying staff decide.',
    ],
    nextMeasurement:
      'Level of the noise on this line with the signal running, at the frequency that hurts, over both legs and over one.',
  })

const source = (place: Place): Outcome =>
  filter({
    id: `filter-source-${place}`,
    headline: `A filter at the source, ${WHERE[place].headline}`,
    noiseFrom: 'box',
    reason: 'Stopped at the connector of the box that makes it, it helps every other box at once.',
    rules: [WHERE[place].rule, ...LINE_RULES],
    steps: [
      'Open the window check and enter what is still missing; the source impedance is inside the box.',
      WHERE[place].step,
      'Mind the supply of the box. Enough capacitance for its own converter, not so much that inrush trips its breaker.',
      PROOF,
    ],
    nextMeasurement: 'Level on each line of this connector, one at a time, in the unit and bandwidth of the limit.',
  })

/** Outcomes of class `filter`. */
export const FILTER_OUTCOMES: readonly Outcome[] = [
  victim('box'),
  victim('inline'),
  victim('either'),
  source('box'),
  source('inline'),
  source('either'),
  filter({
    id: 'filter-open-way',
    headline: 'A filter at the connector, direction still open',
    reason: 'The capacitance window can be found without the way the noise goes; which end the inductor faces cannot.',
    rules: ['place-either', ...LINE_RULES],
    steps: [
      'Open the window check for both cases: source inside the box, then source on the cable. Take the worse.',
      'Probe along the cable. The reading rises towards the source. Then come back and answer the direction.',
      PROOF,
    ],
    nextMeasurement: 'Current probe at both ends of the cable: the end that reads more is nearer to the source.',
  }),
  filter({
    id: 'filter-own-tx',
    cautions: ['key-down', 'transmitter-hazard', ...FILTER_CAUTIONS],
    headline: 'Our own transmitter gets in by this cable',
    noiseFrom: 'cable',
    reason:
      'The radiated field drives the cable of the box that suffers. Distance and shield come first; then a part at its connector, sized at the transmit frequency.',
    sources: [
      { id: 'C15', standing: 'read' },
      { id: 'C29', standing: 'read' },
      { id: 'derived', standing: 'derived' },
      ...CHECK_SOURCES,
    ],
    rules: ['place-either', ...LINE_RULES],
    steps: [
      `Move its leads away from antenna and coax, twist and shield them; over ${metres(MOVED.fromNeighbourM)} apart is a start.`,
      'Clean and re-seat the coax contacts and the antenna base bond, then repeat.',
      `Open the window check at the transmit frequency. At VHF ${farads(PIN_CAPACITOR.leastF)} to ${farads(PIN_CAPACITOR.mostF)} at the very pin is usual. HF needs far more. ${farads(HF.capacitanceF)} gives ${hfLoss()} at ${hertz(HF.hz)} from ${ohms(HF.sourceOhm)} into a high input.`,
      PROOF,
    ],
    nextMeasurement: 'Repeat at three channels and at low power: note what happens at each.',
  }),
]
