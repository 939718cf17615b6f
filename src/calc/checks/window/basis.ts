/** The working behind the figures of a window. */
import { legFactor } from '../../bounds/legs.ts'
import { roomUnderF } from '../../bounds/room.ts'
import { worksBasis } from '../../explain/ceiling.ts'
import { loadingCeiling } from '../../loading/ceiling.ts'
import { CAPACITOR_COUNT } from '../../network/circuit.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Source, Step } from '../../types.ts'
import { needIdOf, type WindowRow } from './row.ts'
import { NEED } from './row-need.ts'
import { sharesOf, type WindowSetup } from './setup.ts'

const farads = (x: number) => formatQuantity(x, 'capacitance', 4)
const ohms = (x: number) => formatQuantity(x, 'resistance', 4)
const percent = (x: number) => formatQuantity(x, 'fraction', 4)

const LEAST_SOURCES: readonly [Source, ...Source[]] = [
  { id: 'derived', clause: 'chain matrices over the box of tolerances', standing: 'derived' },
  { id: 'S24', clause: 'ageing of class 2 ceramics', standing: 'read' },
  { id: 'S23', clause: 'temperature and voltage of class 2 ceramics', standing: 'read' },
]

/** Why the least is what it is: what one leg sees, the capacitance in service, the marked value. */
export function leastBasis(row: WindowRow, setup: WindowSetup): Basis {
  const { around } = setup
  const steps: Step[] = []
  const factor = legFactor(setup.isPair, setup.mode)
  const { need } = row
  const at = 'at' in need ? need.at : undefined
  if (at && around && needIdOf(row) === NEED) {
    steps.push({
      formula: setup.isPair ? 'R per leg = factor · R of the pair' : 'R of the line',
      withNumbers: setup.isPair ? `${factor} · ${ohms(at.source.ohm / factor)}` : ohms(at.source.ohm),
      si: at.source.ohm,
      quantity: 'resistance',
    })
    steps.push({
      formula: 'loss at the governing frequency, source and parts',
      withNumbers: `${formatQuantity(at.need.hz, 'frequency', 4)}, load ${ohms(around.load.ohm)}, need ${formatQuantity(at.need.db, 'decibel', 4)}`,
      si: at.lossDb,
      quantity: 'decibel',
    })
  }
  if (need.is === 'found') {
    const kLow = sharesOf(setup).least
    steps.push({
      formula: 'smallest capacitance in service from which every larger one meets the need, |N|² = 10^(need/10)·|D|²',
      withNumbers: 'exact roots of the chain matrix, then every part over its own tolerance',
      si: need.marked * kLow,
      quantity: 'capacitance',
    })
    steps.push({
      formula: 'marked = in service / k_low, k_low = (1 − tol)(1 − temp)(1 − bias)(1 − k)^decades',
      withNumbers: `${farads(need.marked * kLow)} / ${percent(kLow)}`,
      si: need.marked,
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
  const { room: taken, signal, bounds } = setup
  const works = signal && worksBasis(signal, loadingCeiling(signal).works)
  const steps: Step[] = [...(works?.steps ?? [])]
  const bound = bounds.find(({ id, nature }) => nature === 'works' && id === 'loading-works')
  if (bound) {
    steps.push({
      formula: taken.isPair
        ? 'room per leg = 2·(C_most − Cx − existing) − suppressor'
        : 'room = C_most − existing − suppressor',
      withNumbers: taken.isPair
        ? `2·(… − ${farads(taken.crossF)} − ${farads(taken.existingF)}) − ${farads(taken.suppressorF)}`
        : `… − ${farads(taken.existingF)} − ${farads(taken.suppressorF)}`,
      si: roomUnderF(bound, taken),
      quantity: 'capacitance',
    })
  }
  if (row.most) {
    steps.push({
      formula: 'marked = room / (n · k_high), k_high = (1 + tol)(1 + temp)',
      withNumbers: `n = ${CAPACITOR_COUNT[row.topology]}, k_high = ${percent(sharesOf(setup).most)}`,
      si: row.most.markedF,
      quantity: 'capacitance',
    })
  }
  return {
    steps,
    assumptions: [...(works?.assumptions ?? []), 'a fresh part at 0 V: no bias or ageing loss is taken'],
    sources: works?.sources ?? [{ id: 'derived', standing: 'derived' }],
  }
}

/** How the proposal was chosen. */
export function proposalBasis({ proposal, least, upper }: WindowRow): Basis {
  return {
    steps: proposal
      ? [
          {
            formula: 'nearest preferred value inside to min(2·least, √(least·most))',
            withNumbers: `${proposal.series}; least ${farads(least?.markedF ?? 0)}${upper ? `, most ${farads(upper.markedF)}` : ''}`,
            si: proposal.valueF,
            quantity: 'capacitance',
          },
        ]
      : [],
    assumptions: [
      'twice the least is a 6 dB margin on a single capacitor: common practice',
      'a value that a document permits comes before one above it',
    ],
    sources: [
      { id: 'iec-60063', standing: 'memory' },
      { id: 'practice', standing: 'practice' },
    ],
  }
}
