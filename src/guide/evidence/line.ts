/** Facts of the line, asked once the cause is known: way round, kind, mode, frequency, need, impedance, place. */
import { printText } from '../../calc/quantity/format.ts'
import {
  BENCH_ENDS,
  CABLE_ANTENNA,
  CUSTOMARY_COMMON,
  NOISE_BANDS,
  TARGETS,
  USUAL_SOURCES,
} from '../../reference/field-figures.ts'
import { usualSources } from '../figures.ts'
import type { Evidence } from '../investigation.ts'
import { bare, decibels, hertz, ohms } from '../print.ts'
import type { SetFact } from '../types.ts'
import { readings } from './define.ts'

const NOT_PROBED = `not probed; radio noise on a pair is mostly common above about ${hertz(CUSTOMARY_COMMON.fromHz)}`

const band = (...endsHz: readonly [number, number]): readonly SetFact[] => [
  {
    fact: 'noiseHz',
    text: endsHz.map((hz) => printText(hz, 'frequency')).join('; '),
    why: 'only the band is known, so both its ends are taken; enter the measured frequency when you have it',
    assumed: true,
  },
]

const KIND_ROW = {
  id: 'dont-know',
  label: "Don't know",
  hint: 'no ceiling will be known until you do',
  means: 'The most the signal stands stays unknown.',
}

/** Items about the line; they decide the part, never the cause. */
export const LINE_EVIDENCE: readonly Evidence[] = [
  {
    id: 'plan-direction',
    chapter: 'Which way',
    kind: 'ask',
    about: 'line',
    text: 'Does the box make the noise, or must it stand it?',
    why: 'The noise side is the source of every figure: swap it and the inductor changes ends.',
    findOut: 'An emission test: the box makes it. A susceptibility or injection test: it comes in by the cable.',
    minutes: 1,
    options: readings(
      {
        id: 'emission',
        label: 'It makes noise: emission, or a disturbed neighbour',
        means: 'The source is inside the box.',
      },
      { id: 'stand', label: 'It must stand noise that comes in by its cable', means: 'The source is on the cable.' },
      {
        id: 'surge',
        label: 'It must stand lightning, static or switching',
        means: 'A suppressor is sized by the pulse.',
      },
      {
        id: 'pulses',
        label: 'It must stand nuclear or conducted test pulses',
        hint: 'EMP (electromagnetic pulse), CS115, CS116',
        means: 'Filter and suppressor are designed together.',
      },
      { id: 'dont-know', label: "Both, or don't know", means: 'Both ways are computed and the worse one counts.' },
    ),
  },
  {
    id: 'source-fix',
    chapter: 'At the source',
    kind: 'ask',
    about: 'line',
    text: 'Can the source itself be made quiet?',
    why: 'One cure at the source helps every box; one at a box helps only that one.',
    findOut:
      'Swap in a known good unit of the same kind. As noisy: the design is noisy. Quiet: the old one has a fault.',
    minutes: 1,
    options: readings(
      { id: 'faulty', label: 'A good one is quiet: ours is faulty', means: 'It is repaired.' },
      {
        id: 'filter',
        label: 'It is healthy; its own connector could be treated',
        means: 'The part goes to the source.',
      },
      { id: 'no', label: 'No: only the box that suffers can be treated', means: 'The way in is treated.' },
    ),
  },
  {
    id: 'mode',
    chapter: 'Common or differential',
    kind: 'test',
    about: 'line',
    text: 'Probe both legs together, then one leg alone: which is more?',
    why: 'Noise alike on both legs goes to chassis; noise between the legs needs a part across them.',
    findOut: 'Current probe over both legs, then over one. No probe: a clamp ferrite tells the same by ear.',
    minutes: 10,
    needs: ['current probe'],
    card: {
      do: [
        'Probe over both legs, then over each leg, at the box that suffers.',
        'Again a quarter wave away; write every figure.',
      ],
      with: [{ instrument: 'current probe', setting: 'same bandwidth each time' }],
      expect: `Pure common mode reads ${decibels(20 * Math.log10(2), 1)} more over both than over one; pure differential cancels over both.`,
      unit: 'dBµA',
    },
    options: readings(
      {
        id: 'common',
        label: 'Both together read as much or more: common',
        sets: [{ fact: 'noiseMode', text: 'common' }],
        means: 'Capacitors go from each leg to the shell.',
      },
      {
        id: 'differential',
        label: 'One leg reads, both together cancel: differential',
        sets: [{ fact: 'noiseMode', text: 'differential' }],
        means: 'The part goes across the legs.',
      },
      { id: 'single', label: 'It is a single wire with chassis return', means: 'One leg, one way to the shell.' },
      {
        id: 'dont-know',
        label: "Don't know",
        sets: [{ fact: 'noiseMode', text: 'common', why: NOT_PROBED, assumed: true }],
        means: 'Common is carried as an assumption, and marked.',
      },
    ),
    note: 'current-probe',
  },
  {
    id: 'kind',
    chapter: 'Which line',
    kind: 'ask',
    about: 'line',
    text: 'What kind of line is it?',
    why: 'The kind says how much capacitance the signal can stand, and whether the line may be touched at all.',
    findOut: 'Read the wiring diagram: signal name, wire pair or single, and what drives it.',
    minutes: 1,
    options: readings(KIND_ROW),
    picker: 'lineKind',
  },
  {
    id: 'kind-source',
    chapter: 'Which line',
    kind: 'ask',
    about: 'line',
    text: 'Which line of the source carries the noise out?',
    why: 'The part goes on that line, at the source, and its own signal must still work.',
    findOut: 'Current probe or clamp ferrite on each cable of the source, one at a time.',
    minutes: 1,
    options: readings(KIND_ROW),
    picker: 'lineKind',
  },
  {
    id: 'frequency',
    chapter: 'Frequency and level',
    kind: 'ask',
    about: 'line',
    text: 'What is its frequency, or its band?',
    why: 'A capacitor fit for a connector acts on radio frequencies; audio-rate noise needs a thousand times more.',
    findOut: 'The radio or band that suffers tells the band. A tuned receiver or an analyser tells the frequency.',
    minutes: 1,
    options: readings(
      { id: 'exact', label: 'The frequency typed above', means: 'Every figure is worked out there.' },
      {
        id: 'audio',
        label: `Audio: below ${hertz(NOISE_BANDS.audioToHz)} on the line itself`,
        means: 'Too low for a part that fits a contact.',
      },
      {
        id: 'own-band',
        label: 'Inside the band the signal itself uses',
        means: 'A low-pass cannot tell noise from signal.',
      },
      {
        id: 'lf',
        label: `${hertz(NOISE_BANDS.audioToHz)} to ${hertz(NOISE_BANDS.lowToHz)}`,
        hint: 'converters, ADF (automatic direction finder)',
        sets: band(NOISE_BANDS.audioToHz, NOISE_BANDS.lowToHz),
        means: 'Both ends of the band count.',
      },
      {
        id: 'hf',
        label: `${bare(hertz(NOISE_BANDS.lowToHz))} to ${hertz(NOISE_BANDS.hfToHz)}`,
        hint: 'HF radio, clocks, converters',
        sets: band(NOISE_BANDS.lowToHz, NOISE_BANDS.hfToHz),
        means: 'Both ends of the band count.',
      },
      {
        id: 'vhf',
        label: `${bare(hertz(NOISE_BANDS.hfToHz))} to ${hertz(NOISE_BANDS.vhfToHz)}`,
        hint: 'VHF radio, navigation, marker, glideslope',
        sets: band(NOISE_BANDS.hfToHz, NOISE_BANDS.vhfToHz),
        means: 'Both ends of the band count.',
      },
      {
        id: 'uhf',
        label: `${hertz(NOISE_BANDS.vhfToHz)} to ${hertz(NOISE_BANDS.uhfToHz)}`,
        hint: 'beacon, distance, transponder, satellite position',
        sets: band(NOISE_BANDS.vhfToHz, NOISE_BANDS.uhfToHz),
        means: 'Both ends of the band count.',
      },
      {
        id: 'probe',
        label: 'I only have a current-probe reading',
        hint: 'dBµA',
        means: 'An impedance turns it into a voltage.',
      },
      { id: 'headset', label: 'I have no instrument, only a headset', means: 'An ear compares; it gives no decibels.' },
    ),
  },
  {
    id: 'need',
    chapter: 'How much',
    kind: 'ask',
    about: 'line',
    text: 'How many decibels are needed?',
    why: 'Without a need there is no least capacitance, only a most.',
    findOut: 'Measured level minus limit plus margin, all in the same unit and bandwidth.',
    minutes: 1,
    options: readings(
      {
        id: 'measured',
        label: 'I have a level and a limit',
        hint: 'entered on the check',
        means: 'The need check works it out.',
      },
      {
        id: 'twenty',
        label: `A target of ${decibels(TARGETS.modestDb)}`,
        hint: 'ten times less',
        sets: [{ fact: 'neededDb', text: String(TARGETS.modestDb), why: 'a target you chose, not a measurement' }],
        means: 'Ten times less.',
      },
      {
        id: 'forty',
        label: `A target of ${decibels(TARGETS.strongDb)}`,
        hint: 'a hundred times less',
        sets: [{ fact: 'neededDb', text: String(TARGETS.strongDb), why: 'a target you chose, not a measurement' }],
        means: 'A hundred times less.',
      },
    ),
  },
  {
    id: 'impedance',
    chapter: 'Source and load',
    kind: 'ask',
    about: 'line',
    text: 'What impedance has the noise behind it?',
    why: `The same part gives ${decibels(TARGETS.modestDb)} or nothing, depending on what stands before and behind it.`,
    findOut: 'It is rarely known. A test network has a known one; a trial with two capacitors can solve for it.',
    minutes: 1,
    options: readings(
      {
        id: 'low',
        label: `Low: ${bare(ohms(USUAL_SOURCES.ohms[0]))} to ${ohms(USUAL_SOURCES.ohms[1])}`,
        hint: 'power bus, driver output, converter',
        sets: [{ fact: 'noiseSourceOhm', text: USUAL_SOURCES.ohms.slice(0, 2).join('; ') }],
        means: 'An inductor first.',
      },
      {
        id: 'fifty',
        label: `${ohms(BENCH_ENDS.fixtureOhm)}, by a network or a generator`,
        sets: [{ fact: 'noiseSourceOhm', text: String(BENCH_ENDS.fixtureOhm) }],
        means: 'As on the bench.',
      },
      {
        id: 'cable',
        label: `A cable that works as an antenna: ${bare(ohms(CABLE_ANTENNA.leastOhm))} to ${ohms(CABLE_ANTENNA.mostOhm)}`,
        hint: 'only where longer than a tenth of a wave',
        sets: [
          {
            fact: 'noiseSourceOhm',
            text: [CABLE_ANTENNA.leastOhm, CABLE_ANTENNA.usualOhm, CABLE_ANTENNA.mostOhm].join('; '),
          },
        ],
        means: 'The span of a cable in common mode.',
      },
      {
        id: 'read',
        label: 'I have a clamp, probe or capacitor reading',
        hint: 'entered on the loop check',
        means: 'The loop check says which end it decides.',
      },
      {
        id: 'dont-know',
        label: "Don't know",
        hint: `${usualSources()} assumed and marked`,
        sets: [
          {
            fact: 'noiseSourceOhm',
            text: USUAL_SOURCES.ohms.join('; '),
            why: 'not known; the worst value of the spread decides',
            assumed: true,
          },
        ],
        means: 'The worst of the spread decides.',
      },
    ),
    note: 'source-impedance',
  },
  {
    id: 'box',
    chapter: 'Where it can go',
    kind: 'ask',
    about: 'line',
    text: 'Can the box or its receptacle be changed?',
    why: 'A filter in the receptacle is best; a box that is qualified or not ours leaves only the cable side.',
    findOut: 'Ask who holds the approved data of the box, and whether a modification is open anyway.',
    minutes: 1,
    cautions: ['permanent-approved'],
    picture: 'placements',
    options: readings(
      { id: 'yes', label: 'Yes: new, or being modified', means: 'Into the receptacle.' },
      { id: 'no', label: 'No: already qualified, or cannot be opened', means: 'An in-line adapter on the cable side.' },
      {
        id: 'tray',
        label: 'No, and it sits in a blind-mated tray',
        means: 'No adapter fits there: the tray wiring or a disconnect.',
      },
    ),
    note: 'rack-trays',
  },
]
