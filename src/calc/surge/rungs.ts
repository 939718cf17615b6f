/** The volts of a surge in order: what comes, what holds, and which is judged against which. */
import { busSurgesOf } from '../../reference/bus-surges.ts'
import { COLD_SOAK_C } from '../../reference/suppressors.ts'
import { type LadderPicture, ladderPicture } from '../explain/ladder.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Basis, Rung, Source, Step } from '../types.ts'
import type { RunFigures } from './runs.ts'
import type { FittedPart } from './setup.ts'
import { breakdownAt, temperatureCoefficient } from './suppressor.ts'

export type RungFacts = {
  readonly run: RunFigures
  readonly part: FittedPart | undefined
  readonly ambientC: number
  readonly withstandV: number | undefined
  readonly capacitorWithstandV: number | undefined
  readonly busMaxV: number | undefined
  readonly lineKind: string | undefined
  readonly sources: Basis['sources']
}

const DERIVED: Source = { id: 'derived', standing: 'derived' }
const entered: Basis = { steps: [], assumptions: ['as entered'], sources: [DERIVED] }
const volts = (formula: string, withNumbers: string, si: number): Step => ({
  formula,
  withNumbers,
  si,
  quantity: 'voltage',
})

type Draft = Omit<Rung, 'minV' | 'maxV'> & { readonly v: number; readonly to?: number }
const rung = ({ v, to, ...rest }: Draft): Rung => ({ ...rest, minV: v, maxV: to ?? v })

/** Two peaks closer than this are one rung. */
const SAME = 0.005
const differs = (a: number, b: number) => Math.abs(a - b) > SAME * Math.max(a, b)

/** Rungs that come: bus, clamp, overshoot, load, capacitor. Rungs that hold: stand-off, breakdown, both withstands. */
export function surgeRungs(facts: RungFacts): readonly Rung[] {
  return [...busRungs(facts), ...pulseRungs(facts), ...partRungs(facts), ...withstandRungs(facts)]
}

function busRungs({ busMaxV, lineKind }: RungFacts): Rung[] {
  const envelope = lineKind === undefined ? [] : busSurgesOf(lineKind)
  return [
    ...(busMaxV === undefined || busMaxV <= 0
      ? []
      : [
          rung({
            id: 'surge-bus',
            role: 'bus-surge',
            label: 'Highest line peak',
            side: 'comes',
            v: busMaxV,
            basis: entered,
          }),
        ]),
    ...envelope.map((row) =>
      rung({
        id: `bus-${row.id}`,
        role: 'bus-surge',
        label: row.label,
        side: 'comes',
        v: row.peakV,
        forSec: row.forSec,
        basis: { steps: [], assumptions: ['not judged: enter the highest line peak'], sources: [row.source] },
      }),
    ),
  ]
}

function pulseRungs({ run, part, sources }: RungFacts): Rung[] {
  const basis: Basis = { steps: [], assumptions: ['largest magnitude of the run'], sources: [DERIVED, ...sources] }
  const comes = (id: string, role: Rung['role'], label: string, v: number): Rung =>
    rung({ id, role, label, side: 'comes', v, basis })
  const { clamp, connector, load, capacitor } = run
  const shown = part ? [clamp.value] : []
  const isNew = (v: number) => shown.every((other) => differs(v, other))
  const rungs = part ? [comes('surge-clamp', 'clamp', 'Clamp', clamp.value)] : []
  if (isNew(load.value)) {
    rungs.push(comes('surge-load', 'ring-up', 'Peak at the load', load.value))
    shown.push(load.value)
  }
  if (isNew(connector.value)) rungs.push(comes('surge-connector', 'ring-up', 'Peak at the connector', connector.value))
  if (capacitor) rungs.push(comes('surge-capacitor', 'ring-up', 'Peak on the filter capacitor', capacitor.value))
  return rungs
}

function partRungs({ part, ambientC }: RungFacts): Rung[] {
  if (!part) return []
  const coldV = breakdownAt({ breakdownV: part.leastV, tempC: COLD_SOAK_C })
  const hotC = Math.max(25, ambientC)
  const hotV = breakdownAt({ breakdownV: part.mostV, tempC: hotC })
  const perC = temperatureCoefficient(part.leastV)
  const at = (breakdownV: number, tempC: number) =>
    volts(
      'V(T) = V25·(1 + a·(T − 25))',
      `${formatQuantity(breakdownV, 'voltage', 4)} · (1 + ${perC} · (${tempC} − 25))`,
      breakdownAt({ breakdownV, tempC }),
    )
  return [
    ...(part.standoffV === undefined
      ? []
      : [
          rung({
            id: 'surge-stand-off',
            role: 'stand-off',
            label: 'Stand-off',
            side: 'holds',
            v: part.standoffV,
            basis: entered,
          }),
        ]),
    rung({
      id: 'surge-breakdown',
      role: 'breakdown',
      label: `Breakdown, ${formatQuantity(COLD_SOAK_C, 'temperature')} to ${formatQuantity(hotC, 'temperature')}`,
      side: 'holds',
      v: coldV,
      to: Math.max(coldV, hotV),
      basis: {
        steps: [at(part.leastV, COLD_SOAK_C), at(part.mostV, hotC)],
        assumptions: [part.fromClass ? 'spread of a 5 % class from its stand-off' : 'breakdown as entered, at 25 °C'],
        sources: [
          { id: 'T20', clause: 'formula', standing: 'read' },
          perC < 5e-4
            ? { id: 'T22', clause: '6 V part', standing: 'read' }
            : { id: 'T21', clause: 'coefficient at 28 V and above, weak source', standing: 'read' },
          ...(part.fromClass ? ([{ id: 'T23', clause: 'spread of a 28 V class', standing: 'read' }] as const) : []),
        ],
      },
    }),
  ]
}

function withstandRungs({ withstandV, capacitorWithstandV, run }: RungFacts): Rung[] {
  return [
    ...(withstandV === undefined
      ? []
      : [
          rung({
            id: 'surge-circuit-withstand',
            role: 'circuit-withstand',
            label: 'Circuit withstands',
            side: 'holds',
            v: withstandV,
            basis: entered,
          }),
        ]),
    ...(capacitorWithstandV === undefined || !run.capacitor
      ? []
      : [
          rung({
            id: 'surge-capacitor-withstand',
            role: 'capacitor-withstand',
            label: 'Filter capacitor withstands',
            side: 'holds',
            v: capacitorWithstandV,
            basis: entered,
          }),
        ]),
  ]
}

const PHRASES: Partial<Readonly<Record<Rung['role'], string>>> = {
  'circuit-withstand': 'the input withstands',
  'capacitor-withstand': 'the filter capacitor withstands',
  'stand-off': 'of stand-off',
  breakdown: 'at which the suppressor breaks down cold',
}

/** Draws them; the load is held against the circuit, the capacitor against its own withstand, the bus against the part. */
export function surgeLadder(rungs: readonly Rung[]): LadderPicture {
  const hasLoad = rungs.some((each) => each.id === 'surge-load')
  const rivals: Readonly<Record<string, readonly Rung['role'][]>> = {
    'surge-bus': ['stand-off', 'breakdown'],
    'surge-clamp': hasLoad ? [] : ['circuit-withstand'],
    'surge-load': ['circuit-withstand'],
    'surge-capacitor': ['capacitor-withstand'],
  }
  return ladderPicture({
    title: 'Volts of this surge',
    rungs,
    against: (comes, holds) => rivals[comes.id]?.includes(holds.role) ?? false,
    phrase: (holds) => PHRASES[holds.role] ?? `of ${holds.label.toLowerCase()}`,
  })
}
