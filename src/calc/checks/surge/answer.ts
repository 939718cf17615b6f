/** The whole answer of a surge: runs, judgements, figures, pictures. */

import { formatQuantity } from '../../quantity/format.ts'
import { cautionsOf } from '../../surge/cautions.ts'
import { placementFinding, polarityFinding } from '../../surge/compare.ts'
import { type Figures, runFigures, verdictFigures } from '../../surge/figures.ts'
import { shapePlot, voltsPlot } from '../../surge/plots.ts'
import { within } from '../../surge/progress.ts'
import { surgeLadder, surgeRungs } from '../../surge/rungs.ts'
import { type RunFigures, runOnce, worseRun } from '../../surge/runs.ts'
import { circuitOf, type SurgeSetup, variantsOf } from '../../surge/setup.ts'
import { type SignalAnswer, signalAnswer } from '../../surge/signal.ts'
import { sizeRows, sizingTable } from '../../surge/sizing.ts'
import { stackFindings } from '../../surge/stack.ts'
import { breakdownAt } from '../../surge/suppressor.ts'
import { factorOf, type Usage, usageOf } from '../../surge/usage.ts'
import { capacitorJudgement, circuitJudgement, type Judgement, suppressorJudgement } from '../../surge/verdicts.ts'
import type { Finding, Picture, Progress, Success, Verdict } from '../../types.ts'
import { worse, worstFirst } from '../../verdict.ts'
import type { SurgeGiven } from './inputs.ts'

type Changed = Parameters<typeof circuitOf>[2]

/** Volts and seconds as entered; the descriptor has filled every assumption. */
export function* answerSurge(given: SurgeGiven, setup: SurgeSetup): Generator<Progress, Success> {
  const factor = factorOf(setup.pulse)
  yield { doneFrac: 0.02 }
  const run = yield* within(worstRun(given, setup, factor), 0.02, 0.3)
  const isOneWay = setup.part !== undefined && !setup.part.bidirectional
  const other = isOneWay
    ? yield* within(worstRun(given, setup, factor, { sign: setup.sign === 1 ? -1 : 1 }), 0.3, 0.45)
    : undefined
  const hasCoil = setup.filter.inductanceH > 0
  const swapped =
    setup.part && hasCoil
      ? yield* within(
          worstRun(given, setup, factor, { placement: setup.placement === 'connector' ? 'behind' : 'connector' }),
          0.45,
          0.55,
        )
      : undefined
  const table = yield* within(sizing(given, setup, factor), 0.55, 1)
  yield { doneFrac: 1 }
  return describe(given, setup, { factor, run, other, swapped, table })
}

/** The worse of both ends of the breakdown spread. */
function* worstRun(
  given: SurgeGiven,
  setup: SurgeSetup,
  factor: number,
  changed?: Changed,
): Generator<Progress, RunFigures> {
  const { withstandV, ratedPulseW } = given
  const rating = ratedPulseW === undefined ? undefined : { ratedW: ratedPulseW, factor }
  const [first, second] = variantsOf(setup.part)
  const question = (suppressor: typeof first) => ({
    circuit: circuitOf(setup, suppressor, changed),
    shape: setup.pulse.shape,
    withstandV,
    rating,
  })
  const run = yield* within(runOnce(question(first)), 0, second ? 0.5 : 1)
  return second ? worseRun(run, yield* within(runOnce(question(second)), 0.5, 1)) : run
}

function* sizing(given: SurgeGiven, setup: SurgeSetup, factor: number): Generator<Progress, Picture | undefined> {
  const { busMaxV, withstandV } = given
  if (busMaxV === undefined || withstandV === undefined) return undefined
  const rows = yield* sizeRows({
    setup,
    busMaxV,
    withstandV,
    factor,
    ambientC: given.ambientC ?? 25,
    zeroC: given.derateZeroC ?? 150,
    like: {
      bidirectional: given.bidirectional ?? false,
      capacitanceF: setup.part?.capacitanceF ?? 0,
      leadH: setup.part?.leadH ?? 0,
    },
  })
  return sizingTable(rows)
}

type Worked = {
  readonly factor: number
  readonly run: RunFigures
  readonly other: RunFigures | undefined
  readonly swapped: RunFigures | undefined
  readonly table: Picture | undefined
}

type Judged = {
  readonly circuit: Judgement
  readonly suppressor: Judgement | undefined
  readonly capacitor: Judgement | undefined
  readonly signal: SignalAnswer
  readonly usage: Usage | undefined
}

function judgeRun(given: SurgeGiven, setup: SurgeSetup, run: RunFigures, factor: number): Judged {
  const { part, pulse } = setup
  const ambientC = given.ambientC ?? 25
  const usage = usageOf(run, { factor, ambientC, zeroC: given.derateZeroC ?? 150, repeats: pulse.repeats })
  const hotRiseV = part ? Math.max(0, breakdownAt({ breakdownV: part.mostV, tempC: ambientC }) - part.mostV) : 0
  return {
    usage,
    circuit: circuitJudgement({
      load: run.load,
      withstandV: given.withstandV,
      hotRiseV,
      heldWords: heldWords(run),
    }),
    suppressor: suppressorJudgement({
      part,
      usage,
      ratedPulseW: given.ratedPulseW,
      busMaxV: given.busMaxV,
      busSourceOhm: given.busSourceOhm ?? 0.1,
      lineKind: given.lineKind,
    }),
    capacitor: capacitorJudgement(run.capacitor, given.capacitorWithstandV),
    signal: signalAnswer({
      lineKind: given.lineKind,
      filter: setup.filter,
      hasSuppressor: part !== undefined,
      suppressorF: given.suppressorF,
      workingV: part?.standoffV,
    }),
  }
}

function heldWords({ excess }: RunFigures): string {
  if (!excess || excess.voltSec <= 0) return ''
  const through = `${formatQuantity(excess.voltSec * 1e6, 'number')} V·µs let through`
  return excess.isOpen
    ? `, and is still above at the end of the run (${through})`
    : `, and is above it until ${formatQuantity(excess.untilSec, 'time')} (${through})`
}

function describe(given: SurgeGiven, setup: SurgeSetup, worked: Worked): Success {
  const { run, other, factor } = worked
  const judged = judgeRun(given, setup, run, factor)
  const rungs = surgeRungs({
    run,
    part: setup.part,
    ambientC: given.ambientC ?? 25,
    withstandV: given.withstandV,
    capacitorWithstandV: given.capacitorWithstandV,
    busMaxV: given.busMaxV,
    lineKind: given.lineKind,
    sources: setup.pulse.sources,
  })
  const ladder = surgeLadder(rungs)
  const own = verdictOf(judged)
  const others = other ? verdictOf(judgeRun(given, setup, other, factor)) : own
  // the other polarity turns the verdict only when it is worse than this one
  const turned = others !== own && worse(others, own) === others
  const otherWay = other ? polarityFinding(run, other, setup.sign, turned ? others : 'ok') : undefined
  const findings = worstFirst([
    ...judged.circuit.findings,
    ...(judged.suppressor?.findings ?? []),
    ...(judged.capacitor?.findings ?? []),
    ...signalFindings(judged.signal),
    ...(otherWay ? [otherWay] : []),
    ...stackFindings({
      seriesCount: given.seriesCount ?? 1,
      part: setup.part,
      peakA: Math.abs(run.amps.value),
      isOverloaded: (judged.usage?.totalFrac ?? 0) > 1,
    }),
    ...remarks(given, setup, worked, judged.usage),
  ])
  const verdict = worse(turned && otherWay ? others : own, run.trace.isWhole ? 'ok' : 'unknown')
  const outputs: Figures = {
    ...runFigures({ run, pulse: setup.pulse, part: setup.part, usage: judged.usage, withstandV: given.withstandV }),
    ...verdictFigures({ ...judged, signal: signalFigure(judged.signal) }),
  }
  return {
    ok: true,
    verdict,
    headline: headlineOf(given, run, judged),
    findings,
    outputs,
    bounds: judged.signal.is === 'judged' ? judged.signal.bounds : [],
    rungs,
    pictures: [
      ladder,
      voltsPlot({
        pulse: setup.pulse,
        trace: run.trace,
        hasSuppressor: setup.part !== undefined,
        loadPeak: run.load,
        withstandV: given.withstandV,
      }),
      shapePlot(setup.pulse, setup.sign),
      ...(judged.signal.is === 'judged' && judged.signal.picture ? [judged.signal.picture] : []),
      ...(worked.table ? [worked.table] : []),
    ],
    cautions: cautionsOf(setup),
  }
}

const verdictOf = ({ circuit, suppressor, capacitor, signal }: Judged): Verdict =>
  [circuit.verdict, suppressor?.verdict, capacitor?.verdict, signal.is === 'judged' ? signal.verdict : undefined]
    .filter((v) => v !== undefined)
    .reduce<Verdict>(worse, 'ok')

function signalFindings(signal: SignalAnswer): readonly Finding[] {
  if (signal.is === 'none') return []
  return [
    { verdict: signal.verdict, sentence: signal.sentence },
    ...signal.hints.map((sentence): Finding => ({ verdict: 'ok', sentence })),
  ]
}

const SIGNAL_WORDS: Readonly<Record<Verdict, string>> = {
  ok: 'lives',
  marginal: 'above what is permitted',
  fails: 'overloaded',
  unknown: 'not known',
}

function signalFigure(signal: SignalAnswer): Figures[string] {
  if (signal.is === 'none')
    return {
      cell: { is: 'none', why: signal.why },
      basis: { steps: [], assumptions: [], sources: [{ id: 'derived', standing: 'derived' }] },
    }
  return { cell: { is: 'word', word: SIGNAL_WORDS[signal.verdict], verdict: signal.verdict }, basis: signal.basis }
}

/** What follows from the numbers without being a verdict. */
function remarks(
  given: SurgeGiven,
  setup: SurgeSetup,
  { run, swapped, table }: Worked,
  usage: Usage | undefined,
): Finding[] {
  const note = (sentence: string): Finding => ({ verdict: 'ok', sentence })
  const { row } = setup.pulse
  return [
    ...(run.trace.isWhole
      ? []
      : [
          {
            verdict: 'unknown',
            sentence: 'The circuit rings too fast and too long to be followed to the end.',
          } as const,
        ]),
    ...(run.overshoot && run.overshoot.volts > 0.01 * run.clamp.value
      ? [
          note(
            `The suppressor’s lead adds ${formatQuantity(run.overshoot.volts, 'voltage')} for ${formatQuantity(run.overshoot.sec, 'time')} in all while the current changes: shorten it.`,
          ),
        ]
      : []),
    ...(swapped ? [placementFinding(setup, run, swapped)] : []),
    ...(usage?.otherTrains ?? []).map(note),
    ...(table === undefined ? [note(tableWords(given))] : []),
    ...(row.levels.length === 0 && row.noLevelWhy !== undefined && row.id.startsWith('wf')
      ? [note('A cable-bundle waveform: never size one pin from a bundle current.')]
      : []),
    ...setup.pulse.assumed.map(note),
  ]
}

function tableWords({ busMaxV, withstandV }: SurgeGiven): string {
  if (busMaxV === undefined || withstandV === undefined)
    return 'Enter the highest line peak and what the circuit withstands to list the classes that would carry this pulse.'
  return `No class has a stand-off at ${formatQuantity(busMaxV, 'voltage')} and a breakdown below ${formatQuantity(withstandV, 'voltage')}: limit the bus in series, or strengthen the input.`
}

function headlineOf(given: SurgeGiven, run: RunFigures, { usage, suppressor }: Judged): string {
  const load = formatQuantity(run.load.value, 'voltage')
  const against =
    given.withstandV === undefined ? '' : ` against ${formatQuantity(given.withstandV, 'voltage')} withstood`
  if (!suppressor) return `No suppressor: the load peaks at ${load}${against}.`
  const used =
    usage?.totalFrac === undefined
      ? 'its rating is not judged'
      : `the suppressor uses ${formatQuantity(usage.totalFrac, 'fraction')} of its rating`
  return `The load peaks at ${load}${against}; ${used}.`
}
