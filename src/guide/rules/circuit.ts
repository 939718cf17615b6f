/** Rules about the circuit: topology and orientation, impedances, needed attenuation, own band, current probe. */
import { formatQuantity } from '../../calc/quantity/format.ts'
import { BENCH_ENDS, USUAL_MARGIN, USUAL_SOURCES } from '../../reference/field-figures.ts'
import { onOhms, usualSources } from '../figures.ts'
import { decibels, ohms } from '../print.ts'
import {
  type Context,
  DERIVED,
  missingWords,
  numberOf,
  numbersOf,
  offeredF,
  PRACTICE,
  type Rule,
  sideWords,
} from './context.ts'

const ENDS = [
  { id: 'S1', standing: 'read' },
  { id: 'S2', standing: 'read' },
] as const

/** LC − CL = 20·log10(Rl/Rs), in dB; positive = the inductor belongs on the source side. */
const orientationDb = (sourceOhm: number, loadOhm: number): number => 20 * Math.log10(loadOhm / sourceOhm)

/** Ratio below which turning the inductor round gains too little to matter: 6 dB is a factor of two. */
const SMALL_GAIN_DB = 6

function facing(context: Context, sources: readonly number[], loadOhm: number): string {
  const gains = sources.map((source) => orientationDb(source, loadOhm))
  const least = Math.min(...gains)
  const most = Math.max(...gains)
  const span = sources.length > 1 ? `${decibels(least)} to ${decibels(most)}` : decibels(least)
  const figure = `LC − CL = 20·log10(Rl/Rs) = ${span}.`
  if (least > 0)
    return `${figure} LC: the inductor faces ${sideWords(context, 'source')} (lower impedance), the capacitor ${sideWords(context, 'load')}.`
  if (most < 0)
    return `${figure} CL: the inductor faces ${sideWords(context, 'load')} (lower impedance), the capacitor ${sideWords(context, 'source')}.`
  if (least === 0 && most === 0) return `${figure} Both ends are equal: either way round.`
  return `${figure} The sign changes within the spread, so the figures do not say which way the inductor faces.`
}

type Shape = { readonly text: string; readonly topology?: 'C' | 'L' | 'LC' | 'CL' }

function sureOrientation(sources: readonly number[], loadOhm: number): 'LC' | 'CL' | undefined {
  const gains = sources.map((source) => orientationDb(source, loadOhm))
  if (Math.min(...gains) >= SMALL_GAIN_DB) return 'LC'
  if (Math.max(...gains) <= -SMALL_GAIN_DB) return 'CL'
  return undefined
}

/** Capacitor first or inductor first: √(Rs·Rl) against √(L/C). */
function shape(context: Context, sources: readonly number[], loadOhm: number): Shape {
  const means = sources.map((source) => Math.sqrt(source * loadOhm))
  const least = Math.min(...means)
  const most = Math.max(...means)
  const span = sources.length > 1 ? `${ohms(least)} to ${ohms(most)}` : ohms(least)
  const inductanceH = numberOf(context.facts, 'inductanceH', 'inductance')
  const capacitanceF = offeredF(context.facts)
  const two = sureOrientation(sources, loadOhm)
  if (inductanceH === undefined || capacitanceF === undefined || inductanceH <= 0 || capacitanceF <= 0)
    return {
      text: `√(Rs·Rl) = ${span}. Capacitor types (C, Pi) win when √(L/C) of the parts on offer is below that, inductor types (L, T) when it is above.`,
      ...(two === undefined ? {} : { topology: two }),
    }
  const partsOhm = Math.sqrt(inductanceH / capacitanceF)
  const figure = `√(Rs·Rl) = ${span} against √(L/C) = ${ohms(partsOhm)} of these parts`
  if (least > partsOhm) return { text: `${figure}: C before L, Pi before T.`, topology: two ?? 'C' }
  if (most < partsOhm) return { text: `${figure}: L before C, T before Pi.`, topology: two ?? 'L' }
  return {
    text: `${figure}: it changes within the spread, so it is not decided.`,
    ...(two === undefined ? {} : { topology: two }),
  }
}

const topology: Rule = {
  id: 'topology',
  advisesPart: false,
  say: (context) => {
    const title = 'Topology and which way it faces'
    const sources = numbersOf(context.facts, 'noiseSourceOhm', 'resistance').filter((value) => value > 0)
    const loadOhm = numberOf(context.facts, 'noiseLoadOhm', 'resistance')
    const missing = [
      ...(sources.length === 0 ? [missingWords(context.facts, 'noiseSourceOhm', 'noise source impedance')] : []),
      ...(loadOhm === undefined || loadOhm <= 0
        ? [missingWords(context.facts, 'noiseLoadOhm', 'noise load impedance')]
        : []),
      ...(numberOf(context.facts, 'inductanceH', 'inductance') === undefined ? ['inductance on offer'] : []),
      ...(offeredF(context.facts) === undefined ? ['capacitance on offer'] : []),
      ...(context.outcome.noiseFrom === undefined ? ['which way the noise goes'] : []),
    ]
    if (sources.length === 0 || loadOhm === undefined || loadOhm <= 0)
      return {
        title,
        text: `The inductor faces the lower impedance, the capacitor the higher; here the noise comes from ${sideWords(context, 'source')}. Turning it round changes the attenuation by 20·log10(Rl/Rs). Without both impedances no topology is proposed.`,
        basis: [...ENDS, DERIVED],
        missing,
      }
    const chosen = shape(context, sources, loadOhm)
    return {
      title,
      text: `${facing(context, sources, loadOhm)} ${chosen.text}`,
      basis: [...ENDS, DERIVED],
      missing,
      ...(chosen.topology === undefined ? {} : { topology: chosen.topology }),
    }
  },
}

const impedance: Rule = {
  id: 'impedance',
  advisesPart: false,
  say: ({ facts }) => {
    const fact = facts.fact('noiseSourceOhm')
    const isAssumed = fact === undefined || fact.origin.by === 'assumed'
    const load = facts.fact('noiseLoadOhm')
    if (!isAssumed && load !== undefined) return undefined
    return {
      title: 'What the impedance looks like',
      text: `It is rarely known. Until it is, take ${usualSources()} for the source: the least capacitance becomes a band and its worst end decides. The load is the input at the noise frequency, not the signal’s resistance. A trial with two capacitors can solve for the source later. The ${ohms(BENCH_ENDS.fixtureOhm)} bench figure is not your circuit.`,
      basis: [USUAL_SOURCES.basis, BENCH_ENDS.basis, BENCH_ENDS.fixtureBasis],
      missing: [
        ...(isAssumed ? ['noise source impedance'] : []),
        ...(load === undefined ? ['noise load impedance'] : []),
      ],
    }
  },
}

const need: Rule = {
  id: 'need',
  advisesPart: false,
  say: ({ facts }) => {
    const needs = numbersOf(facts, 'neededDb', 'decibel')
    const frequencies = numbersOf(facts, 'noiseHz', 'frequency')
    const missing = [
      ...(frequencies.length === 0 ? [missingWords(facts, 'noiseHz', 'noise frequency')] : []),
      ...(needs.length === 0 ? [missingWords(facts, 'neededDb', 'attenuation needed')] : []),
    ]
    const at =
      frequencies.length === 0
        ? 'at a frequency still to be found'
        : `at ${frequencies.map((hz) => formatQuantity(hz, 'frequency')).join(' and ')}`
    const text =
      needs.length > 0
        ? `${needs.map((need) => decibels(need)).join(' and ')} are asked for, ${at}.`
        : `How much is needed is open, ${at}. With a level and a limit: measured − limit + margin, ${decibels(USUAL_MARGIN.db)} as a usual margin. With a current probe: compare in dBµA, or add 20·log10 of the impedance you state. With only a headset: an on/off/on trial gives an order, never decibels.`
    const decided = needs.length > 0 && {
      decided: `for ${needs.length > 1 ? 'up to ' : ''}${decibels(Math.max(...needs))}`,
    }
    return { title: 'How much attenuation', text, basis: [PRACTICE, DERIVED], missing, ...decided }
  },
}

const inBand: Rule = {
  id: 'in-band',
  advisesPart: false,
  say: ({ facts, kind, mode }) => {
    const useful = kind?.usefulHz
    const frequencies = numbersOf(facts, 'noiseHz', 'frequency')
    if (useful === undefined || kind === undefined || frequencies.length === 0) return undefined
    const inside = frequencies.filter((hz) => hz <= useful.hz)
    if (inside.length === 0) return undefined
    const where = `${inside.map((hz) => formatQuantity(hz, 'frequency')).join(' and ')} lies inside the band of ${kind.name}, which reaches to ${formatQuantity(useful.hz, 'frequency')}`
    const text = !kind.isPair
      ? `${where}. It is a single line: a low-pass cannot tell noise there from signal. Treat the source or the return.`
      : mode === 'differential'
        ? `${where}, and the noise is differential: no low-pass cures that. Treat the source or the balance of the pair.`
        : mode === 'common'
          ? `${where}. Common noise there asks for a common-mode choke, or capacitors the signal can stand; a low-pass across the pair takes the signal too.`
          : `${where}. Find the mode first: differential noise there is not cured by any low-pass.`
    return {
      title: 'Noise inside the signal’s own band',
      text,
      basis: [useful.source, DERIVED],
      missing: kind.isPair && mode === 'unknown' ? ['common or differential'] : [],
    }
  },
}

const probe: Rule = {
  id: 'probe',
  advisesPart: false,
  say: () => ({
    title: 'From a current probe to a voltage',
    text: `dBµV = dBµA + 20·log10(Z), with the impedance you state. Examples: ${ohms(1)} adds ${decibels(onOhms(1))}, ${[5, BENCH_ENDS.fixtureOhm, 100].map((z) => `${ohms(z)} ${decibels(onOhms(z))}`).join(', ')}. State Z beside the figure. No Z, no conversion: then compare with a limit in dBµA.`,
    basis: [BENCH_ENDS.fixtureBasis, DERIVED],
    missing: ['impedance the current flows in, stated by you', 'transfer impedance of the probe'],
  }),
}

const headset: Rule = {
  id: 'headset',
  advisesPart: false,
  say: () => ({
    title: 'With ears only',
    text: 'A relative trial: bare, changed, bare again, same volume and squelch, three equal repeats. Listening levels 0 to 3, no decibels. A part that makes it better by ear gives no figure for a sheet.',
    basis: [PRACTICE],
    missing: ['level with an instrument', 'noise frequency'],
  }),
}

/** Rules about circuit and levels. */
export const CIRCUIT_RULES: readonly Rule[] = [inBand, topology, impedance, need, probe, headset]
