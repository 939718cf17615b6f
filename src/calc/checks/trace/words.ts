/** What the trace check says. */
import { bandwidthsAt, methodLineById } from '../../../reference/method-lines.ts'
import { FIELD_OF_ALL } from '../../explain/field-need.ts'
import { notKnown, waitingFor } from '../../explain/sentence.ts'
import { missingInputs, nameOf, needsOf } from '../../line/missing.ts'
import { counted } from '../../quantity/counted.ts'
import { formatEstimate, formatExact, formatQuantity } from '../../quantity/format.ts'
import { spanOf } from '../../trace/unread.ts'
import type { Basis, Cell, Finding, Step, Success } from '../../types.ts'
import type { TraceFigures } from './figures.ts'
import { OWN_LIMIT, type TraceGiven, traceInputs } from './inputs.ts'
import { tracePlot } from './plot.ts'
import type { TraceSetup } from './setup.ts'
import { limitSources, standingFindings } from './standing-words.ts'

const exact = (x: number) => formatExact(x, 'decibel')
const over = (x: number) => formatEstimate(Math.abs(x), 'decibel', x > 0 ? 'least' : 'most')
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)

const lackName = (key: string): string => {
  const input = traceInputs.find((one) => one.key === key)
  return input === undefined ? key : nameOf(input)
}

export function explainTrace(given: TraceGiven, figures: TraceFigures): Success {
  const { setup, judged, verdict, values } = figures
  const cell = (key: string): Cell => {
    const si = values[key]
    return si === undefined ? { is: 'none', why: whyNone(setup) } : { is: 'si', si }
  }
  const basis = basisOf(given, figures)
  return {
    ok: true,
    verdict,
    ...saidOf(given, figures),
    ...(verdict === 'ok' ? { answers: 'number' as const } : {}),
    findings: [
      ...(setup === undefined || judged === undefined ? [] : findingsOf(given, figures, setup)),
      ...standingFindings(given),
    ],
    outputs: Object.fromEntries(
      ['neededDb', 'worstExcessDb', 'worstAtHz'].map((key) => [key, { cell: cell(key), basis }]),
    ),
    bounds: [],
    rungs: [],
    pictures: setup === undefined || judged === undefined ? [] : [tracePlot(setup, judged)],
    cautions: [],
  }
}

const whyNone = (setup: TraceSetup | undefined): string => {
  const [lack] = setup?.lacks ?? []
  if (lack !== undefined) return `needs ${lackName(lack)}`
  return setup === undefined ? 'needs a trace and a limit' : 'no point lies inside the span of the limit'
}

function saidOf(given: TraceGiven, figures: TraceFigures): Pick<Success, 'headline' | 'needs'> {
  const { setup, values } = figures
  const { worstExcessDb, worstAtHz, neededDb } = values
  if (setup === undefined) {
    const missing = missingInputs(traceInputs, given)
    if (missing.length > 0) return waitingFor(missing)
    return notKnown(traceInputs, given.ownHz === undefined ? 'ownHz' : 'ownDb', 'the corners of your line.')
  }
  const { limit } = setup.reading
  if (figures.isStale) return staleSaid(given, figures, setup)
  if (worstExcessDb === undefined || worstAtHz === undefined)
    return { headline: `Not known: no point of the trace lies inside the span of ${limit.name}.` }
  const worst = `worst ${over(worstExcessDb)} ${sideWords(setup, worstExcessDb)} at ${hertz(worstAtHz)}`
  const [lack] = setup.lacks
  if (setup.isOtherCable)
    return { headline: `Not known for this line: the clamp showed another cable or the box; the trace is ${worst}.` }
  if (lack !== undefined) {
    const needs = needsOf(traceInputs, lack)
    return {
      headline: `Not known: needs ${lackName(lack)}. As read it is ${worst}.`,
      ...(needs === undefined ? {} : { needs }),
    }
  }
  if (figures.isPartial)
    return {
      headline: `With care: nothing must come off at ${placesWords(setup)}, ${worst}, ${exact(given.marginDb)} margin kept. The rest of ${limit.name} was not read.`,
    }
  if (neededDb === undefined || neededDb <= 0)
    return { headline: `Nothing must come off: ${worst}, ${exact(given.marginDb)} margin kept.` }
  return {
    headline: `${formatEstimate(neededDb, 'decibel', 'least')} must come off: ${worst}, ${exact(given.marginDb)} margin.`,
  }
}

const placesWords = ({ spectrum: { hz } }: TraceSetup): string =>
  hz.length === 1 ? 'this one point' : `these ${hz.length} points`

function staleSaid(
  given: TraceGiven,
  { values }: TraceFigures,
  setup: TraceSetup,
): Pick<Success, 'headline' | 'needs'> {
  const { worstExcessDb: worst, worstAtHz } = values
  const tail =
    worst === undefined || worstAtHz === undefined
      ? ''
      : ` On these it is worst ${over(worst)} ${sideWords(setup, worst)} at ${hertz(worstAtHz)}.`
  return notKnown(
    traceInputs,
    'traceSettledFor',
    `the trace opened. Of its ${counted(given.traceRowCount ?? 0, 'row')} a few stand here, taken under another limit, margin or reading.${tail}`,
  )
}

function sideWords({ reading: { limit } }: TraceSetup, excessDb: number): string {
  if (limit.side === 'susceptibility')
    return excessDb > 0 ? 'short of what has to be withstood' : 'more than has to be withstood'
  return excessDb > 0 ? 'over the limit' : 'under the limit'
}

function findingsOf(
  given: TraceGiven,
  { values, judged, isPartial }: TraceFigures,
  setup: TraceSetup,
): readonly Finding[] {
  const said: Finding[] = []
  const { reading, spectrum, lacks } = setup
  const { overCount = 0, judgedCount = 0 } = judged ?? {}
  const outside = spectrum.hz.length - judgedCount
  if (judgedCount > 0)
    said.push({
      verdict: overCount > 0 ? 'marginal' : 'ok',
      sentence: `${overCount} of ${judgedCount} points ${overCount === 1 ? 'is' : 'are'} ${reading.limit.side === 'emission' ? 'over the limit' : 'short of it'}.`,
    })
  if (isPartial) {
    const { fromHz, toHz } = spanOf(reading.limit)
    said.push({
      verdict: 'unknown',
      sentence: `${reading.limit.name} reaches from ${hertz(fromHz)} to ${hertz(toHz)}: nothing is said of what lies beside and between the points.`,
    })
  }
  if (outside > 0)
    said.push({
      verdict: 'unknown',
      sentence: `${outside} ${outside === 1 ? 'point lies' : 'points lie'} outside the span of the limit and ${outside === 1 ? 'was' : 'were'} not judged.`,
    })
  if (lacks.includes('clamp') && !setup.isOtherCable)
    said.push({
      verdict: 'unknown',
      sentence: FIELD_OF_ALL,
    })
  if (setup.isStrict)
    said.push({
      verdict: 'marginal',
      sentence: `The limit is written for ${reading.limit.reads} and the trace was read with ${given.detector}, which reads as much or more: the need may be less.`,
    })
  const at = judged && judged.worstAt >= 0 ? (spectrum.hz[judged.worstAt] as number) : undefined
  const allowed = at === undefined ? [] : bandwidthsAt(reading.limit, at)
  if (
    reading.bandwidthHz !== undefined &&
    reading.emission !== undefined &&
    allowed.length > 0 &&
    !allowed.includes(reading.bandwidthHz)
  )
    said.push({
      verdict: 'marginal',
      sentence: `Read in ${hertz(reading.bandwidthHz)}, brought to ${allowed.map(hertz).join(' or ')} as ${reading.emission} emission: measure the worst points again in the bandwidth of the method.`,
    })
  if ((values['neededDb'] ?? 0) > 100)
    said.push({
      verdict: 'marginal',
      sentence:
        'More than 100 dB is beyond what one connector holds in practice: look for the source or the path first.',
    })
  return said
}

function basisOf(given: TraceGiven, { values, judged, setup }: TraceFigures): Basis {
  const published = methodLineById(given.limit ?? '')
  const isOwn = given.limit === OWN_LIMIT
  return {
    steps: stepsOf(given, values, judged, setup),
    assumptions: [
      isOwn && given.ownBandwidthHz === undefined
        ? 'trace and limit are read in the same bandwidth'
        : 'the emission lasts through the sweep: a slow or single event is read too low',
      ...(isOwn && given.ownDetector === undefined ? ['trace and limit are read with the same detector'] : []),
      ...(published?.isRelaxed ? ['the nominal voltage is that of the equipment'] : []),
      ...(published ? [published.note] : []),
    ],
    sources: [{ id: 'derived', standing: 'derived' }, ...limitSources(given)],
  }
}

function stepsOf(
  given: TraceGiven,
  values: TraceFigures['values'],
  judged: TraceFigures['judged'],
  setup: TraceSetup | undefined,
): readonly Step[] {
  const needed = values['neededDb']
  if (needed === undefined || judged === undefined || setup === undefined || judged.neededAt < 0) return []
  const level = formatQuantity(judged.levelDb[judged.neededAt] as number, 'decibel', 6)
  const limit = formatQuantity(judged.limitDb[judged.neededAt] as number, 'decibel', 6)
  const [first, second] = setup.reading.limit.side === 'emission' ? [level, limit] : [limit, level]
  return [
    {
      formula:
        setup.reading.limit.side === 'emission'
          ? 'needed = max(0, measured − limit + margin)'
          : 'needed = max(0, has to be withstood − upset level + margin)',
      withNumbers: `${first} − ${second} + ${exact(given.marginDb)}`,
      si: needed,
      quantity: 'decibel',
    },
  ]
}
