/** What the filter check says. */
import { lackSentence } from '../../explain/elements.ts'
import { waitingFor } from '../../explain/sentence.ts'
import { BENCH_LOAD, BENCH_SOURCE } from '../../network/circuit.ts'
import { CORNER_TO_HZ, type Ends } from '../../network/shape.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Cell, Finding, Source, Success } from '../../types.ts'
import { worstFirst } from '../../verdict.ts'
import { chokeAssumptions, chokeFindings, conversionBasis } from './choke-words.ts'
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
import { filterSaid } from './sentence.ts'

const SOURCES: Basis['sources'] = [
  { id: 'paul', clause: 'chain matrices', standing: 'memory' },
  { id: 'derived', clause: 'shared bond; checked against ngspice', standing: 'derived' },
]
const BENCH_SOURCE_ROW: Source = { id: 'S7', clause: 'foreword', standing: 'read' }

const db = (x: number) => formatQuantity(x, 'decibel', 4)
const hertz = (x: number) => formatQuantity(x, 'frequency', 4)
const ohms = (x: number) => formatQuantity(x, 'resistance', 4)

export function explainFilter(given: FilterGiven, figures: FilterFigures): Success {
  const { filtered, missing, verdict } = figures
  if (filtered === undefined) {
    return {
      ok: true,
      verdict,
      ...waitingFor(missing),
      findings: [],
      outputs: {},
      bounds: [],
      rungs: [],
      pictures: [],
      cautions: [],
    }
  }
  const findings = worstFirst([
    ...findingsOf(filtered),
    ...chokeFindings(filtered, figures.values['chokeConversionDb']),
  ])
  const shown: Ends = filtered.ends ?? { source: BENCH_SOURCE, load: BENCH_LOAD }
  return {
    ok: true,
    verdict,
    ...filterSaid(given, figures, filtered),
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

/** Of 788 random filters that lift by 3 dB or more, a search 25 times as fine finds more in 15, from 18 MHz up: most of parts without losses. */
const GAIN_SEARCHED =
  'searched from 10 Hz to 10 GHz in steps of 1.4 %: a sharper resonance, as parts without losses have, may be missed'

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
  say('worstInsertionLossDb', boxBasis(q))
  say('benchInsertionLossDb', benchBasis(q.bench), noHz)
  if (q.ends) {
    const basis = cornerBasis(q.ends)
    say('firstCornerHz', basis, `never 3 dB above its low-frequency loss up to ${hertz(CORNER_TO_HZ)}`)
    say('cornerHz', basis, `does not stay 3 dB down up to ${hertz(CORNER_TO_HZ)}`)
  }
  say('localSlopeDbPerDecade', assuming('central difference on the curve at the frequency that governs'))
  say('peakGainDb', assuming(GAIN_SEARCHED))
  say('peakHz', assuming(GAIN_SEARCHED))
  say('chokeConversionDb', conversionBasis(q))
  say('asymptoteDbPerDecade', {
    steps: [],
    assumptions: ['ideal parts, far above every corner'],
    sources: [{ id: 'S1', standing: 'read' }],
  })
  return out
}

const assuming = (what: string): Basis => ({ steps: [], assumptions: [what], sources: SOURCES })

function findingsOf(q: Filtered): readonly Finding[] {
  return [
    ...lackFindings(q),
    ...shortedFinding(q),
    ...gainFinding(q),
    ...dipFindings(q),
    ...ceilingFinding(q),
    ...nominalFinding(q),
  ]
}

const lackFindings = ({ lacks }: Filtered): readonly Finding[] =>
  lacks.map((lack) => ({ verdict: 'unknown', sentence: lackSentence(lack) }))

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

function gainFinding({ gain, boxGain, lacks }: Filtered): readonly Finding[] {
  const said = gain !== undefined && gainVerdict(gain) === gainVerdict(boxGain) ? gain : boxGain
  if (said === undefined || said.gainDb < GAIN_SAID_DB) return []
  const from = said.sourceOhm === undefined ? '' : ` from ${ohms(said.sourceOhm)}`
  const corner = said === gain ? '' : ' with its parts at an end of their tolerance'
  return [
    {
      // Beside a part whose curve is not known the resonance is only that of the rest.
      verdict: lacks.length > 0 ? 'unknown' : gainVerdict(said),
      sentence: `Amplifies by ${db(said.gainDb)} at ${hertz(said.atHz)}${from}${corner}: a resonance. Keep it off the signal, its harmonics and the supply ripple, or damp it.`,
    },
  ]
}

/** Where the loss comes back after the corner: worth knowing, and no matter of the need unless the noise is there. */
function dipFindings({ curve }: Filtered): readonly Finding[] {
  const { corners, dips } = curve()
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

function nominalFinding({ neededDb, worst, boxWorst }: Filtered): readonly Finding[] {
  return neededDb === undefined || worst === undefined || boxWorst !== undefined
    ? []
    : [
        {
          verdict: 'ok',
          sentence:
            'Judged for the parts as entered, without tolerance, temperature, voltage and age: unequal halves, or a part without a size.',
        },
      ]
}

function lossBasis(q: Filtered): Basis {
  const { worst, ends, isSeveral } = q
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
    assumptions: [
      ...(isSeveral ? ['the lowest over every source impedance and frequency given'] : []),
      ...chokeAssumptions(q),
    ],
    sources: SOURCES,
  }
}

function boxBasis({ boxWorst }: Filtered): Basis {
  return {
    steps: boxWorst
      ? [
          {
            formula:
              'the lowest loss with every capacitor from k_low to k_high and every inductor from L to L·(1 + tol)/(1 − tol)',
            withNumbers: `Zs = ${ohms(boxWorst.source.ohm)}, f = ${hertz(boxWorst.hz)}`,
            si: boxWorst.db,
            quantity: 'decibel',
          },
        ]
      : [],
    assumptions: ['the inside of the box too, not only its corners', 'the inductance entered is its least'],
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
