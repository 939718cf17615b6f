/** What decides how much capacitance a line stands, in words and workings. */
import type { LineKind } from '../../reference/line-kinds.ts'
import type { CeilingAsk, Criterion, PermittedCeiling, Works } from '../loading/ceiling.ts'
import type { SignalFacts } from '../loading/signal.ts'
import { formatQuantity } from '../quantity/format.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Basis, Step } from '../types.ts'

const show = (si: number, quantity: Quantity, digits = 3): string => formatQuantity(si, quantity, digits)
const ohms = (si: number) => show(si, 'resistance')
const secs = (si: number) => show(si, 'time')

/** Why the ceiling is where it is, as a clause after "at most …:"; or what to enter so that there is one. */
export function worksWhy(facts: SignalFacts, works: Works): string {
  if (works.farads !== undefined) return reasonOf(facts.kind, works.criterion, works.farads)
  if (works.ask !== undefined) return `Enter ${askedWord(facts, works.ask)}: what this line can stand depends on it.`
  const { loading } = facts.kind
  return loading.rule === 'none' ? loading.why : 'No ceiling is known for this line.'
}

/** What a field is called where a ceiling asks for it: on I²C the signal resistance is the pull-up. */
export function askedWord({ kind }: SignalFacts, ask: CeilingAsk): string {
  if (ask === 'bitRateHz') return 'the bit rate'
  if (ask === 'usefulHz') return 'the highest useful frequency'
  switch (kind.loading.rule) {
    case 'i2c-rise':
      return 'the pull-up as the signal resistance'
    case 'own-edge':
    case 'can-recessive':
      return 'the resistance the signal sees at the capacitor'
    default:
      return 'the resistance the signal sees'
  }
}

/** The working of the ceiling, with the sources of its criterion. */
export function worksBasis(facts: SignalFacts, works: Works): Basis {
  return {
    steps: works.farads === undefined ? [] : [stepOf(works.criterion, works.farads)],
    assumptions: signalAssumptions(facts),
    sources: [facts.kind.loadingSource, { id: 'derived', standing: 'derived' }],
  }
}

/** What is taken from the kind because it was not entered. */
export function signalAssumptions({ kind, signalOhm }: SignalFacts): readonly string[] {
  if (signalOhm !== undefined || kind.signalOhm === undefined) return []
  return [`signal resistance ${ohms(kind.signalOhm.ohm)}: ${kind.signalOhm.why}`]
}

const whose = (isOwn: boolean): string => (isOwn ? 'your own figure' : 'common practice')

const isRangeEnd = ({ loading }: LineKind, { referenceOhm }: Extract<Criterion, { rule: 'return-loss' }>): boolean =>
  loading.rule === 'return-loss' && loading.overOhm?.includes(referenceOhm) === true

function reasonOf(kind: LineKind, by: Criterion, farads: number): string {
  switch (by.rule) {
    case 'terminal-impedance':
      return `the terminal must stay at or above ${ohms(by.leastOhm)} up to ${show(by.atHz, 'frequency')}, transformer and wiring of the box included`
    case 'slew':
      return `the ±${show(by.bandV / 2, 'voltage')} band must be crossed within ${secs(by.crossingSec)} by a driver of ${show(by.driverA, 'current')}`
    case 'can-recessive':
      return `the recessive edge (2.0 → 0.5 V) may take ${secs(by.limitSec)}, ${show(by.shareOfInterval, 'fraction')} of a bit, through ${ohms(by.ohm)}`
    case 'own-edge':
      return `its own edge (10–90 %) may take ${secs(by.limitSec)}, ${show(by.shareOfInterval, 'fraction')} of a bit, through ${ohms(by.ohm)}`
    case 'i2c-rise':
      return `the rise (30–70 %) may take ${secs(by.riseSec)} through a pull-up of ${ohms(by.ohm)}`
    case 'fixed-edge':
      return `the edge may take ${secs(by.mostSec)} through ${ohms(by.ohm)} (common practice for a discrete)`
    case 'edge-rss': {
      const said = by.isDriverStated ? 'the stated' : 'the nominal'
      return farads === 0
        ? `${said} driver edge of ${secs(by.driverEdgeSec)} already takes the whole ${secs(by.slowestEdgeSec)} the standard allows`
        : `the edge may slow from ${said} ${secs(by.driverEdgeSec)} to ${secs(by.slowestEdgeSec)} through ${ohms(by.ohm)}`
    }
    case 'return-loss':
      return `return loss must stay at or above ${show(by.db, 'decibel', 4)} at ${show(by.hz, 'frequency')}, against ${ohms(by.referenceOhm)}${isRangeEnd(kind, by) ? ', an end of the cable range its document names' : ''}; the mask is for the whole port, which transceiver and magnetics share`
    case 'phase':
      return `the carrier, up to ${show(by.hz, 'frequency')}, may turn by ${show(by.mostDeg, 'angle')} through ${ohms(by.ohm)} (${whose(by.isOwn)})`
    case 'band-loss':
      return `the signal may lose ${show(by.mostDb, 'decibel')} at ${show(by.hz, 'frequency')} through ${ohms(by.ohm)} (${whose(by.isOwn)})`
    case 'own-farads':
      return `your own figure allows ${show(farads, 'capacitance')} in all`
  }
}

function stepOf(by: Criterion, farads: number): Step {
  const step = (formula: string, withNumbers: string): Step => ({
    formula,
    withNumbers,
    si: farads,
    quantity: 'capacitance',
  })
  switch (by.rule) {
    case 'own-farads':
      return step('your own figure', show(farads, 'capacitance'))
    case 'terminal-impedance':
      return step('C = 1 / (2π·f·|Z|)', `1 / (2π · ${show(by.atHz, 'frequency')} · ${ohms(by.leastOhm)})`)
    case 'slew':
      return step(
        'C = I · t / V',
        `${show(by.driverA, 'current')} · ${secs(by.crossingSec)} / ${show(by.bandV, 'voltage')}`,
      )
    case 'can-recessive':
      return step(
        'C = share · T / (ln 4 · R)',
        `${show(by.shareOfInterval, 'fraction')} · ${secs(by.bitSec)} / (1.386 · ${ohms(by.ohm)})`,
      )
    case 'own-edge':
      return step(
        'C = share · T / (ln 9 · R)',
        `${show(by.shareOfInterval, 'fraction')} · ${secs(by.bitSec)} / (2.197 · ${ohms(by.ohm)})`,
      )
    case 'i2c-rise':
      return step('C = t / (0.8473 · R)', `${secs(by.riseSec)} / (0.8473 · ${ohms(by.ohm)})`)
    case 'fixed-edge':
      return step('C = t / (ln 9 · R)', `${secs(by.mostSec)} / (2.197 · ${ohms(by.ohm)})`)
    case 'edge-rss':
      return step(
        'C = √(t_max² − t0²) / (ln 9 · R)',
        `√(${secs(by.slowestEdgeSec)}² − ${secs(by.driverEdgeSec)}²) / (2.197 · ${ohms(by.ohm)})`,
      )
    case 'return-loss':
      return step(
        'C = 2g / (ω · Z0 · √(1 − g²)), g = 10^(−RL/20)',
        `RL ${show(by.db, 'decibel', 4)} at ${show(by.hz, 'frequency')}, line ${ohms(2 * by.ohm)}`,
      )
    case 'phase':
      return step(
        'C = tan φ / (2π·f·R)',
        `tan ${show(by.mostDeg, 'angle')} / (2π · ${show(by.hz, 'frequency')} · ${ohms(by.ohm)})`,
      )
    case 'band-loss':
      return step(
        'C = √(10^(dB/10) − 1) / (2π·f·R)',
        `√(10^(${show(by.mostDb, 'decibel')}/10) − 1) / (2π · ${show(by.hz, 'frequency')} · ${ohms(by.ohm)})`,
      )
  }
}

/** A document's figure as the document puts it. */
export function permittedLabel({ loading, permitted }: LineKind, { id }: PermittedCeiling): string {
  const printed = permitted.find((row) => row.id === id)
  if (printed !== undefined) return printed.label
  const corner = loading.rule === 'return-loss' ? loading.cornerOhm : undefined
  return `return-loss mask${corner === undefined ? '' : ` with its ${ohms(corner)} corner`}, whole port`
}

/** The figure of a document as the working of a bound. */
export function permittedBasis(kind: LineKind, ceiling: PermittedCeiling): Basis {
  return {
    steps: [
      {
        formula: 'figure of the document',
        withNumbers: permittedLabel(kind, ceiling),
        si: ceiling.farads,
        quantity: 'capacitance',
      },
    ],
    assumptions: [],
    sources: [ceiling.source],
  }
}

/**
 * The same figure said once as the document counts it and once as each leg to chassis of a pair sees it, with names:
 * "50 pF between the lines, which is 100 pF from each leg to chassis". `legF`: room of each leg under it, what is
 * already on the line taken off.
 */
export function permittedInLegs(kind: LineKind, ceiling: PermittedCeiling, legF: number): string {
  const room = show(Math.max(0, legF), 'capacitance')
  const label = permittedLabel(kind, ceiling)
  if (ceiling.per === 'pair')
    return `${label}: as each leg to chassis twice that, ${show(2 * ceiling.farads, 'capacitance')}, of which ${room} are left beside what is on the line`
  return `${label}: ${room}${kind.isPair ? ' on each leg' : ''} are left beside what is on the line`
}
