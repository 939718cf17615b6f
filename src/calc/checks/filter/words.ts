/** What the filter check says. */
import { nameOf } from '../../line/missing.ts'
import { BENCH_LOAD, BENCH_SOURCE } from '../../network/circuit.ts'
import { CORNER_TO_HZ, type Ends } from '../../network/shape.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Cell, Finding, Source, Success } from '../../types.ts'
import { worstFirst } from '../../verdict.ts'
import {
  type Filtered,
  type FilterFigures,
  GAIN_SAID_DB,
  gainVerdict,
  PRACTICAL_CEILING_DB,
  type Worst,
} from './figures.ts'
import type { FilterGiven } from './inputs.ts'
import { lossPlot } from './plot.ts'

const SOURCES: Basis['sources'] = [
  { id: 'paul', clause: 'chain matrices', standing: 'memory' },
  { id: 'derived', clause: 'shared bond; checked against ngspice', standing: 'derived' },
]
const BENCH_SOURCE_ROW: Source = { id: 'S7', clause: 'foreword', standing: 'read' }

const db = (x: number) => formatQuantity(x, 'decibel', 4)
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const ohms = (x: number) => formatQuantity(x, 'resistance', 4)

export function explainFilter(_given: FilterGiven, figures: FilterFigures): Success {
  const { filtered, missing, verdict } = figures
  if (filtered === undefined) {
    return {
      ok: true,
      headline: `Enter ${missing.map(nameOf).join(' and ')}.`,
      findings: [],
      outputs: {},
      bounds: [],
      rungs: [],
      pictures: [],
      cautions: [],
    }
  }
  const findings = worstFirst(findingsOf(filtered))
  const shown: Ends = filtered.ends ?? { source: BENCH_SOURCE, load: BENCH_LOAD }
  return {
    ok: true,
    ...(verdict === undefined ? {} : { verdict }),
    headline: headlineOf(filtered),
    findings,
    outputs: outputsOf(figures, filtered),
    bounds: [],
    rungs: [],
    pictures: [
      lossPlot(
        filtered,
        shown,
        findings.map(({ sentence }) => sentence),
      ),
    ],
    cautions: ['bench-figure', 'hipot'],
  }
}

type Said = { readonly cell: Cell; readonly basis: Basis }

function outputsOf({ values }: FilterFigures, q: Filtered): Readonly<Record<string, Said>> {
  const out: Record<string, Said> = {}
  const say = (key: string, basis: Basis, why?: string): void => {
    const si = values[key]
    if (si !== undefined) out[key] = { cell: { is: 'si', si }, basis }
    else if (why !== undefined) out[key] = { cell: { is: 'none', why }, basis }
  }
  const noHz = 'enter the frequency that matters'
  if (q.ends) say('insertionLossDb', lossBasis(q), noHz)
  say('benchInsertionLossDb', benchBasis(q.bench), noHz)
  if (q.ends) {
    const basis = cornerBasis(q.ends)
    say('firstCornerHz', basis, `never 3 dB above its low-frequency loss up to ${hertz(CORNER_TO_HZ)}`)
    say('cornerHz', basis, `does not stay 3 dB down up to ${hertz(CORNER_TO_HZ)}`)
  }
  say('localSlopeDbPerDecade', assuming('central difference on the curve at the frequency that governs'))
  say('peakGainDb', assuming('searched from 10 Hz to 10 GHz'))
  say('peakHz', assuming('searched from 10 Hz to 10 GHz'))
  say('asymptoteDbPerDecade', {
    steps: [],
    assumptions: ['ideal parts, far above every corner'],
    sources: [{ id: 'S1', standing: 'read' }],
  })
  return out
}

const assuming = (what: string): Basis => ({ steps: [], assumptions: [what], sources: SOURCES })

function findingsOf(q: Filtered): readonly Finding[] {
  return [...shortedFinding(q), ...gainFinding(q), ...dipFindings(q), ...ceilingFinding(q), ...nominalFinding(q)]
}

function shortedFinding({ hasShortedDc }: Filtered): readonly Finding[] {
  return hasShortedDc
    ? [
        {
          verdict: 'unknown',
          sentence: 'At DC the inductance across the load shorts it, filter or not: there is no loss to give.',
        },
      ]
    : []
}

function gainFinding({ gain }: Filtered): readonly Finding[] {
  if (gain === undefined || gain.gainDb < GAIN_SAID_DB) return []
  return [
    {
      verdict: gainVerdict(gain),
      sentence: `Amplifies by ${db(gain.gainDb)} at ${hertz(gain.atHz)}: a resonance. Keep it off the signal, its harmonics and the supply ripple, or damp it.`,
    },
  ]
}

/** Where the loss comes back after the corner: worth knowing, and no matter of the need unless the noise is there. */
function dipFindings({ corners, dips }: Filtered): readonly Finding[] {
  const { firstHz, lastingHz } = corners ?? {}
  if (firstHz === undefined) return []
  const back =
    lastingHz === undefined
      ? `After the corner at ${hertz(firstHz)} it falls back below 3 dB and does not stay up to ${hertz(CORNER_TO_HZ)}.`
      : lastingHz > firstHz * 1.001
        ? `Between ${hertz(firstHz)} and ${hertz(lastingHz)} it falls back below 3 dB once or more.`
        : undefined
  const all = [
    ...(back === undefined ? [] : [back]),
    ...dips.map((dip) => `Falls back to ${db(dip.db)} at ${hertz(dip.hz)}.`),
  ]
  return all.map((sentence) => ({ verdict: 'ok', sentence }))
}

function ceilingFinding({ worst, neededDb }: Filtered): readonly Finding[] {
  if (worst === undefined || worst.db <= PRACTICAL_CEILING_DB) return []
  return [
    {
      verdict: neededDb !== undefined && neededDb > PRACTICAL_CEILING_DB ? 'marginal' : 'ok',
      sentence: `${db(worst.db)} is mathematics: above about 100 dB leakage past the connector governs, not the filter.`,
    },
  ]
}

function nominalFinding({ neededDb, worst }: Filtered): readonly Finding[] {
  return neededDb === undefined || worst === undefined
    ? []
    : [
        {
          verdict: 'ok',
          sentence: 'Judged for the parts as entered: tolerance, temperature, voltage and age are the window check’s.',
        },
      ]
}

function headlineOf({ frequenciesHz, ends, worst, bench, neededDb, gain }: Filtered): string {
  if (frequenciesHz.length === 0) return 'Enter the frequency that matters.'
  if (!ends || !worst)
    return `Bench figure only${bench ? ` at ${hertz(bench.hz)}` : ''}: enter the noise source and load for your circuit.`
  const where = `at ${hertz(worst.hz)}, from ${ohms(worst.source.ohm)}`
  if (neededDb === undefined) return worst.db < 0 ? `Amplifies ${where}.` : `Attenuation ${where}.`
  const spare = worst.db - neededDb
  if (spare < 0) return `${db(-spare)} short of ${db(neededDb)}, ${where}.`
  const rings =
    gain !== undefined && gainVerdict(gain) !== 'ok'
      ? ` But it amplifies by ${db(gain.gainDb)} at ${hertz(gain.atHz)}.`
      : ''
  return `${db(spare)} to spare over ${db(neededDb)} with the parts as entered, ${where}.${rings}`
}

function lossBasis({ worst, ends, isSeveral }: Filtered): Basis {
  const steps = worst
    ? [
        {
          formula: 'IL = 20·log10 |V without / V with|, chain matrices of the parts between Zs and ZL',
          withNumbers: `Zs = ${ohms(worst.source.ohm)}, ZL = ${ohms(ends?.load.ohm ?? 0)}, f = ${hertz(worst.hz)}`,
          si: worst.db,
          quantity: 'decibel' as const,
        },
      ]
    : []
  return {
    steps,
    assumptions: isSeveral ? ['the lowest over every source impedance and frequency given'] : [],
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
