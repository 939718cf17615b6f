/**
 * Topology and orientation from what a line looks like to noise, where nobody has measured it: the input of its kind at
 * the noise frequency, and the usual source, both over their spans. Decided where the sign holds over the whole span;
 * otherwise the one reading that decides is named.
 */
import { clampFallDb } from '../../calc/network/clamp.ts'
import { classOf, parallelOhm } from '../../calc/network/noise-input.ts'
import { formatQuantity } from '../../calc/quantity/format.ts'
import {
  NOISE_SOURCES,
  type NoiseInput,
  type NoiseSource,
  noiseInputOf,
  type Span,
} from '../../reference/noise-inputs.ts'
import { STANDING_WORDS } from '../../reference/standing.ts'
import { type Context, DERIVED, numbersOf, PRACTICE, type Rule } from './context.ts'

const ohm = (si: number): string => formatQuantity(si, 'resistance')
const db = (si: number): string => formatQuantity(si, 'decibel')
const hertz = (si: number): string => formatQuantity(si, 'frequency')

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

/** |R ∥ C| over both spans at the frequencies. */
function inputSpan({ ohm: r, farad }: NoiseInput, hz: readonly number[]): Span {
  const at = spanOf(hz)
  return {
    least: parallelOhm({ ohm: r.least, farad: farad.most, hz: at.most }),
    most: parallelOhm({ ohm: r.most, farad: farad.least, hz: at.least }),
  }
}

type Ends = {
  readonly source: Span
  readonly load: Span
  readonly words: string
  readonly input: NoiseInput | undefined
}

function endsOf(context: Context, hz: readonly number[]): Ends | undefined {
  const stated = numbersOf(context.facts, 'noiseSourceOhm', 'resistance').filter((value) => value > 0)
  const loads = numbersOf(context.facts, 'noiseLoadOhm', 'resistance').filter((value) => value > 0)
  const row = usualSource(context)
  const source = stated.length > 0 ? spanOf(stated) : row.ohm
  const input = context.kind === undefined ? undefined : noiseInputOf(context.kind)
  const isOut = context.outcome.noiseFrom === 'box'
  const cable = sourceRow('cable')
  const load = loads.length > 0 ? spanOf(loads) : isOut ? cable.ohm : input && inputSpan(input, hz)
  if (load === undefined) return undefined
  const sourceWords = stated.length > 0 ? 'source as stated' : `source: ${row.name}, ${standing(row)}`
  const loadWords =
    loads.length > 0
      ? 'load as stated'
      : isOut
        ? `load: ${cable.name}, ${standing(cable)}`
        : inputWords(input, load, hz)
  return {
    source,
    load,
    input: isOut || loads.length > 0 ? undefined : input,
    words: `Noise ${sourceWords}: ${ohm(source.least)} to ${ohm(source.most)}. Noise ${loadWords}.`,
  }
}

const standing = ({ source }: NoiseSource | NoiseInput): string => STANDING_WORDS[source.standing]

function inputWords(input: NoiseInput | undefined, load: Span, hz: readonly number[]): string {
  if (input === undefined) return 'load not known'
  const at = spanOf(hz)
  const where = at.least === at.most ? `at ${hertz(at.least)}` : `from ${hertz(at.least)} to ${hertz(at.most)}`
  const low = classOf(load.least)
  const high = classOf(load.most)
  const word = low === high ? low : `${low} to ${high}`
  return `load: ${input.name}, ${standing(input)}, ${word} ${where}: ${ohm(load.least)} to ${ohm(load.most)}`
}

/** What decides when the sign changes within the span: the frequency, when a band moves the input; else the clamp. */
function decidingReading({ input, source }: Ends, hz: readonly number[]): string {
  const at = spanOf(hz)
  if (input !== undefined && at.most > 2 * at.least)
    return `The upper end ${hertz(at.most)} and the lower end ${hertz(at.least)} decide differently: the exact frequency decides.`
  const [strong, weak] = [
    clampFallDb({ clampOhm: 100, loopOhm: source.least }),
    clampFallDb({ clampOhm: 100, loopOhm: source.most }),
  ]
  return `One reading decides: a 100 Ω clamp ferrite on the cable. It lowers the noise by ${db(strong)} in a loop of ${ohm(source.least)} and by ${db(weak)} in one of ${ohm(source.most)}.`
}

const lineClass: Rule = {
  id: 'line-class',
  advisesPart: false,
  say: (context) => {
    const hz = numbersOf(context.facts, 'noiseHz', 'frequency').filter((value) => value > 0)
    const isMeasured =
      numbersOf(context.facts, 'noiseSourceOhm', 'resistance').length > 0 &&
      numbersOf(context.facts, 'noiseLoadOhm', 'resistance').length > 0
    if (isMeasured || hz.length === 0 || context.outcome.noiseFrom === undefined) return undefined
    const ends = endsOf(context, hz)
    if (ends === undefined) return undefined
    const least = 20 * Math.log10(ends.load.least / ends.source.most)
    const most = 20 * Math.log10(ends.load.most / ends.source.least)
    const figure = `${ends.words} LC − CL = 20·log10(Rl/Rs) = ${db(least)} to ${db(most)}.`
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

const clamp: Rule = {
  id: 'clamp',
  advisesPart: false,
  say: () => ({
    title: 'What the clamp says of the loop',
    text: `A clamp of 100 Ω lowers the current by ${db(clampFallDb({ clampOhm: 100, loopOhm: 50 }))} in a loop of 50 Ω. In one of 300 Ω it is ${db(clampFallDb({ clampOhm: 100, loopOhm: 300 }))}. A strong effect: the loop is low, and an inductor or choke comes first. None in two places a quarter wave apart, inside its band and without direct current: the loop is high. Or it is another cable. A reactive loop can even show a gain.`,
    basis: [DERIVED, PRACTICE],
    missing: ['impedance of the clamp at that frequency'],
  }),
}

/** Rules about what stands before and behind the noise. */
export const CLASS_RULES: readonly Rule[] = [lineClass, clamp]
