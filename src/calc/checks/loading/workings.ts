/** How each figure of the loading check came about. */

import { signalAssumptions, worksBasis, worksWhy } from '../../explain/ceiling.ts'
import { coilEdgeSecOf, driverEdgeSecOf, hasEye, type LoadedSignal, maskPointOf } from '../../loading/figures.ts'
import { bitSecOf, signalOhmOf, usefulHzOf } from '../../loading/signal.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Basis, Cell, Source, Step } from '../../types.ts'
import type { Loaded, LoadingFigures } from './figures.ts'

type Said = { readonly cell: Cell; readonly basis: Basis }
export type SaidOutputs = Readonly<Record<string, Said>>

const show = (si: number, quantity: Quantity, digits = 4): string => formatQuantity(si, quantity, digits)

function basisOf(signal: LoadedSignal, steps: readonly Step[], assumptions: readonly string[] = []): Basis {
  const { kind, signalOhm } = signal.facts
  const ohmSource: readonly Source[] =
    signalOhm === undefined && kind.signalOhm !== undefined ? [kind.signalOhm.source] : []
  return {
    steps,
    assumptions: [...signalAssumptions(signal.facts), ...assumptions],
    sources: [{ id: 'derived', standing: 'derived' }, ...ohmSource],
  }
}

const none = (signal: LoadedSignal, why: string): Said => ({ cell: { is: 'none', why }, basis: basisOf(signal, []) })

/** Every output with its working, as far as it has a meaning for the kind. */
export function saidOutputs({ values }: LoadingFigures, loaded: Loaded): SaidOutputs {
  const { signal, isEntered } = loaded
  const out: Record<string, Said> = {}
  const say = (key: string, step: Omit<Step, 'si'>, assumptions: readonly string[] = []): void => {
    const si = values[key]
    if (si !== undefined) out[key] = { cell: { is: 'si', si }, basis: basisOf(signal, [{ ...step, si }], assumptions) }
  }
  if (isEntered) {
    say('differentialF', differentialStep(loaded), ['equal legs'])
    say('edgeSec', edgeStep(signal))
    sayEye(signal, values, say, out)
    sayReturnLoss(signal, values, say, out)
    sayTerminal(signal, values, say, out)
    sayBand(signal, say)
    sayDamping(signal, say)
  }
  return { ...out, mostCapacitanceF: mostOutput(loaded, values['mostCapacitanceF']) }
}

type Say = (key: string, step: Omit<Step, 'si'>, assumptions?: readonly string[]) => void
type Values = LoadingFigures['values']

function differentialStep({ taken, legF }: Loaded): Omit<Step, 'si'> {
  const { crossF, suppressorF, existingF } = taken
  return {
    formula: 'C_dm = Cx + (C + C_suppressor)/2 + existing',
    withNumbers: `${show(crossF, 'capacitance', 3)} + (${show(legF, 'capacitance', 3)} + ${show(suppressorF, 'capacitance', 3)})/2 + ${show(existingF, 'capacitance', 3)}`,
    quantity: 'capacitance',
  }
}

function edgeStep({ facts, farads, section }: LoadedSignal): Omit<Step, 'si'> {
  const rule = facts.kind.loading
  const c = show(farads, 'capacitance')
  const r = show(signalOhmOf(facts) ?? 0, 'resistance')
  const step = (formula: string, withNumbers: string) => ({ formula, withNumbers, quantity: 'time' as const })
  if (rule.rule === 'slew')
    return step('t = V·C/I (±3 V band)', `${show(rule.bandV, 'voltage')} · ${c} / ${show(rule.driverA, 'current')}`)
  if (rule.rule === 'i2c-rise') return step('t = 0.8473·R·C (30–70 %)', `0.8473 · ${r} · ${c}`)
  if (rule.rule === 'can-recessive') return step('t = ln 4·R·C (2.0 → 0.5 V)', `1.386 · ${r} · ${c}`)
  const driverSec = driverEdgeSecOf(facts)
  const coilSec = coilEdgeSecOf(section)
  const own = `2.197 · ${r} · ${c}`
  const stages: readonly (readonly [string, string])[] = [
    ['t0²', driverSec > 0 ? `${show(driverSec, 'time')}²` : ''],
    ['(ln 9·R·C)²', `(${own})²`],
    ['(ln 9·L/(Rs + Rl))²', coilSec > 0 ? `(${show(coilSec, 'time')})²` : ''],
  ]
  const used = stages.filter(([, numbers]) => numbers !== '')
  return used.length === 1
    ? step('t = ln 9·R·C (10–90 %)', own)
    : step(`t = √(${used.map(([name]) => name).join(' + ')})`, `√(${used.map(([, numbers]) => numbers).join(' + ')})`)
}

const NRZ = ['NRZ, threshold at mid swing, one pole']

function sayEye(signal: LoadedSignal, values: Values, say: Say, out: Record<string, Said>): void {
  const { facts, farads, section } = signal
  const ohm = signalOhmOf(facts)
  if (!hasEye(facts) || ohm === undefined) return
  const bitSec = bitSecOf(facts)
  const why =
    bitSec === undefined
      ? 'enter the bit rate'
      : section === undefined
        ? 'the eye is closed'
        : 'with an inductor the line is second order: the one-pole eye does not describe it'
  const withNumbers = `T = ${show(bitSec ?? 0, 'time')}, τ = ${show(ohm * farads, 'time')}`
  say('eyeFrac', { formula: 'eye = 1 − 2·e^(−T/τ)', withNumbers, quantity: 'fraction' }, NRZ)
  say('jitterFrac', { formula: 'jitter = −(τ/T)·ln(1 − e^(−T/τ))', withNumbers, quantity: 'fraction' }, NRZ)
  for (const key of ['eyeFrac', 'jitterFrac']) if (values[key] === undefined) out[key] = none(signal, why)
}

function sayReturnLoss(signal: LoadedSignal, values: Values, say: Say, out: Record<string, Said>): void {
  const rule = signal.facts.kind.loading
  const point = maskPointOf(signal)
  if (point === undefined || rule.rule !== 'return-loss') return
  say(
    'returnLossDb',
    {
      formula: 'RL = −20·log10|Γ|, x = ω·C·Z0, |Γ| = x/√(4 + x²)',
      withNumbers: `${show(signal.farads, 'capacitance')} at ${show(point.hz, 'frequency')} against ${show(rule.referenceOhm, 'resistance')}; the mask asks ${show(point.maskDb, 'decibel')}`,
      quantity: 'decibel',
    },
    ['at the frequency of least mask margin'],
  )
  if (values['returnLossDb'] === undefined) out['returnLossDb'] = none(signal, 'nothing is reflected')
}

function sayTerminal(signal: LoadedSignal, values: Values, say: Say, out: Record<string, Said>): void {
  const rule = signal.facts.kind.loading
  if (rule.rule !== 'terminal-impedance') return
  say('terminalOhm', {
    formula: '|Z| = 1/(2π·f·C)',
    withNumbers: `1/(2π · ${show(rule.atHz, 'frequency')} · ${show(signal.farads, 'capacitance')}); at least ${show(rule.leastOhm, 'resistance')}`,
    quantity: 'resistance',
  })
  if (values['terminalOhm'] === undefined) out['terminalOhm'] = none(signal, 'no capacitance to speak of')
}

function sayBand(signal: LoadedSignal, say: Say): void {
  const { facts, farads, section } = signal
  const at = `${show(usefulHzOf(facts) ?? 0, 'frequency')} · ${show(signalOhmOf(facts) ?? 0, 'resistance')} · ${show(farads, 'capacitance')}`
  const withCoil = section === undefined ? '' : `${show(section.henries, 'inductance')}, ${at}`
  say(
    'bandLossDb',
    {
      formula:
        section === undefined
          ? 'loss = 10·log10(1 + (2π·f·R·C)²)'
          : 'loss = 20·log10|1 − ω²·L·C·Rl/(Rs + Rl) + jω·(L/(Rs + Rl) + C·Rp)|',
      withNumbers: section === undefined ? `10·log10(1 + (2π · ${at})²)` : withCoil,
      quantity: 'decibel',
    },
    ['at the highest useful frequency'],
  )
  say('phaseDeg', {
    formula:
      section === undefined ? 'φ = atan(2π·f·R·C)' : 'φ = angle of 1 − ω²·L·C·Rl/(Rs + Rl) + jω·(L/(Rs + Rl) + C·Rp)',
    withNumbers: section === undefined ? `atan(2π · ${at})` : withCoil,
    quantity: 'angle',
  })
}

function sayDamping({ facts, farads, section }: LoadedSignal, say: Say): void {
  if (section === undefined) return
  say(
    'damping',
    {
      formula: 'ζ = (L/(Rs + Rl) + C·Rp) / (2·√(L·C·Rl/(Rs + Rl)))',
      withNumbers: `L = ${show(section.henries, 'inductance')}, C = ${show(farads, 'capacitance')}, Rs = ${show(section.sourceOhm, 'resistance')}`,
      quantity: 'number',
    },
    [
      Number.isFinite(section.loadOhm) ? 'line matched at both ends' : 'into a high-impedance receiver (least damped)',
      facts.kind.isPair ? 'an inductor in each leg: the pair sees twice of it' : 'inductor on the driver side',
    ],
  )
}

function mostOutput({ signal, taken, ceiling }: Loaded, si: number | undefined): Said {
  const { works } = ceiling
  const basis = worksBasis(signal.facts, works)
  if (works.farads === undefined || si === undefined)
    return { cell: { is: 'none', why: worksWhy(signal.facts, works) }, basis }
  const c = show(works.farads, 'capacitance', 3)
  const less = (f: number) => show(f, 'capacitance', 3)
  const step: Step = {
    formula: taken.isPair ? 'C_leg = 2·(C_most − Cx − existing) − suppressor' : 'C = C_most − existing − suppressor',
    withNumbers: taken.isPair
      ? `2 · (${c} − ${less(taken.crossF)} − ${less(taken.existingF)}) − ${less(taken.suppressorF)}`
      : `${c} − ${less(taken.existingF)} − ${less(taken.suppressorF)}`,
    si,
    quantity: 'capacitance',
  }
  return { cell: { is: 'si', si }, basis: { ...basis, steps: [...basis.steps, step] } }
}
