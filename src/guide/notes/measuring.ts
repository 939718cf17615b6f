/** Field notes about finding, hearing and measuring noise. */
import { pairFromSumAndParallel } from '../../calc/network/clamp.ts'
import { ALTERNATOR_PULSES, electricalHz, rectifierHz } from '../../calc/tone/explanations.ts'
import {
  AC_BUS,
  BENCH_ENDS,
  CUSTOMARY_COMMON,
  PHONE_BURSTS,
  SUPPLY_NETWORK,
  TRIAL_LEAD,
  USUAL_SOURCES,
} from '../../reference/field-figures.ts'
import { DERIVED, PRACTICE } from '../../reference/line-kinds/cite.ts'
import { NOISE_SIGNATURES } from '../../reference/noise-signatures.ts'
import { RADIO_BANDS } from '../../reference/radio-bands.ts'
import { HUM, humNeeds, reactanceOhm, rectified } from '../figures.ts'
import { bare, decibels, henries, hertz, metres, ohms, withUnit } from '../print.ts'
import type { FieldNote } from '../types.ts'

/** Volts or amperes as a ratio, in decibels. */
const inDb = (ratio: number): number => 20 * Math.log10(ratio)

/** A machine with twelve poles. */
const MACHINE = { poles: 12, rpm: 6000 } as const
const machineHz = (): number => electricalHz({ rpm: MACHINE.rpm, driveRatio: 1, polePairs: MACHINE.poles / 2 })

/** Two sources between which the same capacitor does its least and its most. */
const APART_OHM = { low: 1, high: 50 } as const

/** The supply network of an airborne test where its own limits start: what taking the bench for it is worth. */
function networkExample(): string {
  const hz = 150e3
  const ohm = reactanceOhm(SUPPLY_NETWORK.airborneH, hz)
  // the instrument's own resistance stands beside the network, and as much again behind it
  const besideOhm = BENCH_ENDS.fixtureOhm / 2
  const together = (ohm * besideOhm) / Math.hypot(ohm, besideOhm)
  return `A supply network of ${henries(SUPPLY_NETWORK.airborneH)} is ${ohms(ohm, 2)} at ${hertz(hz)}. Taking ${ohms(BENCH_ENDS.fixtureOhm)} there flatters a capacitor by ${decibels(inDb(besideOhm / together))}.`
}

/** Two ends from what a clamp and a capacitor read. */
function sumAndParallel(): string {
  const read = { sumOhm: 200, parallelOhm: 37.5 }
  const [higher, lower] = pairFromSumAndParallel(read) ?? [Number.NaN, Number.NaN]
  return `${bare(ohms(read.sumOhm))} and ${ohms(read.parallelOhm)} give ${bare(ohms(higher))} and ${ohms(lower)}`
}

/** Notes on tests and measurements. */
export const MEASURING_NOTES: readonly FieldNote[] = [
  {
    id: 'on-off-on',
    title: 'On, off, on: the only proof there is',
    paragraphs: [
      'Bare line, change, bare line again, everything else untouched. Three times, and all three must agree.',
      'If the second bare run differs from the first, the trial is void: an intermittent contact, heat or time changed, not your part.',
      'Write down place, time, settings, channel, volume and who listened.',
    ],
    sources: [PRACTICE],
    related: [{ note: 'in-line-trial' }, { note: 'headset-only' }],
  },
  {
    id: 'in-line-trial',
    title: 'Reading an in-line trial: four numbers',
    paragraphs: [
      'Keep four numbers. N is the largest capacitance that did not clear it, K the smallest that did. G is the largest that left the signal good, B the smallest that harmed it.',
      'The need lies above N and at most at K. The ceiling lies from G up to B.',
      'Supported by your trial is only a part whose least value, worst case, is K or more and whose most is G or less. Between the numbers lies a guess: try one step more.',
      `Steps of ten, leads under ${metres(TRIAL_LEAD.mostM)}, bare line first and last. Infer nothing above half the trial part’s own resonance. Stay below the ceiling of the window check.`,
    ],
    table: {
      head: ['What was seen', 'What it says', 'Next'],
      rows: [
        ['Cleared at one step, not below', 'the need is between the two', 'least worst-case value at that step'],
        ['Cleared at the smallest', 'radio pick-up of high impedance', 'try smaller'],
        ['Better, not cleared', 'right line, or one of several', 'next step, or a series element'],
        ['Better, then level', 'lead or resonance, or a second path', 'shorter leads, feed-through part'],
        ['No change', 'not this line or mode, or a low impedance', 'series element, another line'],
        ['Change only across the pair', 'differential', 'line-to-line capacitor'],
        ['Worse', 'chassis is the noisy side, resonance, or unequal legs', 'bond, matched legs, damping'],
        ['Cleared and signal harmed', 'no capacitor alone will do', 'choke, inductor, shield'],
        ['Another answer on repeat', 'nothing', 'find what moved'],
      ],
    },
    sources: [PRACTICE, DERIVED],
    related: [{ check: 'window' }, { note: 'on-off-on' }, { note: 'may-i-fly' }],
  },
  {
    id: 'common-or-differential',
    title: 'Common or differential, and which way',
    paragraphs: [
      'Common: the noise goes out on both wires and back through structure. Differential: out on one wire, back on the other.',
      `Current probe over both wires, then over one. Pure common reads ${decibels(inDb(2), 1)} more over both than over one. Pure differential cancels over both.`,
      'No probe: clamp a ferrite over both, then over one, and listen.',
      'Direction: move the probe along the cable. It reads more towards the source; the wiring between adds reflections, so compare the two ends.',
      `By custom noise is mostly differential up to about ${hertz(CUSTOMARY_COMMON.fromHz)} and common above. That is a start, not a finding.`,
    ],
    sources: [DERIVED, CUSTOMARY_COMMON.basis, PRACTICE],
    related: [{ check: 'pair' }, { note: 'pair-balance' }],
  },
  {
    id: 'current-probe',
    title: 'I only have a current-probe reading',
    paragraphs: [
      'Receiver reading in dBµV minus the probe’s transfer impedance in dBΩ is dBµA.',
      'dBµV on the line = dBµA + 20·log10(Z). Z is the impedance the current flows in, and you must state it: it is not in the reading.',
      'If the limit is in dBµA, convert nothing: measured minus limit is already decibels.',
      networkExample(),
    ],
    table: {
      head: ['Z stated', 'added to dBµA'],
      rows: [1, 4.7, 10, 25, 50, 100, 150].map((ohm) => [ohms(ohm), decibels(inDb(ohm))]),
    },
    sources: [SUPPLY_NETWORK.airborneBasis, BENCH_ENDS.fixtureBasis, DERIVED],
    related: [{ check: 'loop' }, { check: 'need' }, { note: 'source-impedance' }],
  },
  {
    id: 'headset-only',
    title: 'I have no instrument, only a headset',
    paragraphs: [
      'An ear orders well and measures badly: use it for better, same, worse.',
      'Fix volume, squelch, channel and place. Note 0 gone, 1 just there, 2 disturbs, 3 covers speech. Do it on, off, on, three times, with a second listener who does not know which is which.',
      'Invent no decibels from it. The window check still gives the ceiling of the signal, and no trial value goes above it.',
      `A phone can show the spectrum of what you hear: whine, its multiples, ${hertz(AC_BUS.hz)} hum, the buzz of a device. ${hertz(PHONE_BURSTS.hz, 3)} is one sort of phone only.`,
    ],
    sources: [AC_BUS.basis, PHONE_BURSTS.basis, PRACTICE],
    related: [{ check: 'window' }, { note: 'noise-signatures' }],
  },
  {
    id: 'source-impedance',
    title: 'What is the source impedance?',
    paragraphs: [
      `Hardly anybody knows. It decides everything: between ${ohms(APART_OHM.low)} and ${ohms(APART_OHM.high)} the same capacitor differs by up to ${decibels(inDb(APART_OHM.high / APART_OHM.low), 2)}.`,
      `Not known: enter ${USUAL_SOURCES.ohms.join(';')}. The least capacitance becomes a band, and the worst end decides.`,
      'Known: a test network, a generator, a driver’s data sheet at the noise frequency. The signal’s own resistance is not it.',
      'A trial with one capacitor or two gives Rs ∥ Rl, not Rs. One capacitor: R = √(10^(A/10) − 1)/(2π·f·C) for a drop of A dB. It is real only where nothing resonates.',
      'Two capacitors give the reactive part too. With b = 2π·f·C and a = 10^(A/10): Y² = (b2 − b1)/((a2 − 1)/b2 − (a1 − 1)/b1), B = ((a1 − 1)·Y²/b1 − b1)/2, and R = 1/√(Y² − B²).',
      `A clamp gives the sum S = Rs + Rl, a capacitor the parallel value P. Both ends are (S ± √(S² − 4·S·P))/2: ${sumAndParallel()}.`,
    ],
    sources: [DERIVED, PRACTICE],
    related: [{ check: 'loop' }, { check: 'window' }, { check: 'filter' }],
  },
  {
    id: 'radio-bands',
    title: 'Radio bands and what noise in them looks like',
    paragraphs: ['The system that suffers tells the band. The channel it suffers on tells the frequency.'],
    table: {
      head: ['System', 'From', 'To', 'Symptom'],
      rows: RADIO_BANDS.map((band) => [band.system, hertz(band.fromHz), hertz(band.toHz), band.symptom]),
    },
    sources: [
      { id: 'R38', standing: 'read' },
      { id: 'R39', standing: 'memory' },
    ],
    related: [{ note: 'noise-signatures' }],
  },
  {
    id: 'noise-signatures',
    title: 'What noise sounds like, and the first test',
    paragraphs: ['Every source has its own clock. Find the clock, then switch that source off.'],
    table: {
      head: ['Source', 'Frequency', 'Heard or seen', 'First test'],
      rows: NOISE_SIGNATURES.map((each) => [each.source, each.rule, each.heard, each.firstTest]),
    },
    sources: [{ id: 'R40', standing: 'read' }, { id: 'R44', standing: 'read' }, PRACTICE],
    related: [{ note: 'alternator-frequencies' }, { note: 'radio-bands' }],
  },
  {
    id: 'alternator-frequencies',
    title: 'Alternator and rectifier frequencies',
    paragraphs: [
      'Electrical frequency f = P·N/120, with P poles and N its own rpm. That is engine rpm times the drive ratio. Six rectifier pulses each turn of the phase make the whine 6·f.',
      `Example: ${MACHINE.poles} poles at ${withUnit(MACHINE.rpm, 'rpm')}: ${hertz(machineHz())}, whine at ${hertz(rectifierHz(machineHz(), ALTERNATOR_PULSES))}. It climbs with the engine and goes when the field is off.`,
      `Rectified ${hertz(AC_BUS.hz)}: ${rectified(6)} with six pulses, ${rectified(12)} with twelve, ${rectified(18)} with eighteen. A drop to ${bare(hertz(AC_BUS.hz))} or ${rectified(2)} means an open diode.`,
      `No connector filter helps: from ${ohms(HUM.sourceOhm)}, ${decibels(HUM.db)} at ${rectified(6)} needs ${humNeeds(6)}, at ${rectified(12)} ${humNeeds(12)}.`,
    ],
    sources: [{ id: 'R41', standing: 'read' }, { id: 'R42', standing: 'read' }, AC_BUS.basis, DERIVED],
    related: [{ note: 'noise-signatures' }],
  },
]
