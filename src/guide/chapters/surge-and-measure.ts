/** Outcomes for damage and surges, each with its pulse laid into the surge check, and outcomes that say what to measure next. */
import { BENCH_ENDS } from '../../reference/field-figures.ts'
import { LEAD_CASE } from '../../reference/surge-cases.ts'
import { onOhms } from '../figures.ts'
import { decibels, henries, ohms, volts } from '../print.ts'
import type { Outcome } from '../types.ts'
import { CHECK_SOURCES, FILTER_CAUTIONS, LINE_CHECKS, LINE_RULES } from './filters.ts'

const PRACTICE = { id: 'practice', standing: 'practice' } as const

/** The surge check with the pulse of that branch, and the window, whose room the suppressor takes. */
const surgeChecks = (prefill: Readonly<Record<string, string>>): Outcome['checks'] => [
  {
    check: 'surge',
    prefill,
    why: 'whether circuit, suppressor, capacitor and signal live; enter level, line voltage and what the input stands',
  },
  { check: 'window', prefill: {}, why: 'the suppressor’s capacitance comes off the room of this signal' },
]

const surge = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'steps' | 'nextMeasurement'> & Partial<Outcome>,
): Outcome => ({
  is: 'outcome',
  class: 'suppressor',
  noiseFrom: 'cable',
  sources: [PRACTICE, { id: 'do-160', standing: 'memory' }],
  rules: ['surge-facts', 'suppressor', 'sharing', 'filter-side', 'trial'],
  checks: surgeChecks({}),
  cautions: FILTER_CAUTIONS,
  ...part,
})

const measure = (
  part: Pick<Outcome, 'id' | 'headline' | 'reason' | 'steps' | 'nextMeasurement'> & Partial<Outcome>,
): Outcome => ({
  is: 'outcome',
  class: 'measure',
  sources: [PRACTICE],
  rules: [],
  checks: [],
  cautions: [],
  ...part,
})

/** Outcomes of class `suppressor` and `measure`. */
export const SURGE_AND_MEASURE_OUTCOMES: readonly Outcome[] = [
  surge({
    id: 'suppressor-strike',
    checks: surgeChecks({ waveform: 'wf4' }),
    cautions: ['after-strike', ...FILTER_CAUTIONS],
    headline: 'After a strike: suspect every suppressor, then design for the pulse',
    reason:
      'Lightning current couples pulses of hundreds of volts and many amperes into long cables. A capacitor alone is charged to nearly the full voltage; a suppressor must carry the current.',
    steps: [
      'Do the strike inspection of the manual first.',
      'Test or replace every suppressor on the affected lines: a shorted one shows, an open one does not.',
      'Isolate filtered or suppressed contacts before insulation or high-pot tests, unless the procedure says otherwise.',
      'Collect the facts listed here and enter them in the surge check: it orders what comes against what holds.',
    ],
    nextMeasurement: 'Leakage and breakdown of the suppressors, by approved limits, and which contacts failed.',
  }),
  surge({
    id: 'suppressor-static',
    checks: surgeChecks({ waveform: 'iec-esd' }),
    headline: 'Static at the connector: a suppressor at the contact, shortest lead',
    reason: `A hand carries thousands of volts for nanoseconds. The lead of the suppressor decides: ${henries(LEAD_CASE.leadH)} more lead lifted a ${volts(LEAD_CASE.withoutV, 2)} clamp to ${volts(LEAD_CASE.withV)} in one computed case.`,
    sources: [{ id: 'derived', standing: 'derived' }, PRACTICE],
    steps: [
      'Covers, wrist strap and bonding before mating: cheapest first.',
      'Check which contacts are open to touch when unmated; those need it.',
      'Collect the facts listed here and enter them in the surge check: it orders what comes against what holds.',
    ],
    nextMeasurement: 'Which contacts failed, and whether the shell mates before the contacts.',
  }),
  surge({
    id: 'suppressor-switching',
    checks: surgeChecks({ waveform: 'custom' }),
    headline: 'Switching surges: at the coil or the bus first, then a suppressor',
    reason:
      'Coil kicks are cured at the coil; bus transfers last milliseconds and carry more energy than a contact suppressor takes. What is left is for the suppressor.',
    steps: [
      'Scope on the line at the moment of switching: peak, duration, how often.',
      'Quench coils at the coil. Let long bus surges pass: stand-off above them, or a limiter in series.',
      'Collect the facts listed here and enter them in the surge check: it orders what comes against what holds.',
    ],
    nextMeasurement: 'Peak and time to half value on the line, at the connector of the box that suffers.',
  }),
  surge({
    id: 'suppressor-plan',
    headline: 'A suppressor for a new box: collect the pulse and the limits',
    reason:
      'A suppressor stands off the line, carries the pulse and clamps below what the input stands. Each of the three is a figure somebody must state.',
    steps: [
      'Take waveform, level and category from the test plan of the programme.',
      'Collect the facts listed here for each contact and enter them in the surge check.',
      'Then come back for the noise question of the same contact: its capacitance is part of the window.',
    ],
    nextMeasurement: 'What the input withstands, from the maker of the box.',
  }),
  measure({
    id: 'own-filter',
    cautions: ['power-off', 'trial-not-for-flight', 'matched-legs'],
    headline: 'Your own filter may be the fault: take it off and compare',
    reason:
      'Added capacitance slows edges, uses a bus budget, rings with the harness or turns common noise differential when its legs differ.',
    sources: [{ id: 'derived', standing: 'derived' }, PRACTICE],
    steps: [
      'Off, on, off with the added part, three times. If the fault goes with it, remove it and record it.',
      'Open the loading check with its value: both legs, both ends of the line, suppressors included.',
      'On a pair, open the pair check with the capacitor tolerance.',
    ],
    checks: [
      { check: 'loading', prefill: {}, why: 'what the added capacitance does to this signal' },
      { check: 'pair', prefill: {}, why: 'how much common noise unequal legs turn differential' },
      { check: 'filter', prefill: {}, why: 'whether it rings: gain shows as negative attenuation' },
    ],
    nextMeasurement: 'Edge time and ringing on a scope, with the part and without.',
  }),
  measure({
    id: 'measure-flight',
    cautions: ['breakers'],
    headline: 'Make it a pattern first: log it in flight',
    reason:
      'In flight only means weather, place, height, cold or shaking. Which one decides between static, outside transmitters, loose contacts and lost pressure.',
    steps: [
      'For every event: time, position, height, temperature, weather, heading, configuration, what was switched.',
      'On the ground: tap and flex each connector and cable of the system while it is watched.',
      'Come back with the pattern and answer again. Never pull a breaker in flight to find noise.',
    ],
    nextMeasurement: 'Ten events in a table. Two columns that agree are the answer.',
  }),
  measure({
    id: 'measure-damage',
    headline: 'Find out what broke before choosing a part',
    reason: 'Which part failed, and how, tells lightning, static and coils apart.',
    steps: [
      'Ask the shop for the failed part and how it failed: burnt, punctured, shorted or open.',
      'List the contacts that failed and the cables they belong to.',
      'Test suppressors on the same connector: an open one cannot be seen in use.',
      'Come back and answer again.',
    ],
    nextMeasurement: 'Failure report of the shop, contact by contact.',
  }),
  measure({
    id: 'measure-birdie',
    cautions: ['breakers'],
    headline: 'A tone on some channels: find the clock',
    reason:
      'A birdie that moves with tuning is a clock or converter harmonic. With all else off it is in the receiver or in its own supply; otherwise one unit makes it.',
    steps: [
      'Write down the channels: equal steps are the clock or the switching frequency.',
      'Power units one at a time with that channel open.',
      'Found: come back and answer "one breaker".',
    ],
    nextMeasurement: 'Spacing of the affected channels in kilohertz.',
  }),
  measure({
    id: 'measure-probe',
    headline: 'A current-probe reading: state an impedance, then it is a voltage',
    noiseFrom: 'cable',
    reason: `dBµV = dBµA + 20·log10(Z). The impedance is yours to state: ${ohms(BENCH_ENDS.fixtureOhm)} adds ${decibels(onOhms(BENCH_ENDS.fixtureOhm))}, ${ohms(100)} adds ${decibels(onOhms(100))}, ${ohms(1)} adds nothing. A limit in dBµA needs no conversion: compare like with like.`,
    sources: [{ id: 'derived', standing: 'derived' }, ...CHECK_SOURCES],
    rules: ['probe', 'place-either', ...LINE_RULES],
    steps: [
      'Probe reading in dBµV minus the probe’s transfer impedance in dBΩ gives dBµA.',
      'Limit in dBµA: open the need check with both as they are.',
      'Limit in volts: add 20·log10 of the impedance you state, and write that impedance down.',
      'Then open the window check. Probe over both legs and over one, to know the mode.',
    ],
    checks: LINE_CHECKS,
    cautions: FILTER_CAUTIONS,
    nextMeasurement: 'The same reading at both ends of the cable; it is larger towards the source.',
  }),
  measure({
    id: 'measure-headset',
    headline: 'Only a headset: compare by ear, invent no decibels',
    noiseFrom: 'cable',
    reason:
      'An ear compares well and measures badly. On/off/on with one change at a time gives an order, not a number, and an order is enough for the next step.',
    sources: [...CHECK_SOURCES],
    rules: ['headset', 'place-either', ...LINE_RULES],
    steps: [
      'Fix volume, squelch and channel. Note a listening level: 0 gone, 1 just there, 2 disturbs, 3 covers speech.',
      'Bare, clamp ferrite or adapter on, bare again; three times. Only equal repeats count.',
      'A second listener who does not know which is which.',
      'The window check still gives the most the signal stands; no trial value above it.',
    ],
    checks: LINE_CHECKS,
    cautions: FILTER_CAUTIONS,
    nextMeasurement: 'A level: a borrowed receiver with a meter, or the sound card of a phone on the headset line.',
  }),
]
