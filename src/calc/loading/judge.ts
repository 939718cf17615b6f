/** Verdict of a loading: against what works, against what documents permit, and what an inductor does. */

import { roomPerLegF, roomToChassisF, type Taken } from '../bounds/room.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Finding } from '../types.ts'
import { bitSecOf, type LoadingCeiling, type PermittedCeiling, signalOhmOf } from './ceiling.ts'
import { edgeOf, type LoadedSignal, maskPointOf } from './figures.ts'

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)

/** Rounding of a capacitance typed as the ceiling itself must not turn it into a failure. */
const HAIR = 1 + 1e-9

/** Whether a capacitance in F is over its room, rounding apart. */
export const isOver = (legF: number, roomF: number): boolean => legF > Math.max(0, roomF) * HAIR

export type Judged = {
  readonly signal: LoadedSignal
  readonly legF: number
  readonly taken: Taken
  readonly ceiling: LoadingCeiling
}

/** Against physics: fails above it; unknown where no ceiling is known. */
export function worksFindings({ signal, ceiling, legF, taken }: Judged): readonly Finding[] {
  const { works } = ceiling
  if (works.farads === undefined) return [{ verdict: 'unknown', sentence: works.why }]
  const room = roomPerLegF(works.farads, taken)
  const sees = `The signal sees ${show(signal.farads, 'capacitance')}${taken.isPair ? ' between the wires' : ''}`
  if (room <= 0)
    return [
      {
        verdict: 'fails',
        sentence: `Nothing is left for a filter: ${works.why}. ${opener(signal, works.farads)}`.trim(),
      },
    ]
  if (isOver(legF, room))
    return [
      {
        verdict: 'fails',
        sentence:
          `${sees}; it works up to ${show(works.farads, 'capacitance')}: ${works.why}. ${opener(signal, works.farads)}`.trim(),
      },
    ]
  return [{ verdict: 'ok', sentence: `${sees}, of ${show(works.farads, 'capacitance')} that work: ${works.why}.` }]
}

/** The rate at which this capacitance would work, for kinds that are judged by the bit. */
function opener({ facts, farads }: LoadedSignal, worksF: number): string {
  const bitSec = bitSecOf(facts)
  const rule = facts.kind.loading.rule
  const byBit = rule === 'own-edge' || rule === 'can-recessive' || rule === 'slew'
  if (bitSec === undefined || !byBit || facts.kind.bitRateHz !== undefined || farads <= 0) return ''
  return `At ${show(worksF / farads / bitSec, 'frequency')} or slower it would work.`
}

/** Room in F per leg under a document's figure. */
export function permittedRoomF(figure: PermittedCeiling, taken: Taken): number {
  return figure.counts === 'leg' ? roomToChassisF(figure.farads, taken) : roomPerLegF(figure.farads, taken)
}

/** Against documents: marginal above one, the document named. */
export function permittedFindings({ ceiling, legF, taken }: Judged): readonly Finding[] {
  return ceiling.permitted
    .filter((figure) => isOver(legF, permittedRoomF(figure, taken)))
    .map((figure) => ({
      verdict: 'marginal',
      sentence: `Above what the document permits (${figure.label}): ${show(Math.max(0, permittedRoomF(figure, taken)), 'capacitance')} per leg would be left. Going over it needs design approval.`,
    }))
}

/** What an inductor does: ringing and its own edge are never ok; a missed edge or mask fails. */
export function inductorFindings({ signal }: Judged): readonly Finding[] {
  const { inductor, facts } = signal
  if (inductor === undefined) return []
  const said: Finding[] = []
  if (inductor.hurts !== undefined)
    said.push({
      verdict: inductor.section === undefined ? 'unknown' : 'marginal',
      sentence: `The inductor makes this line second order: ${inductor.hurts}.`,
    })
  const rule = facts.kind.loading
  const edge = edgeOf(signal)
  if (rule.rule === 'edge-rss' && edge !== undefined && edge.si > rule.slowestEdgeSec * HAIR)
    said.push({
      verdict: 'fails',
      sentence: `With the inductor the edge is ${show(edge.si, 'time')}, over the ${show(rule.slowestEdgeSec, 'time')} allowed.`,
    })
  const point = maskPointOf(signal)
  if (point !== undefined && point.returnLossDb < point.maskDb - 1e-9)
    said.push({
      verdict: 'fails',
      sentence: `With the inductor the return loss is ${show(point.returnLossDb, 'decibel')} at ${show(point.hz, 'frequency')}; the mask asks ${show(point.maskDb, 'decibel')}.`,
    })
  return said
}

/** What is true of the kind whatever was entered: the slowest legal driver, the kind's range of resistance. */
export function kindFindings({ signal }: Judged): readonly Finding[] {
  const { facts } = signal
  const rule = facts.kind.loading
  const said: Finding[] = []
  if (rule.rule === 'edge-rss' && facts.driverEdgeSec === undefined)
    said.push({
      verdict: 'ok',
      sentence: `Counted from the nominal driver edge of ${show(rule.driverEdgeSec, 'time')}. The slowest legal driver, ${show(rule.slowestDriverSec, 'time')}, leaves no room at all: measure the edge and enter it.`,
    })
  if (rule.rule === 'slew' && signal.farads > 0 && rule.driverA / signal.farads > rule.limitVPerSec)
    said.push({
      verdict: 'ok',
      sentence: `With so little on the line ${show(rule.driverA, 'current')} would exceed ${rule.limitVPerSec / 1e6} V/µs: the driver must limit its own slew.`,
    })
  const range = facts.kind.signalOhm
  if (
    facts.signalOhm === undefined &&
    range?.leastOhm !== undefined &&
    range.mostOhm !== undefined &&
    signalOhmOf(facts) === range.mostOhm
  )
    said.push({
      verdict: 'ok',
      sentence: `Signal resistance taken at the top of ${show(range.leastOhm, 'resistance')} to ${show(range.mostOhm, 'resistance')}: a lower one leaves more room.`,
    })
  return said
}
