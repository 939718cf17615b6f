/** What the filter check says of a common-mode choke, and of the ends of a pair. */
import { countedChoke, ONE_WIRE, usualLeakage } from '../../explain/choke.ts'
import { worstChokeConversion } from '../../network/choke.ts'
import { ratioDb } from '../../pair.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Basis, Finding } from '../../types.ts'
import type { Filtered } from './figures.ts'

const ohms = (x: number) => formatQuantity(x, 'resistance', 4)
const henries = (x: number) => formatQuantity(x, 'inductance', 4)
const db = (x: number) => formatQuantity(x, 'decibel', 4)

const ok = (sentence: string): Finding => ({ verdict: 'ok', sentence })

/** What was counted of the choke, and what it takes to be one. */
export function chokeFindings(q: Filtered, conversionDb: number | undefined): readonly Finding[] {
  return [...modeFinding(q), ...coreFinding(q), ...leakageFinding(q), ...conversionFinding(q, conversionDb)]
}

function modeFinding({ mode, ends }: Filtered): readonly Finding[] {
  if (mode === undefined || ends === undefined) return []
  const seen = `${ohms(ends.source.ohm)} from the source and ${ohms(ends.load.ohm)} at the load`
  return [
    ok(
      mode === 'common'
        ? `Common mode: each leg sees twice the impedances entered, ${seen}, and twice the bond.`
        : `Differential mode: each leg sees half the impedances entered, ${seen}, and none of the bond.`,
    ),
  ]
}

function coreFinding({ choke, circuit }: Filtered): readonly Finding[] {
  if (choke === undefined) return []
  if (choke.current === 'one-wire') return [ONE_WIRE]
  const legH = henries(circuit.choke?.part.inductanceH ?? 0)
  return [
    countedChoke(choke.current, legH),
    ...(choke.side === 'source' && circuit.shunt1.capacitanceF === 0 && circuit.topology === 'C'
      ? [ok('No capacitor was entered: the choke alone.')]
      : []),
  ]
}

function leakageFinding({ choke }: Filtered): readonly Finding[] {
  return choke === undefined || choke.current === 'one-wire' || choke.isLeakageStated
    ? []
    : [usualLeakage(henries(choke.choke.leakageH))]
}

function conversionFinding({ choke, ends }: Filtered, conversionDb: number | undefined): readonly Finding[] {
  if (choke === undefined || ends === undefined || conversionDb === undefined) return []
  const worst = worstChokeConversion(choke.choke, { sourceOhm: ends.source.ohm, loadOhm: ends.load.ohm })
  // Capacitance across the windings can lift it above half the mismatch.
  const most = choke.choke.acrossF === 0 ? `, at most ${db(ratioDb(worst))} at any frequency` : ''
  return [ok(`Its windings differ: ${db(conversionDb)} of the common mode becomes signal there${most}.`)]
}

/** How the conversion came about. */
export function conversionBasis({ choke, ends, worst }: Filtered): Basis {
  return {
    steps: [],
    assumptions: [
      `windings apart by ${formatQuantity(choke?.choke.mismatchFrac ?? 0, 'fraction', 3)} of their mean, the choke alone between ${ohms(worst?.source.ohm ?? 0)} and ${ohms(ends?.load.ohm ?? 0)} in each leg`,
      'against the common mode at the load without the choke',
    ],
    sources: [{ id: 'derived', clause: 'coupled windings; checked against ngspice', standing: 'derived' }],
  }
}

/** How a choke counts, for the working of the loss. */
export function chokeAssumptions({ choke }: Filtered): readonly string[] {
  if (choke === undefined) return []
  if (choke.current === 'one-wire') return ['the choke around one wire at its full inductance: without saturation']
  return [
    choke.current === 'common'
      ? 'a leg sees 2·L − leakage/2 of the choke: both currents magnetise it alike'
      : 'a leg sees leakage/2 of the choke: the currents cancel in the core',
  ]
}
