/** What opens a shut window by the mode of its noise: a common-mode choke, or a capacitor from line to line. */
import { E6 } from '../../../reference/preferred-values.ts'
import { TOPOLOGIES } from '../../network/circuit.ts'
import type { Topology } from '../../types.ts'
import { leastChokeH } from './choke-least.ts'
import type { WindowGiven } from './inputs.ts'
import { meetsAt, type WindowRow, windowRow } from './row.ts'
import { setUp, type WindowSetup } from './setup.ts'

export type ModeOpener =
  | { readonly is: 'choke'; readonly choke: OfferedChoke; readonly row: WindowRow }
  | { readonly is: 'cross'; readonly farads: number; readonly row: WindowRow }

/** A choke as it is offered: every figure it was tried with, so that its own window says the same. */
export type OfferedChoke = { readonly windingH: number; readonly leakageH: number; readonly acrossF: number }

const decades = (from: number, to: number, digits: readonly number[]): readonly number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i).flatMap((decade) =>
    digits.map((digit) => Number((digit * 10 ** decade).toPrecision(2))),
  )
/** Windings to try, henries: 1 µH to 4.7 mH. */
const WINDINGS_H = decades(-6, -3, [1, 2.2, 4.7])
/** Fewer beside a capacitor, where each is a row of its own. */
const BESIDE_H = decades(-6, -4, [1, 4.7])
/** Across each winding where nothing was entered, F; usual for a small one, from memory. */
const USUAL_ACROSS_F = 2e-12
/** Most leakage of a wound choke as a share of its inductance, from memory. */
const MOST_LEAKAGE_FRAC = 0.02

/** Chokes only against common mode, line-to-line capacitors only against differential; nothing where neither helps. */
export function modeOpeners(row: WindowRow, setup: WindowSetup, given: WindowGiven): readonly ModeOpener[] {
  if (!setup.kind?.isPair && setup.kind?.supply === undefined) return []
  // of a line on which nothing works the row shown is the one asked for, or a capacitor: the simplest
  return setup.mode === 'common' ? chokes(row, setup, given) : crosses(setup, given)
}

/** The topology that was asked for, so that the same question is answered; else a capacitor, or nothing but the choke. */
const topologyOf = ({ topology }: WindowGiven): Topology => TOPOLOGIES.find((one) => one === topology) ?? 'C'

const isOpen = ({ verdict }: WindowRow): boolean => verdict === 'ok' || verdict === 'marginal'

function chokes(row: WindowRow, { kind, needs }: WindowSetup, given: WindowGiven): readonly ModeOpener[] {
  const topology = topologyOf(given)
  const acrossF = Math.max(given.chokeF, USUAL_ACROSS_F)
  const offered = (windingH: number): OfferedChoke => ({
    windingH,
    leakageH: Number((MOST_LEAKAGE_FRAC * windingH).toPrecision(3)),
    acrossF,
  })
  const around = ({ windingH, leakageH }: OfferedChoke): WindowSetup =>
    setUp({ ...given, chokeH: windingH, chokeLeakageH: leakageH, chokeF: acrossF, chokeWires: 'all' }, kind, needs)
  const leastH = leastChokeH(around(offered(WINDINGS_H[0] ?? 0)))
  const aloneH = leastH === undefined ? undefined : WINDINGS_H.find((windingH) => windingH >= leastH)
  if (aloneH !== undefined) {
    const choke = offered(aloneH)
    const again = windowRow(topology, around(choke))
    if (isOpen(again)) return [{ is: 'choke', choke, row: again }]
  }
  if (row.reasons.includes('no-room')) return []
  for (const windingH of BESIDE_H) {
    if (aloneH !== undefined && windingH >= aloneH) break
    const choke = offered(windingH)
    // The largest capacitor that fits has to do: only then is it worth a row.
    if (row.upper && !meetsAt(topology, around(choke), row.upper.markedF)) continue
    const again = windowRow(topology, around(choke))
    if (isOpen(again) && again.proposal) return [{ is: 'choke', choke, row: again }]
    // A larger one leaks more still.
    if (again.need.is === 'found' && again.reasons.includes('signal')) break
  }
  return []
}

/** Line-to-line capacitors to try, F: 10 pF to 4.7 µF; the smallest that opens a row of capacitors alone. */
const CROSS_F = decades(-11, -6, E6)

function crosses({ kind, needs }: WindowSetup, given: WindowGiven): readonly ModeOpener[] {
  const rowWith = (farads: number) => windowRow(topologyOf(given), setUp({ ...given, crossF: farads }, kind, needs))
  const larger = CROSS_F.filter((farads) => farads > (given.crossF ?? 0))
  // Sparse first: most windows that none opens are told by these alone.
  const first = larger.filter((_, i) => i % E6.length === 0).find((farads) => isOpen(rowWith(farads)))
  if (first === undefined) return []
  const from = Math.max(0, larger.indexOf(first) - E6.length + 1)
  for (const farads of larger.slice(from, larger.indexOf(first) + 1)) {
    const again = rowWith(farads)
    if (isOpen(again)) return [{ is: 'cross', farads, row: again }]
  }
  return []
}
