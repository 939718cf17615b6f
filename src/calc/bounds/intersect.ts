/** What all bounds together leave of the capacitance of one capacitor. The window is this intersection and nothing else. */
import { CAPACITOR_COUNT } from '../network/circuit.ts'
import type { Bound, Topology, Verdict } from '../types.ts'
import { VERDICT_RANK, worse } from '../verdict.ts'
import { type Judged, proposeF } from './preferred.ts'
import { roomUnderF, type Taken } from './room.ts'
import { leastShare, mostShare, type Spread } from './worst-case.ts'

/** Below this ratio of most to least there is no comfortable value. Common practice. */
export const NARROW_RATIO = 1.5

/** The smallest capacitor that is fitted for the signal's sake, F. Common practice. */
const LEAST_FITTED_F = 1e-12

/** A bound as a figure on one capacitor as marked; farads, Infinity for a need that no capacitor meets. */
export type Limit = { readonly id: string; readonly markedF: number }

export type Reason =
  | 'no-room'
  | 'never'
  | 'shut'
  | 'no-need'
  | 'no-ceiling'
  | 'nothing-needed'
  | 'no-value'
  | 'narrow'
  | 'resonance'
  | 'over-permitted'
  | 'signal'

export type Intersection = {
  /** undefined while no need is known */
  readonly least: Limit | undefined
  /** the tightest that physics or a rule sets */
  readonly most: Limit | undefined
  /** what ends the window from above: that, what fits, or a resonance that loses the need again */
  readonly upper: Limit | undefined
  readonly permitted: Limit | undefined
  /** capacitances where the need is lost again, as marked, ascending */
  readonly holes: readonly (readonly [number, number])[]
  readonly proposal: Judged | undefined
  readonly verdict: Verdict
  /** why it is no better; empty when ok */
  readonly reasons: readonly Reason[]
  /** ids of the bounds that decide the verdict */
  readonly decides: readonly string[]
}

/** Whether a bound says what the line stands, and so what may be proposed; not where only too much of it was seen. */
export const isCeiling = ({ nature, alone, isTooMuch }: Bound): boolean =>
  alone === true || (nature === 'works' && isTooMuch !== true)

type Question = { readonly taken: Taken; readonly spread: Spread; readonly topology: Topology }
type Stretch = { readonly from: Limit; readonly to: Limit | undefined }

/**
 * Intersects the bounds of one topology. Bounds per leg or pair become figures on one marked capacitor by what is taken
 * and by the spread: room / (n·k_high) for a most, farads / (n·k_low) for a least. `admits` says what else is true of a
 * value (what it does to the signal beside an inductor). Farads ≥ 0.
 */
export function intersect(
  bounds: readonly Bound[],
  taken: Taken,
  spread: Spread,
  topology: Topology,
  admits?: (markedF: number) => Verdict,
): Intersection {
  const question = { taken, spread, topology }
  const own = bounds.filter((bound) => bound.topology === 'any' || bound.topology === topology)
  const limit = (bound: Bound): Limit => ({ id: bound.id, markedF: markedUnder(bound, question) })
  const mosts = own.filter(({ side }) => side === 'most')
  const leasts = own.filter(({ side }) => side === 'least')
  const most = tightest(mosts.filter(({ nature }) => nature === 'works').map(limit))
  const closing = tightest(mosts.filter(({ nature }) => nature !== 'permitted').map(limit))
  const permitted = tightest(mosts.filter(({ nature }) => nature === 'permitted').map(limit))
  const least = leasts.map(limit).sort((a, b) => b.markedF - a.markedF)[0]
  const holes = leasts.flatMap((bound) => bound.holes ?? []).sort((a, b) => a[0] - b[0])
  const isKnown = mosts.some(isCeiling)
  const found = {
    least,
    most: notBelowZero(most),
    upper: notBelowZero(closing),
    permitted: notBelowZero(permitted),
    holes,
    proposal: undefined,
  }
  const told = (verdict: Verdict, reasons: readonly Reason[], decides: readonly (Limit | undefined)[]) => ({
    verdict,
    reasons,
    decides: decides.flatMap((one) => (one ? [one.id] : [])),
  })

  const hasCapacitor = CAPACITOR_COUNT[topology] > 0
  if (closing && (hasCapacitor ? closing.markedF <= 0 : closing.markedF < 0))
    return { ...found, ...told('fails', ['no-room'], [closing]) }
  if (least?.markedF === Number.POSITIVE_INFINITY) return { ...found, ...told('fails', ['never'], [least]) }
  if (!least) return { ...found, ...told('unknown', isKnown ? ['no-need'] : ['no-need', 'no-ceiling'], [closing]) }
  const passing = stretchesOf(
    least,
    leasts.map((bound) => ({ id: bound.id, holes: bound.holes ?? [] })),
    closing,
  )
  const last = passing.at(-1)
  if (!last) return { ...found, ...told('fails', ['shut'], [least, closing]) }
  const ceiling: readonly Reason[] = isKnown ? [] : ['no-ceiling']
  // With no capacitor at all the need is met: what a larger one would break is no concern.
  if (least.markedF === 0 && passing.some(({ from }) => from.markedF === 0)) {
    const admitted = admits?.(0) ?? 'ok'
    if (admitted === 'fails' && hasCapacitor) {
      // Beside a matched line a capacitor gives back what the coil takes from the signal.
      const from = { id: least.id, markedF: LEAST_FITTED_F }
      const balanced = proposed({ found, passing: [{ from, to: last.to }], admits, ceiling, told })
      if (balanced.proposal && balanced.verdict !== 'fails') return { ...balanced, least }
    }
    // The line is over its document's figure by itself.
    const isOver = permitted !== undefined && permitted.markedF <= 0
    const reasons = [
      ...ceiling,
      ...(admitted === 'ok' ? [] : (['signal'] as const)),
      ...(isOver ? (['over-permitted'] as const) : []),
      'nothing-needed' as const,
    ]
    const verdict = worse(isKnown ? admitted : worse(admitted, 'unknown'), isOver ? 'marginal' : 'ok')
    return { ...found, ...told(verdict, reasons, [least, closing, isOver ? permitted : undefined]) }
  }
  return proposed({ found, passing, admits, ceiling, told })
}

function proposed(q: {
  found: Omit<Intersection, 'verdict' | 'reasons' | 'decides'>
  passing: readonly Stretch[]
  admits: ((markedF: number) => Verdict) | undefined
  ceiling: readonly Reason[]
  told: (
    v: Verdict,
    r: readonly Reason[],
    d: readonly (Limit | undefined)[],
  ) => Pick<Intersection, 'verdict' | 'reasons' | 'decides'>
}): Intersection {
  const { found, admits, ceiling } = q
  const permittedF = found.permitted?.markedF
  let chosen = q.passing.at(-1) as Stretch
  let proposal: Judged | undefined
  // From the last stretch down: a value that fails the signal is no better than none.
  for (const stretch of q.passing.toReversed()) {
    const one = proposeF(stretch.from.markedF, stretch.to?.markedF ?? Number.POSITIVE_INFINITY, { permittedF, admits })
    if (!one || (proposal && one.verdict === 'fails')) continue
    proposal = one
    chosen = stretch
    if (one.verdict !== 'fails') break
  }
  const { from: least, to: upper } = chosen
  // Between two standard values a part could still be made: the better of the two ends speaks for it.
  const admitted = proposal ? admits?.(proposal.valueF) : bestOf(admits, [least.markedF, upper?.markedF])
  const isOver = proposal !== undefined && permittedF !== undefined && proposal.valueF > permittedF
  const isNarrow = proposal !== undefined && upper !== undefined && upper.markedF / least.markedF < NARROW_RATIO
  // Every larger capacitor would have to do as well for a clean yes.
  const endsInside = upper !== undefined && upper.id !== found.upper?.id
  const reasons: readonly Reason[] = [
    ...(admitted && admitted !== 'ok' ? (['signal'] as const) : []),
    ...ceiling,
    ...(proposal ? [] : (['no-value'] as const)),
    ...(isNarrow ? (['narrow'] as const) : []),
    ...(endsInside ? (['resonance'] as const) : []),
    ...(isOver ? (['over-permitted'] as const) : []),
  ]
  let verdict: Verdict = admitted ?? 'ok'
  if (ceiling.length > 0) verdict = worse(verdict, 'unknown')
  if (!proposal || isNarrow || isOver || endsInside) verdict = worse(verdict, 'marginal')
  const decides = [least, upper, isOver ? found.permitted : undefined]
  return { ...found, least, upper, proposal, ...q.told(verdict, reasons, decides) }
}

function bestOf(
  admits: ((markedF: number) => Verdict) | undefined,
  marks: readonly (number | undefined)[],
): Verdict | undefined {
  const said = marks.flatMap((markedF) => (markedF === undefined ? [] : (admits?.(markedF) ?? [])))
  return said.toSorted((a, b) => VERDICT_RANK[a] - VERDICT_RANK[b])[0]
}

/** Where every least bound is met below the closing bound, ascending; each end with the bound that sets it. */
function stretchesOf(
  least: Limit,
  needs: readonly { readonly id: string; readonly holes: readonly (readonly [number, number])[] }[],
  closing: Limit | undefined,
): readonly Stretch[] {
  const top = closing?.markedF ?? Number.POSITIVE_INFINITY
  if (least.markedF > top) return []
  let left: readonly Stretch[] = [{ from: least, to: closing }]
  for (const { id, holes } of needs) {
    for (const [from, to] of holes) {
      left = left.flatMap((stretch): readonly Stretch[] => {
        const startF = stretch.from.markedF
        const endF = stretch.to?.markedF ?? Number.POSITIVE_INFINITY
        if (to <= startF || from >= endF) return [stretch]
        return [
          ...(from > startF ? [{ from: stretch.from, to: { id, markedF: from } }] : []),
          ...(to < endF ? [{ from: { id, markedF: to }, to: stretch.to }] : []),
        ]
      })
    }
  }
  return left
}

/** The marked capacitance of one capacitor that a bound stands for; below 0 where it is over before the filter comes. */
function markedUnder(bound: Bound, { taken, spread, topology }: Question): number {
  if (bound.per === 'capacitor') return bound.farads
  const count = Math.max(1, CAPACITOR_COUNT[topology])
  if (bound.side === 'least')
    return (bound.per === 'pair' && taken.isPair ? 2 : 1) * (bound.farads / (count * leastShare(spread)))
  return roomUnderF(bound, taken) / (count * mostShare(spread))
}

function notBelowZero(limit: Limit | undefined): Limit | undefined {
  return limit && { ...limit, markedF: Math.max(0, limit.markedF) }
}

function tightest(limits: readonly Limit[]): Limit | undefined {
  return limits.reduce<Limit | undefined>((best, one) => (!best || one.markedF < best.markedF ? one : best), undefined)
}
