/** The figures of the loading check for a capacitance on a kind of line. A figure without meaning for the kind is left out. */
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Basis, Cell, Source, Step } from '../types.ts'
import { bandLossDb, phaseLagDeg } from './band.ts'
import { bandCrossingSec, canDecaySec, i2cRiseSec } from './buses.ts'
import { bitSecOf, lineOhmOf, type SignalFacts, signalOhmOf } from './ceiling.ts'
import { combinedEdgeSec, riseSec } from './edge.ts'
import { type InductorEffect, lcLossDb } from './inductor.ts'
import { innerEyeFrac, jitterFrac } from './nrz.ts'
import { leastMaskMargin, type MaskPoint } from './return-loss.ts'

/** A capacitance the signal sees, with the filter inductor's effect if there is one. */
export type LoadedSignal = {
  readonly facts: SignalFacts
  readonly farads: number
  readonly inductor: InductorEffect | undefined
}

export type Figure = { readonly cell: Cell; readonly basis: Basis }
export type Figures = Readonly<Record<string, Figure>>

const show = (si: number, quantity: Quantity, digits = 4): string => formatQuantity(si, quantity, digits)

function figure(step: Step, facts: SignalFacts, assumptions: readonly string[] = []): Figure {
  return { cell: { is: 'si', si: step.si }, basis: basisOf(facts, [step], assumptions) }
}

function basisOf({ kind, signalOhm }: SignalFacts, steps: readonly Step[], assumptions: readonly string[]): Basis {
  const takesOhm = signalOhm === undefined && kind.signalOhm !== undefined
  const ohmSource: readonly Source[] = takesOhm && kind.signalOhm ? [kind.signalOhm.source] : []
  const ohmWords =
    takesOhm && kind.signalOhm
      ? [`signal resistance ${show(kind.signalOhm.ohm, 'resistance')}: ${kind.signalOhm.why}`]
      : []
  return {
    steps,
    assumptions: [...ohmWords, ...assumptions],
    sources: [{ id: 'derived', standing: 'derived' }, ...ohmSource],
  }
}

const lacking = (facts: SignalFacts, why: string): Figure => ({
  cell: { is: 'none', why },
  basis: basisOf(facts, [], []),
})

/** All figures that have a meaning for this kind. */
export function loadingFigures(signal: LoadedSignal): Figures {
  return {
    ...edgeFigure(signal),
    ...eyeFigures(signal),
    ...returnLossFigure(signal),
    ...impedanceFigure(signal),
    ...bandFigures(signal),
    ...dampingFigure(signal),
  }
}

/** The edge the signal has with this capacitance, in s: the same figure the criterion judges, where there is one. */
export function edgeOf({ facts, farads, inductor }: LoadedSignal): Step | undefined {
  const { kind } = facts
  const rule = kind.loading
  const ohm = signalOhmOf(facts)
  const c = show(farads, 'capacitance')
  if (rule.rule === 'slew') {
    const si = bandCrossingSec({ bandV: rule.bandV, farads, driverA: rule.driverA })
    const withNumbers = `${show(rule.bandV, 'voltage')} · ${c} / ${show(rule.driverA, 'current')}`
    return { formula: 't = V·C/I (±3 V band)', withNumbers, si, quantity: 'time' }
  }
  if (ohm === undefined) return undefined
  const r = show(ohm, 'resistance')
  switch (rule.rule) {
    case 'band-loss':
    case 'phase':
      return undefined
    case 'i2c-rise':
      return {
        formula: 't = 0.8473·R·C (30–70 %)',
        withNumbers: `0.8473 · ${r} · ${c}`,
        si: i2cRiseSec({ pullUpOhm: ohm, farads }),
        quantity: 'time',
      }
    case 'can-recessive':
      return {
        formula: 't = ln 4·R·C (2.0 → 0.5 V)',
        withNumbers: `1.386 · ${r} · ${c}`,
        si: canDecaySec({ ohm, farads }),
        quantity: 'time',
      }
    default:
      return edgeBehindDriver({ facts, farads, inductor }, ohm)
  }
}

function edgeBehindDriver({ facts, farads, inductor }: LoadedSignal, ohm: number): Step {
  const rule = facts.kind.loading
  const driverEdgeSec = facts.driverEdgeSec ?? (rule.rule === 'edge-rss' ? rule.driverEdgeSec : 0)
  const inductorSec = inductor?.ownEdgeSec ?? 0
  const own = `2.197 · ${show(ohm, 'resistance')} · ${show(farads, 'capacitance')}`
  const stages: readonly (readonly [string, string])[] = [
    ['t0²', driverEdgeSec > 0 ? `${show(driverEdgeSec, 'time')}²` : ''],
    ['(ln 9·R·C)²', `(${own})²`],
    ['(ln 9·L/(Rs + Rl))²', inductorSec > 0 ? `(${show(inductorSec, 'time')})²` : ''],
  ]
  const used = stages.filter(([, numbers]) => numbers !== '')
  const alone = used.length === 1
  return {
    formula: alone ? 't = ln 9·R·C (10–90 %)' : `t = √(${used.map(([name]) => name).join(' + ')})`,
    withNumbers: alone ? own : `√(${used.map(([, numbers]) => numbers).join(' + ')})`,
    si: combinedEdgeSec([driverEdgeSec, riseSec({ ohm, farads }), inductorSec]),
    quantity: 'time',
  }
}

function edgeFigure(signal: LoadedSignal): Figures {
  const step = edgeOf(signal)
  return step === undefined ? {} : { edgeSec: figure(step, signal.facts) }
}

function eyeFigures({ facts, farads, inductor }: LoadedSignal): Figures {
  const rule = facts.kind.loading
  const ohm = signalOhmOf(facts)
  if (rule.rule !== 'own-edge' || !rule.nrzEye || ohm === undefined) return {}
  const bitSec = bitSecOf(facts)
  const missing =
    bitSec === undefined
      ? 'enter the bit rate'
      : inductor === undefined
        ? undefined
        : 'with an inductor the line is second order: the one-pole eye does not describe it'
  if (bitSec === undefined || missing !== undefined) {
    const none = lacking(facts, missing ?? 'enter the bit rate')
    return { eyeFrac: none, jitterFrac: none }
  }
  const tauSec = ohm * farads
  const numbers = `T = ${show(bitSec, 'time')}, τ = ${show(tauSec, 'time')}`
  const assumptions = ['NRZ, threshold at mid swing, one pole']
  const jitter = jitterFrac({ bitSec, tauSec })
  return {
    eyeFrac: figure(
      {
        formula: 'eye = 1 − 2·e^(−T/τ)',
        withNumbers: numbers,
        si: innerEyeFrac({ bitSec, tauSec }),
        quantity: 'fraction',
      },
      facts,
      assumptions,
    ),
    jitterFrac:
      jitter === undefined
        ? lacking(facts, 'the eye is shut')
        : figure(
            { formula: 'jitter = −(τ/T)·ln(1 − e^(−T/τ))', withNumbers: numbers, si: jitter, quantity: 'fraction' },
            facts,
            assumptions,
          ),
  }
}

/** Where the mask of the kind is met by least; undefined for a kind without a mask. */
export function maskPointOf({ facts, farads, inductor }: LoadedSignal): MaskPoint | undefined {
  const rule = facts.kind.loading
  const loadOhm = lineOhmOf(facts)
  if (rule.rule !== 'return-loss' || loadOhm === undefined) return undefined
  const henries = inductor?.section?.henries ?? 0
  return leastMaskMargin({ farads, henries, loadOhm, referenceOhm: rule.referenceOhm }, rule.mask)
}

function returnLossFigure(signal: LoadedSignal): Figures {
  const { facts, farads } = signal
  const rule = facts.kind.loading
  const point = maskPointOf(signal)
  if (point === undefined || rule.rule !== 'return-loss') return {}
  if (!Number.isFinite(point.returnLossDb)) return { returnLossDb: lacking(facts, 'nothing is reflected') }
  return {
    returnLossDb: figure(
      {
        formula: 'RL = −20·log10|Γ|, x = ω·C·Z0, |Γ| = x/√(4 + x²)',
        withNumbers: `${show(farads, 'capacitance')} at ${show(point.hz, 'frequency')} against ${show(rule.referenceOhm, 'resistance')}; the mask asks ${show(point.maskDb, 'decibel')}`,
        si: point.returnLossDb,
        quantity: 'decibel',
      },
      facts,
      ['at the frequency of least mask margin'],
    ),
  }
}

function impedanceFigure({ facts, farads }: LoadedSignal): Figures {
  const rule = facts.kind.loading
  if (rule.rule !== 'terminal-impedance') return {}
  const leftOhm = 1 / (2 * Math.PI * rule.atHz * farads)
  if (!Number.isFinite(leftOhm)) return { terminalOhm: lacking(facts, 'no capacitance to speak of') }
  return {
    terminalOhm: figure(
      {
        formula: '|Z| = 1/(2π·f·C)',
        withNumbers: `1/(2π · ${show(rule.atHz, 'frequency')} · ${show(farads, 'capacitance')}); at least ${show(rule.leastOhm, 'resistance')}`,
        si: leftOhm,
        quantity: 'resistance',
      },
      facts,
    ),
  }
}

/** Edges within this share of a bit set the band of a line whose fastest edge no standard fixes. */
const FASTEST_EDGE_SHARE = 0.3
const BAND_PER_EDGE = 0.35

/** Highest useful frequency in Hz: the kind's, else 0.35 over an edge of 0.3 bit; undefined when neither is known. */
export function usefulHzOf(facts: SignalFacts): number | undefined {
  const { kind } = facts
  if (kind.usefulHz !== undefined) return kind.usefulHz.hz
  const bitSec = kind.loading.rule === 'own-edge' ? bitSecOf(facts) : undefined
  return bitSec === undefined ? undefined : BAND_PER_EDGE / (FASTEST_EDGE_SHARE * bitSec)
}

function bandFigures({ facts, farads, inductor }: LoadedSignal): Figures {
  const rule = facts.kind.loading.rule
  const ohm = signalOhmOf(facts)
  const hz = usefulHzOf(facts)
  if (hz === undefined || ohm === undefined || rule === 'slew' || rule === 'i2c-rise') return {}
  const numbers = `${show(hz, 'frequency')} · ${show(ohm, 'resistance')} · ${show(farads, 'capacitance')}`
  const section = inductor?.section
  const loss: Step =
    section === undefined
      ? {
          formula: 'loss = 10·log10(1 + (2π·f·R·C)²)',
          withNumbers: `10·log10(1 + (2π · ${numbers})²)`,
          si: bandLossDb({ ohm, farads, hz }),
          quantity: 'decibel',
        }
      : {
          formula: 'loss = 20·log10|1 − ω²·L·C·Rl/(Rs + Rl) + jω·(L/(Rs + Rl) + C·Rp)|',
          withNumbers: `${show(section.henries, 'inductance')}, ${numbers}`,
          si: lcLossDb(section, hz),
          quantity: 'decibel',
        }
  const bandLoss = { bandLossDb: figure(loss, facts, ['at the highest useful frequency']) }
  if (rule !== 'phase') return bandLoss
  const phase: Step = {
    formula: 'φ = atan(2π·f·R·C)',
    withNumbers: `atan(2π · ${numbers})`,
    si: phaseLagDeg({ ohm, farads, hz }),
    quantity: 'angle',
  }
  return { ...bandLoss, phaseDeg: figure(phase, facts, section ? ['of the capacitance alone'] : []) }
}

function dampingFigure({ facts, farads, inductor }: LoadedSignal): Figures {
  if (inductor?.damping === undefined || inductor.section === undefined) return {}
  const { section, damping } = inductor
  return {
    damping: figure(
      {
        formula: 'ζ = (L/(Rs + Rl) + C·Rp) / (2·√(L·C·Rl/(Rs + Rl)))',
        withNumbers: `L = ${show(section.henries, 'inductance')}, C = ${show(farads, 'capacitance')}, Rs = ${show(section.sourceOhm, 'resistance')}`,
        si: damping,
        quantity: 'number',
      },
      facts,
      [
        Number.isFinite(section.loadOhm)
          ? 'line matched at both ends'
          : 'into a high-impedance receiver (least damped)',
        facts.kind.isPair ? 'an inductor in each leg: the pair sees twice of it' : 'inductor on the driver side',
      ],
    ),
  }
}
