/**
 * Topology and orientation from what a line looks like to noise, where nobody has measured it: the input of its kind at
 * the noise frequency, and the usual source, both over their spans. Decided where the sign holds over the whole span;
 * otherwise the one reading that decides is named.
 */
import { clampFallDb, loopOhmFrom, loopSpan } from '../../calc/network/clamp.ts'
import { classOf, inputSpanOhm } from '../../calc/network/noise-input.ts'
import { INSIDE_CAPACITOR } from '../../reference/field-figures.ts'
import {
  NOISE_SOURCES,
  type NoiseInput,
  type NoiseSource,
  noInputWhy,
  noiseInputOf,
  type Span,
} from '../../reference/noise-inputs.ts'
import { STANDING_WORDS } from '../../reference/standing.ts'
import { CLAMP_OHM, clampFall, HIGH_LOOP_OHM, LOW_LOOP_OHM } from '../figures.ts'
import { decibels, farads, hertz, ohms } from '../print.ts'
import type { AdviceItem } from '../types.ts'
import { type Context, DERIVED, numbersOf, PRACTICE, type Rule } from './context.ts'

const sourceRow = (id: NoiseSource['id']): NoiseSource => {
  const row = NOISE_SOURCES.find((each) => each.id === id)
  if (row === undefined) throw new RangeError(`no source class "${id}"`)
  return row
}

const spanOf = (values: readonly number[]): Span => ({ least: Math.min(...values), most: Math.max(...values) })

const isPower = ({ kind }: Context): boolean => kind?.family === 'power-dc' || kind?.family === 'power-ac'

/** What usually drives the noise: the bus on a supply, the cable as an antenna, or the converter inside the box. */
function usualSource(context: Context): NoiseSource {
  if (isPower(context)) return sourceRow(context.outcome.noiseFrom === 'box' ? 'converter' : 'bus')
  return sourceRow(context.outcome.noiseFrom === 'box' ? 'converter' : 'cable')
}

/** A tenth of a wave in metres, and the shortest cable that is thought of. */
const tenthM = (hz: number): number => 3e7 / hz
const SHORTEST_M = 1

/** The span of a source class at the lowest frequency: a cable that may be shorter than a tenth of a wave is reactive. */
function sourceSpan({ ohm: span, short }: NoiseSource, hz: readonly number[]): Span {
  const lowest = Math.min(...hz)
  if (short === undefined || tenthM(lowest) <= SHORTEST_M) return span
  const omega = 2 * Math.PI * lowest
  return {
    least: Math.min(span.least, omega * short.henryPerM * SHORTEST_M),
    most: Math.max(span.most, 1 / (omega * short.faradPerM * SHORTEST_M)),
  }
}

/** The loop by the clamp reading on this line, whatever its phase; undefined without both the clamp and what it did. */
function loopOf({ facts }: Context): Span | undefined {
  const clampOhms = numbersOf(facts, 'clampOhm', 'resistance').filter((value) => value > 0)
  const [fallDb] = numbersOf(facts, 'clampFallDb', 'decibel')
  const [offDb = 0] = numbersOf(facts, 'readingOffDb', 'decibel')
  return clampOhms.length === 0 || fallDb === undefined ? undefined : loopSpan({ clampOhms, fallDb, offDb })
}

/** What a loop of resistances leaves for the source beside this load; undefined where the clamp read less than the load. */
function besideLoad(context: Context, load: Span): Span | undefined {
  const clampOhms = numbersOf(context.facts, 'clampOhm', 'resistance').filter((value) => value > 0)
  const [fallDb = 0] = numbersOf(context.facts, 'clampFallDb', 'decibel')
  const [offDb = 0] = numbersOf(context.facts, 'readingOffDb', 'decibel')
  if (clampOhms.length === 0 || fallDb - offDb <= 0) return undefined
  const most = loopOhmFrom({ clampOhm: Math.max(...clampOhms), fallDb: fallDb - offDb }) - load.least
  const least = loopOhmFrom({ clampOhm: Math.min(...clampOhms), fallDb: fallDb + offDb }) - load.most
  return most > 0 ? { least: Math.max(0, least), most } : undefined
}

const spanWords = ({ least, most }: Span): string =>
  Number.isFinite(most) ? `${ohms(least)} to ${ohms(most)}` : `${ohms(least)} and more`

type Ends = {
  readonly source: Span
  /** the source is what the clamp leaves beside the load */
  readonly isByClamp: boolean
  readonly load: Span
  readonly words: string
  readonly input: NoiseInput | undefined
}

function endsOf(context: Context, hz: readonly number[]): Ends | undefined {
  const isAssumed = context.facts.fact('noiseSourceOhm')?.origin.by === 'assumed'
  const stated = isAssumed ? [] : numbersOf(context.facts, 'noiseSourceOhm', 'resistance').filter((value) => value > 0)
  const loads = numbersOf(context.facts, 'noiseLoadOhm', 'resistance').filter((value) => value > 0)
  const row = usualSource(context)
  const input = context.kind === undefined ? undefined : noiseInputOf(context.kind)
  const isOut = context.outcome.noiseFrom === 'box'
  const cable = sourceRow('cable')
  const load =
    loads.length > 0 ? spanOf(loads) : isOut ? sourceSpan(cable, hz) : input && inputSpanOhm(input, spanOf(hz))
  if (load === undefined) return undefined
  const left = stated.length > 0 ? undefined : besideLoad(context, load)
  const source = left ?? (stated.length > 0 ? spanOf(stated) : sourceSpan(row, hz))
  const sourceWords =
    stated.length > 0
      ? 'source as stated'
      : left === undefined
        ? `source: ${row.name}${shortWords(row, hz)}, ${standing(row)}`
        : 'source: what your clamp leaves beside the load, both taken as resistances'
  const loadWords =
    loads.length > 0
      ? 'load as stated'
      : isOut
        ? `load: ${cable.name}${shortWords(cable, hz)}, ${standing(cable)}: ${spanWords(load)}`
        : inputWords(input, load, hz)
  return {
    source,
    isByClamp: left !== undefined,
    load,
    input: isOut || loads.length > 0 ? undefined : input,
    words: `Noise ${sourceWords}: ${spanWords(source)}. Noise ${loadWords}.`,
  }
}

const shortWords = ({ short }: NoiseSource, hz: readonly number[]): string =>
  short === undefined || tenthM(Math.min(...hz)) <= SHORTEST_M ? '' : ' of a metre or more'

const standing = ({ source }: NoiseSource | NoiseInput): string => STANDING_WORDS[source.standing]

function inputWords(input: NoiseInput | undefined, load: Span, hz: readonly number[]): string {
  if (input === undefined) return 'load not known'
  const at = spanOf(hz)
  const where = at.least === at.most ? `at ${hertz(at.least)}` : `from ${hertz(at.least)} to ${hertz(at.most)}`
  const low = classOf(load.least)
  const high = classOf(load.most)
  const word = low === high ? low : `${low} to ${high}`
  return `load: ${input.name}, ${standing(input)}, ${word} ${where}: ${ohms(load.least)} to ${ohms(load.most)}`
}

/** What decides when the sign changes within the span: the frequency, when a band moves the input; else the clamp. */
function decidingReading({ input, source, isByClamp }: Ends, hz: readonly number[]): string {
  const at = spanOf(hz)
  if (input !== undefined && at.most > 2 * at.least)
    return `The upper end ${hertz(at.most)} and the lower end ${hertz(at.least)} decide differently: the exact frequency decides.`
  if (isByClamp)
    return 'One more reading decides: current and voltage at the box, in dBµA and dBµV. The loop check makes the load of them.'
  const [strong, weak] = [
    clampFallDb({ clampOhm: CLAMP_OHM, loopOhm: source.least }),
    clampFallDb({ clampOhm: CLAMP_OHM, loopOhm: source.most }),
  ]
  return `One reading decides: a ${ohms(CLAMP_OHM)} clamp ferrite on the cable. It lowers the noise by ${decibels(strong)} in a loop of ${ohms(source.least)} and by ${decibels(weak)} in one of ${ohms(source.most)}.`
}

/** A kind whose input nobody has stated: said, with what decides instead. */
function notKnown({ kind }: Context): Omit<AdviceItem, 'rule'> | undefined {
  const why = kind && noInputWhy(kind)
  if (kind === undefined || why === undefined) return undefined
  return {
    title: 'Topology from the class of the line: not known',
    text: `${kind.name}: ${why} Current and voltage at the box decide; the loop check makes its impedance of them.`,
    basis: [PRACTICE],
    missing: ['noise load impedance'],
  }
}

/** Above this the capacitor inside a box makes every such input low. */
const insideWords = (input: NoiseInput | undefined, hz: readonly number[]): string =>
  input !== undefined && Math.max(...hz) > INSIDE_CAPACITOR.fromHz && classOf(input.ohm.most) !== 'low'
    ? ` With ${farads(INSIDE_CAPACITOR.farads)} already inside the box it is low above ${hertz(INSIDE_CAPACITOR.fromHz)}: ask its maker.`
    : ''

const lineClass: Rule = {
  id: 'line-class',
  advisesPart: false,
  say: (context) => {
    const hz = numbersOf(context.facts, 'noiseHz', 'frequency').filter((value) => value > 0)
    const isMeasured =
      context.facts.fact('noiseSourceOhm')?.origin.by !== 'assumed' &&
      numbersOf(context.facts, 'noiseSourceOhm', 'resistance').length > 0 &&
      numbersOf(context.facts, 'noiseLoadOhm', 'resistance').length > 0
    if (isMeasured || hz.length === 0 || context.outcome.noiseFrom === undefined) return undefined
    const ends = endsOf(context, hz)
    if (ends === undefined) return notKnown(context)
    const least = 20 * Math.log10(ends.load.least / ends.source.most)
    const most = 20 * Math.log10(ends.load.most / ends.source.least)
    const upTo = Number.isFinite(most) ? `to ${decibels(most)}` : 'and more'
    const from = Number.isFinite(least) ? `${decibels(least)} ${upTo}` : 'open'
    const figure = `${ends.words}${insideWords(ends.input, hz)} LC − CL = 20·log10(Rl/Rs) = ${from}.`
    const basis = [PRACTICE, DERIVED, ...(ends.input === undefined ? [] : [ends.input.source])]
    const title = 'Topology from the class of the line'
    if (least > 0)
      return {
        title,
        text: `${figure} The inductor faces the noise, the capacitor the input: LC.`,
        basis,
        missing: [],
        topology: 'LC',
      }
    if (most < 0)
      return {
        title,
        text: `${figure} The capacitor faces the noise, the inductor the input: CL.`,
        basis,
        missing: [],
        topology: 'CL',
      }
    return {
      title,
      text: `${figure} The sign changes within the span. ${decidingReading(ends, hz)}`,
      basis,
      missing: ['the deciding reading'],
    }
  },
}

/** Which element a loop asks for first. */
const FIRST = {
  low: 'Low: an inductor or a choke comes first.',
  middle: 'Neither low nor high: what a capacitor does has to be tried, or worked out with both ends.',
  high: 'High: a capacitor comes first.',
} as const

/** What this clamp reading says; half the loop is the mean of its ends. */
function readClamp(clampOhm: number, fallDb: number, loop: Span): string {
  if (fallDb <= 0)
    return fallDb < 0
      ? `Your clamp made it ${decibels(-fallDb)} worse: clamp and loop resonate, so no impedance is read from it.`
      : 'Your clamp changed nothing: the loop is high, it is another cable, or the clamp is outside its band. Try a second place a quarter wave away.'
  const loopOhm = loopOhmFrom({ clampOhm, fallDb })
  return `Your clamp of ${ohms(clampOhm)} took ${decibels(fallDb)} off. The loop is ${ohms(loopOhm)} if all are resistances, ${spanWords(loop)} whatever they are. ${FIRST[classOf(loopOhm / 2)]} It is the sum of both ends and does not say which is which. The loop check carries it on.`
}

const clamp: Rule = {
  id: 'clamp',
  advisesPart: false,
  say: (context) => {
    const [clampOhm] = numbersOf(context.facts, 'clampOhm', 'resistance').filter((value) => value > 0)
    const [fallDb] = numbersOf(context.facts, 'clampFallDb', 'decibel')
    const loop = loopOf(context)
    if (clampOhm === undefined || fallDb === undefined || loop === undefined) return clampInGeneral(fallDb)
    return {
      title: 'What your clamp reading says of the loop',
      text: readClamp(clampOhm, fallDb, loop),
      basis: [DERIVED, PRACTICE],
      missing: numbersOf(context.facts, 'readingOffDb', 'decibel').length > 0 ? [] : ['how far the reading may be off'],
    }
  },
}

function clampInGeneral(fallDb: number | undefined): Omit<AdviceItem, 'rule'> {
  return {
    title: 'What the clamp says of the loop',
    text: `A clamp of ${ohms(CLAMP_OHM)} lowers the current by ${clampFall(LOW_LOOP_OHM)} in a loop of ${ohms(LOW_LOOP_OHM)}. In one of ${ohms(HIGH_LOOP_OHM)} it is ${clampFall(HIGH_LOOP_OHM)}. A strong effect: the loop is low, and an inductor or choke comes first. None in two places a quarter wave apart, inside its band and without direct current: the loop is high. Or it is another cable. A reactive loop can even show a gain.`,
    basis: [DERIVED, PRACTICE],
    missing: [
      'impedance of the clamp at that frequency',
      ...(fallDb === undefined ? ['what the clamp did, in dB'] : []),
    ],
  }
}

/** The same, silent until a clamp was read. */
const clampRead: Rule = {
  id: 'clamp-read',
  advisesPart: false,
  say: (context) => (numbersOf(context.facts, 'clampFallDb', 'decibel').length === 0 ? undefined : clamp.say(context)),
}

/** Rules about what stands before and behind the noise. */
export const CLASS_RULES: readonly Rule[] = [lineClass, clamp, clampRead]
