/** The working behind the figures of a window. */

import { legFactor } from '../bounds/legs.ts'
import { CAPACITOR_COUNT } from '../network/circuit.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Basis, Source, Step } from '../types.ts'
import type { WindowSetup } from './facts.ts'
import type { WindowRow } from './row.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 4)
const ohms = (x: number) => formatQuantity(x, 'resistance', 4)
const percent = (x: number) => formatQuantity(x, 'fraction', 4)

const LEAST_SOURCES: readonly [Source, ...Source[]] = [
  { id: 'derived', clause: 'chain matrices at every corner', standing: 'derived' },
  { id: 'S24', clause: 'ageing of class 2 ceramics', standing: 'read' },
  { id: 'S23', clause: 'temperature and voltage of class 2 ceramics', standing: 'read' },
]

/** Why the least is what it is: what one leg sees, the capacitance in service, the marked value. */
export function leastBasis(row: WindowRow, setup: WindowSetup): Basis {
  const { facts } = setup
  const steps: Step[] = []
  const factor = legFactor(setup.isPair, setup.mode)
  const at =
    row.least.is === 'found' || row.least.is === 'never' || row.least.is === 'inductor-only' ? row.least.at : undefined
  if (at && facts.around) {
    steps.push({
      formula: setup.isPair ? 'R per leg = factor · R of the pair' : 'R of the line',
      withNumbers: setup.isPair ? `${factor} · ${ohms(at.source.ohm / factor)}` : ohms(at.source.ohm),
      si: at.source.ohm,
      quantity: 'resistance',
    })
    steps.push({
      formula: 'loss at the governing frequency, source and inductance',
      withNumbers: `${formatQuantity(at.need.hz, 'frequency', 4)}, load ${ohms(facts.around.load.ohm)}, need ${formatQuantity(at.need.db, 'decibel', 4)}`,
      si: at.lossDb,
      quantity: 'decibel',
    })
  }
  if (row.least.is === 'found') {
    steps.push({
      formula: 'smallest capacitance in service from which every larger one meets the need, |N|² = 10^(need/10)·|D|²',
      withNumbers: 'exact roots of the chain matrix, then every part over its own tolerance',
      si: row.least.marked * facts.leastShare,
      quantity: 'capacitance',
    })
    steps.push({
      formula: 'marked = in service / k_low, k_low = (1 − tol)(1 − temp)(1 − bias)(1 − k)^decades',
      withNumbers: `${farads(row.least.marked * facts.leastShare)} / ${percent(facts.leastShare)}`,
      si: row.leastF ?? 0,
      quantity: 'capacitance',
    })
  }
  return {
    steps,
    assumptions: [
      'suppressor capacitance earns no attenuation',
      'the inductance entered is its least; the tolerance spread above it is tried too',
    ],
    sources: LEAST_SOURCES,
  }
}

/** Why the most is what it is: the signal's ceiling, what is taken, the share a part can be above its mark. */
export function mostBasis(row: WindowRow, setup: WindowSetup): Basis {
  const { facts, taken, works } = setup
  const steps: Step[] = [...(works?.basis.steps ?? [])]
  if (facts.works) {
    steps.push({
      formula: taken.isPair
        ? 'room per leg = 2·(C_works − Cx − existing) − suppressor'
        : 'room = C_works − existing − suppressor',
      withNumbers: taken.isPair
        ? `2·(… − ${farads(taken.crossF)} − ${farads(taken.existingF)}) − ${farads(taken.suppressorF)}`
        : `… − ${farads(taken.existingF)} − ${farads(taken.suppressorF)}`,
      si: facts.works.roomF,
      quantity: 'capacitance',
    })
  }
  if (row.most) {
    steps.push({
      formula: 'marked = room / (n · k_high), k_high = (1 + tol)(1 + temp)',
      withNumbers: `n = ${CAPACITOR_COUNT[row.topology]}, k_high = ${percent(facts.mostShare)}`,
      si: row.most.markedF,
      quantity: 'capacitance',
    })
  }
  const sources = works?.basis.sources ?? ([{ id: 'derived', standing: 'derived' }] as const)
  return {
    steps,
    assumptions: [...(works?.basis.assumptions ?? []), 'a fresh part at 0 V: no bias or ageing loss is taken'],
    sources,
  }
}

/** How the proposal was chosen. */
export function proposalBasis(row: WindowRow): Basis {
  return {
    steps: row.proposal
      ? [
          {
            formula: 'nearest preferred value inside to min(2·least, √(least·most))',
            withNumbers: `${row.proposal.series}; least ${farads(row.leastF ?? 0)}${row.upper ? `, most ${farads(row.upper.markedF)}` : ''}`,
            si: row.proposal.valueF,
            quantity: 'capacitance',
          },
        ]
      : [],
    assumptions: ['twice the least is a 6 dB margin on a single capacitor: common practice'],
    sources: [
      { id: 'iec-60063', standing: 'memory' },
      { id: 'practice', standing: 'practice' },
    ],
  }
}
