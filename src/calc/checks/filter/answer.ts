/** Words, figures and plot for a filter whose parts are known. */
import { logGrid, lossDb, sweepLossInto } from '../../network/chain.ts'
import {
  BENCH_LOAD,
  BENCH_SOURCE,
  type FilterCircuit,
  type NoiseLoad,
  type NoiseSource,
} from '../../network/circuit.ts'
import {
  CORNER_TO_HZ,
  dipsAfter,
  type Ends,
  findCorners,
  localSlopeDbPerDecade,
  worstGain,
} from '../../network/shape.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Cell, Finding, Picture, Result, Source, Success, Verdict } from '../../types.ts'
import { asymptoteDbPerDecade } from '../slope.ts'

export type FilterQuestion = {
  readonly circuit: FilterCircuit
  readonly sources: readonly NoiseSource[]
  readonly load: NoiseLoad | undefined
  readonly frequenciesHz: readonly number[]
  /** DC was asked for across a load inductance */
  readonly hasShortedDc: boolean
  readonly neededDb: number | undefined
  readonly signalToHz: number | undefined
}

/** Above this a figure is mathematics, not hardware. */
const PRACTICAL_CEILING_DB = 100
/** A fall of this much after the corner is worth a word. */
const DIP_DB = 3
const PLOT_POINTS = 241
/** Room above the practical ceiling, so that a curve is seen to pass it. */
const PLOT_TO_DB = 120

const SHORTED: Finding = {
  verdict: 'unknown',
  sentence: 'At DC the inductance across the load shorts it, filter or not: there is no loss to give.',
}
const CUT_FLAG = `Drawn to ${PLOT_TO_DB} dB: above about ${PRACTICAL_CEILING_DB} dB leakage past the connector governs.`

const SOURCES: Basis['sources'] = [
  { id: 'paul', clause: 'chain matrices', standing: 'memory' },
  { id: 'derived', clause: 'shared bond; checked against ngspice', standing: 'derived' },
]
const BENCH_SOURCE_ROW: Source = { id: 'S7', clause: 'foreword', standing: 'read' }

type Worst = { readonly db: number; readonly hz: number; readonly source: NoiseSource }

/** Lowest loss over the frequencies and source impedances given. */
function worstLoss(
  circuit: FilterCircuit,
  sources: readonly NoiseSource[],
  load: NoiseLoad,
  hzs: readonly number[],
): Worst | undefined {
  let worst: Worst | undefined
  for (const source of sources) {
    for (const hz of hzs) {
      const db = lossDb(circuit, source, load, hz)
      if (!worst || db < worst.db) worst = { db, hz, source }
    }
  }
  return worst
}

const db = (x: number) => formatQuantity(x, 'decibel', 4)
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const ohms = (x: number) => formatQuantity(x, 'resistance', 4)

/** The whole answer: outputs, verdict against the need, findings, plot. */
export function describeFilter(q: FilterQuestion): Result {
  const { circuit, load } = q
  const ends: Ends | undefined = load && q.sources[0] ? { source: governingSource(q, load), load } : undefined
  const worst = load ? worstLoss(circuit, q.sources, load, q.frequenciesHz) : undefined
  const bench = worstLoss(circuit, [BENCH_SOURCE], BENCH_LOAD, q.frequenciesHz)
  const shown: Ends = ends ?? { source: BENCH_SOURCE, load: BENCH_LOAD }
  const outputs: Record<string, { cell: Cell; basis: Basis }> = {}
  if (ends)
    outputs['insertionLossDb'] = {
      cell: cellOr(worst?.db, 'enter the frequency that matters'),
      basis: lossBasis(q, worst),
    }
  outputs['benchInsertionLossDb'] = {
    cell: cellOr(bench?.db, 'enter the frequency that matters'),
    basis: benchBasis(bench),
  }
  const findings: Finding[] = q.hasShortedDc ? [SHORTED] : []
  if (ends) {
    const corners = findCorners(circuit, ends)
    const basis = cornerBasis(ends)
    outputs['firstCornerHz'] = {
      cell: cellOr(corners.firstHz, `never 3 dB above its low-frequency loss up to ${hertz(CORNER_TO_HZ)}`),
      basis,
    }
    outputs['cornerHz'] = {
      cell: cellOr(corners.lastingHz, `does not stay 3 dB down up to ${hertz(CORNER_TO_HZ)}`),
      basis,
    }
    if (corners.lastingHz !== undefined || corners.firstHz !== undefined)
      findings.push(...dipFindings(circuit, ends, corners.firstHz, corners.lastingHz))
    if (worst) {
      outputs['localSlopeDbPerDecade'] = {
        cell: { is: 'si', si: localSlopeDbPerDecade(circuit, { source: worst.source, load: ends.load }, worst.hz) },
        basis: {
          steps: [],
          assumptions: ['central difference on the curve at the frequency that governs'],
          sources: SOURCES,
        },
      }
    }
    const gain = worstGain(circuit, ends)
    if (gain) {
      const gainBasis: Basis = { steps: [], assumptions: ['searched from 10 Hz to 10 GHz'], sources: SOURCES }
      outputs['peakGainDb'] = { cell: { is: 'si', si: gain.gainDb }, basis: gainBasis }
      outputs['peakHz'] = { cell: { is: 'si', si: gain.atHz }, basis: gainBasis }
      if (gain.gainDb >= 0.1) {
        findings.unshift({
          verdict: gain.gainDb >= 3 ? 'fails' : 'marginal',
          sentence: `Amplifies by ${db(gain.gainDb)} at ${hertz(gain.atHz)}: a resonance. Keep it off the signal, its harmonics and the supply ripple, or damp it.`,
        })
      }
    }
  }
  outputs['asymptoteDbPerDecade'] = {
    cell: { is: 'si', si: asymptoteDbPerDecade(circuit.topology) },
    basis: {
      steps: [],
      assumptions: ['ideal parts, far above every corner'],
      sources: [{ id: 'S1', standing: 'read' }],
    },
  }
  const verdict = verdictOf(q, worst, ends !== undefined)
  if (worst && worst.db > PRACTICAL_CEILING_DB) {
    findings.push({
      verdict: 'marginal',
      sentence: `${db(worst.db)} is mathematics: above about 100 dB leakage past the connector governs, not the filter.`,
    })
  }
  return {
    ok: true,
    ...(verdict ? { verdict } : {}),
    headline: headlineOf(q, worst, bench, ends !== undefined),
    findings,
    outputs,
    bounds: [],
    rungs: [],
    pictures: [plotOf(q, shown, ends !== undefined, findings)],
    cautions: ['bench-figure', 'hipot'],
  } satisfies Success
}

/** With several source impedances the curve drawn is the one that governs at the frequency that matters. */
function governingSource(q: FilterQuestion, load: NoiseLoad): NoiseSource {
  const worst = worstLoss(q.circuit, q.sources, load, q.frequenciesHz.length > 0 ? q.frequenciesHz : [1e6])
  return worst?.source ?? BENCH_SOURCE
}

function cellOr(si: number | undefined, why: string): Cell {
  return si === undefined ? { is: 'none', why } : { is: 'si', si }
}

function verdictOf(q: FilterQuestion, worst: Worst | undefined, hasEnds: boolean): Verdict | undefined {
  if (q.neededDb === undefined) return undefined
  if (!hasEnds || !worst) return 'unknown'
  return worst.db >= q.neededDb ? 'ok' : 'fails'
}

function headlineOf(q: FilterQuestion, worst: Worst | undefined, bench: Worst | undefined, hasEnds: boolean): string {
  if (q.frequenciesHz.length === 0) return 'Enter the frequency that matters.'
  if (!hasEnds || !worst)
    return `Bench figure only${bench ? ` at ${hertz(bench.hz)}` : ''}: enter the noise source and load for your circuit.`
  const where = `at ${hertz(worst.hz)}, from ${ohms(worst.source.ohm)}`
  if (q.neededDb === undefined) return worst.db < 0 ? `Amplifies ${where}.` : `Attenuation ${where}.`
  const spare = worst.db - q.neededDb
  return spare >= 0
    ? `${db(spare)} to spare over ${db(q.neededDb)}, ${where}.`
    : `${db(-spare)} short of ${db(q.neededDb)}, ${where}.`
}

function dipFindings(
  circuit: FilterCircuit,
  ends: Ends,
  firstHz: number | undefined,
  lastingHz: number | undefined,
): Finding[] {
  const out: Finding[] = []
  if (firstHz !== undefined && (lastingHz === undefined || lastingHz > firstHz * 1.001)) {
    out.push({
      verdict: 'marginal',
      sentence:
        lastingHz === undefined
          ? `After the corner at ${hertz(firstHz)} it falls back below 3 dB and does not stay up to ${hertz(CORNER_TO_HZ)}.`
          : `Between ${hertz(firstHz)} and ${hertz(lastingHz)} it falls back below 3 dB once or more.`,
    })
  }
  if (firstHz === undefined) return out
  for (const dip of dipsAfter(circuit, ends, firstHz, DIP_DB).slice(0, 3)) {
    out.push({ verdict: 'marginal', sentence: `Falls back to ${db(dip.db)} at ${hertz(dip.hz)}.` })
  }
  return out
}

function lossBasis(q: FilterQuestion, worst: Worst | undefined): Basis {
  const steps = worst
    ? [
        {
          formula: 'IL = 20·log10 |V without / V with|, chain matrices of the parts between Zs and ZL',
          withNumbers: `Zs = ${ohms(worst.source.ohm)}, ZL = ${ohms(q.load?.ohm ?? 0)}, f = ${hertz(worst.hz)}`,
          si: worst.db,
          quantity: 'decibel' as const,
        },
      ]
    : []
  const several = q.sources.length * Math.max(1, q.frequenciesHz.length) > 1
  return {
    steps,
    assumptions: several ? ['the lowest over every source impedance and frequency given'] : [],
    sources: SOURCES,
  }
}

function benchBasis(bench: Worst | undefined): Basis {
  return {
    steps: bench
      ? [
          {
            formula: 'the same, 50 Ω in and 50 Ω out',
            withNumbers: `f = ${hertz(bench.hz)}`,
            si: bench.db,
            quantity: 'decibel',
          },
        ]
      : [],
    assumptions: ['a production check (MIL-STD-220 convention): it says little about the installed filter'],
    sources: [BENCH_SOURCE_ROW, ...SOURCES],
  }
}

function cornerBasis(ends: Ends): Basis {
  return {
    steps: [],
    assumptions: [
      `3.01 dB above the loss at 0.1 Hz, source ${ohms(ends.source.ohm)}, load ${ohms(ends.load.ohm)}, found on the curve up to ${hertz(CORNER_TO_HZ)}`,
    ],
    sources: SOURCES,
  }
}

function plotOf(q: FilterQuestion, shown: Ends, hasEnds: boolean, findings: readonly Finding[]): Picture {
  const marks = q.frequenciesHz.filter((hz) => hz > 0)
  const low = Math.min(
    1e4,
    ...marks.map((f) => f / 10),
    q.signalToHz === undefined ? 1e4 : Math.max(1, q.signalToHz / 10),
  )
  const x = logGrid(Math.max(1, low), Math.max(1e9, ...marks.map((f) => f * 2)), PLOT_POINTS)
  const circuitY = new Float64Array(x.length)
  const benchY = new Float64Array(x.length)
  sweepLossInto(q.circuit, BENCH_SOURCE, BENCH_LOAD, x, benchY)
  sweepLossInto(q.circuit, shown.source, shown.load, x, circuitY)
  const benchCurve = { id: 'bench', label: 'bench 50 Ω', style: 'dashed' as const, x, y: benchY }
  const yours = { id: 'circuit', label: 'your circuit', style: 'solid' as const, x, y: circuitY }
  const needed = q.neededDb
  const isCut = [...circuitY, ...benchY].some((y) => y > PLOT_TO_DB)
  return {
    is: 'plot',
    title: 'Insertion loss',
    xLabel: 'frequency',
    xQuantity: 'frequency',
    xScale: 'log',
    yLabel: 'dB',
    yQuantity: 'decibel',
    yCeiling: PLOT_TO_DB,
    curves: hasEnds ? [yours, benchCurve] : [benchCurve],
    bands: q.signalToHz === undefined ? [] : [{ label: 'signal', from: x[0] as number, to: q.signalToHz }],
    limits:
      needed === undefined
        ? []
        : marks.map((f) => ({ label: `need ${db(needed)}`, x: f, y: needed, must: 'least' as const })),
    flags: [...findings.map((f) => f.sentence), ...(isCut ? [CUT_FLAG] : [])],
  }
}
