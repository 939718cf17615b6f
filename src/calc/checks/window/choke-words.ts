/** What the window says of a common-mode choke. */
import { countedChoke, ONE_WIRE, usualLeakage } from '../../explain/choke.ts'
import { TOPOLOGY_LABEL } from '../../network/circuit.ts'
import { formatQuantity } from '../../quantity/format.ts'
import type { Finding } from '../../types.ts'
import { leastChokeH } from './choke-least.ts'
import type { ModeOpener } from './mode-openers.ts'
import type { WindowRow } from './row.ts'
import type { WindowSetup } from './setup.ts'

const henries = (x: number) => formatQuantity(x, 'inductance', 3)
const farads = (x: number) => formatQuantity(x, 'capacitance', 3)

/** How it was counted, and what it would have to be to do alone. */
export function chokeFindings(row: WindowRow, setup: WindowSetup): readonly Finding[] {
  const { choke, mode, isOneWire } = setup
  if (isOneWire) return [ONE_WIRE, { verdict: 'unknown', sentence: 'The window counts nothing of it.' }]
  if (choke === undefined) return []
  return [
    countedChoke(mode, henries(choke.leg.spanH.least)),
    ...(choke.isLeakageStated ? [] : [usualLeakage(henries(choke.windings.leakageH))]),
    ...aloneFinding(row, setup),
  ]
}

function aloneFinding({ need }: WindowRow, setup: WindowSetup): readonly Finding[] {
  const leastH = leastChokeH(setup)
  if (leastH === undefined || leastH === 0) return []
  const does = need.is === 'choke-alone' ? 'does it' : 'would do it'
  return [{ verdict: 'ok', sentence: `A choke of at least ${henries(leastH)} alone ${does}.` }]
}

/** A choke that opens a shut window, with every figure it was tried with. */
export function chokeOpens({ choke, row }: Extract<ModeOpener, { is: 'choke' }>): string {
  const { windingH, leakageH, acrossF } = choke
  const opens = row.proposal
    ? `and ${farads(row.proposal.valueF)} in ${TOPOLOGY_LABEL[row.topology]} on each leg open it`
    : `${row.need.is === 'choke-alone' ? 'alone ' : ''}opens it`
  return `A common-mode choke of ${henries(windingH)} ${opens}: leakage ${henries(leakageH)} at most, ${farads(acrossF)} across each winding, every wire through the core.`
}

/** The same in a few words. */
export const chokeWords = ({ choke, row }: Extract<ModeOpener, { is: 'choke' }>): string =>
  `a common-mode choke of ${henries(choke.windingH)}${
    row.proposal ? ` and ${farads(row.proposal.valueF)} on each leg` : row.need.is === 'choke-alone' ? ' alone' : ''
  }`
