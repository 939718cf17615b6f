/** The volts of a surge: what comes, what holds, and which is judged against which. Numbers only. */
import { busSurgesOf } from '../../reference/bus-surges.ts'
import type { LineKind } from '../../reference/line-kinds.ts'
import { COLD_SOAK_C } from '../../reference/suppressors.ts'
import type { RungFigure } from '../types.ts'
import type { Spread } from './judge.ts'
import type { LinePeaks } from './line.ts'
import type { FittedPart } from './part.ts'
import type { RunFigures } from './runs.ts'
import { breakdownAt, hotBreakdownV } from './suppressor.ts'

export type RungFacts = {
  readonly run: RunFigures
  readonly load: Spread
  readonly capacitor: Spread | undefined
  readonly part: FittedPart | undefined
  /** it is in the way of the surge */
  readonly isMet: boolean
  readonly ambientC: number
  readonly withstandV: number | undefined
  readonly capacitorWithstandV: number | undefined
  readonly busMaxV: number | undefined
  readonly peaks: LinePeaks | undefined
  readonly kind: LineKind | undefined
  readonly supplyCategory: string | undefined
}

const rung = (id: string, role: RungFigure['role'], minV: number, maxV = minV): RungFigure => ({ id, role, minV, maxV })

/** Two peaks closer than this are one rung. */
const SAME = 0.005
const differs = (a: number, b: number) => Math.abs(a - b) > SAME * Math.max(a, b)

/** Rungs that come: bus, clamp, load, capacitor. Rungs that hold: stand-off, breakdown, both withstands. */
export function surgeRungs(facts: RungFacts): readonly RungFigure[] {
  return [...busRungs(facts), ...pulseRungs(facts), ...partRungs(facts), ...withstandRungs(facts)]
}

/** The line's own peak, or the one entered, and the long surges of the category that was chosen. */
function busRungs({ busMaxV, peaks, kind, supplyCategory }: RungFacts): RungFigure[] {
  const supply = kind?.ownPeaks?.surgesOf
  const rows = supply === undefined || supplyCategory === undefined ? [] : busSurgesOf(supply, supplyCategory)
  const ownV = Math.max(peaks?.highV ?? 0, -(peaks?.lowV ?? 0))
  return [
    ...(busMaxV !== undefined && busMaxV > 0 ? [rung('surge-bus', 'bus-surge', busMaxV)] : []),
    ...(busMaxV === undefined && ownV > 0 ? [rung('surge-own', 'working-peak', ownV)] : []),
    ...rows.map((row) => ({ ...rung(`bus-${row.id}`, 'bus-surge', row.peakV), forSec: row.forSec })),
  ]
}

function pulseRungs({ run, load, capacitor, isMet }: RungFacts): RungFigure[] {
  const { clamp, connector } = run
  const shown = isMet ? [clamp.value] : []
  const isNew = (v: number) => shown.every((other) => differs(v, other))
  const rungs = isMet ? [rung('surge-clamp', 'clamp', clamp.value)] : []
  if (isNew(load.asEntered) || isNew(load.worst)) {
    rungs.push(rung('surge-load', 'ring-up', load.asEntered, load.worst))
    shown.push(load.asEntered)
  }
  if (isNew(connector.value)) rungs.push(rung('surge-connector', 'ring-up', connector.value))
  if (capacitor) rungs.push(rung('surge-capacitor', 'ring-up', capacitor.asEntered, capacitor.worst))
  return rungs
}

function partRungs({ part, ambientC }: RungFacts): RungFigure[] {
  if (!part) return []
  const coldV = breakdownAt({ breakdownV: part.leastV, tempC: COLD_SOAK_C })
  const hotV = hotBreakdownV({ mostV: part.mostV, ambientC })
  return [
    ...(part.standoffV === undefined ? [] : [rung('surge-stand-off', 'stand-off', part.standoffV)]),
    rung('surge-breakdown', 'breakdown', coldV, Math.max(coldV, hotV)),
  ]
}

function withstandRungs({ withstandV, capacitorWithstandV, capacitor }: RungFacts): RungFigure[] {
  return [
    ...(withstandV === undefined ? [] : [rung('surge-circuit-withstand', 'circuit-withstand', withstandV)]),
    ...(capacitorWithstandV === undefined || !capacitor
      ? []
      : [rung('surge-capacitor-withstand', 'capacitor-withstand', capacitorWithstandV)]),
  ]
}

/** Which rungs that hold a rung that comes is judged against. */
export function rivalsOf(rungs: readonly RungFigure[], comes: RungFigure): readonly RungFigure['role'][] {
  if (comes.role === 'bus-surge' || comes.role === 'working-peak') return ['stand-off', 'breakdown']
  if (comes.id === 'surge-capacitor') return ['capacitor-withstand']
  if (comes.id === 'surge-load') return ['circuit-withstand']
  const hasLoad = rungs.some((each) => each.id === 'surge-load')
  return comes.id === 'surge-clamp' && !hasLoad ? ['circuit-withstand'] : []
}
