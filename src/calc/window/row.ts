/** One topology of the window: its least, its most, the proposal and the verdict. */

import { worstInBox } from '../bounds/box.ts'
import { type LeastMarked, leastMarkedF, leastMarkedH } from '../bounds/least-marked.ts'
import { type Proposal, proposeF } from '../bounds/preferred.ts'
import { mostMarkedF } from '../bounds/room.ts'
import type { Margin, Span, Surroundings } from '../bounds/surroundings.ts'
import { CAPACITOR_COUNT, hasInductor, TOPOLOGY_LABEL } from '../network/circuit.ts'
import type { Topology, Verdict } from '../types.ts'

/** Below this ratio of most to least there is no comfortable value. Common practice. */
const NARROW_RATIO = 1.5

/** A ceiling in farads per leg, before tolerance; `why` in words that fit after "at most … :". */
export type Ceiling = {
  readonly id: string
  readonly roomF: number
  readonly why: string
  /** the room if there were no suppressor */
  readonly bareRoomF?: number
}

export type WindowFacts = {
  /** undefined while the noise ends or the need are unknown */
  readonly around: Omit<Surroundings, 'topology'> | undefined
  readonly leastShare: number
  readonly mostShare: number
  readonly works: Ceiling | undefined
  readonly chassis: Ceiling | undefined
  readonly permitted: readonly Ceiling[]
  readonly buildableF: number | undefined
  /** true where the user's own figure (what can be built) may stand as the only ceiling: power lines */
  readonly ownCeilingIsEnough: boolean
  /** what the inductor does to the signal at a given marked capacitance, if it hurts */
  readonly inductorHurt: (topology: Topology, legF: number) => string | undefined
}

export type Limit = { readonly id: string; readonly markedF: number; readonly why: string; readonly bareF?: number }

export type WindowRow = {
  readonly topology: Topology
  readonly label: string
  readonly least:
    | LeastMarked
    | { readonly is: 'unknown' }
    | { readonly is: 'inductor-only'; readonly at: Margin; readonly leastH: number | undefined }
  /** marked */
  readonly leastF: number | undefined
  readonly holes: readonly (readonly [number, number])[]
  /** signal or chassis ceiling, marked */
  readonly most: Limit | undefined
  /** the tightest of ceiling and what can be built */
  readonly upper: Limit | undefined
  readonly permitted: Limit | undefined
  readonly proposal: Proposal | undefined
  /** worst-case margin at the proposal (or at the least when there is none) */
  readonly service: Margin | undefined
  readonly verdict: Verdict
  readonly note: string
}

export function windowRow(topology: Topology, facts: WindowFacts): WindowRow {
  const around = facts.around ? { ...facts.around, topology } : undefined
  const count = CAPACITOR_COUNT[topology]
  const label = TOPOLOGY_LABEL[topology]
  if (count === 0) return inductorRow(topology, label, around, facts)
  const least = around ? leastMarkedF(around, sharesOf(facts)) : ({ is: 'unknown' } as const)
  const leastF = least.is === 'found' ? least.marked : least.is === 'none-needed' ? 0 : undefined
  const holes = least.is === 'found' ? least.holes : []
  const limits = limitsOf(count, facts)
  const base = { topology, label, least, leastF, holes, ...limits }
  const upperF = limits.upper?.markedF ?? Number.POSITIVE_INFINITY
  const proposal = leastF === undefined || least.is === 'none-needed' ? undefined : proposeF(leastF, upperF)
  const atF = proposal?.valueF ?? leastF
  const service = around && atF !== undefined ? worstInBox(around, sharesOf(facts), atF) : undefined
  const judged = judge({ topology, least, leastF, limits, proposal, facts })
  return { ...base, proposal, service, ...judged }
}

/** The series inductor alone: met or not, and the least inductance that would meet it. */
function inductorRow(
  topology: Topology,
  label: string,
  around: Surroundings | undefined,
  facts: WindowFacts,
): WindowRow {
  const empty = {
    topology,
    label,
    leastF: undefined,
    holes: [],
    most: undefined,
    upper: undefined,
    permitted: undefined,
    proposal: undefined,
  }
  if (!around)
    return {
      ...empty,
      least: { is: 'unknown' },
      service: undefined,
      verdict: 'unknown',
      note: 'needs the noise ends and the need',
    }
  // The inductance entered is its least; the part can be anything up to the most.
  const leastEnteredH = Math.min(...around.inductancesH)
  const shares = { least: 1, most: Math.max(...around.inductancesH) / leastEnteredH }
  const at = worstInBox(around, shares, leastEnteredH)
  const found = leastMarkedH(around, shares)
  const leastH = found.is === 'found' ? found.marked : found.is === 'none-needed' ? 0 : undefined
  const hurt = facts.inductorHurt(topology, 0)
  const met = at.db >= -1e-9
  return {
    ...empty,
    least: { is: 'inductor-only', at, leastH },
    service: at,
    verdict: !met ? 'fails' : hurt ? 'marginal' : 'ok',
    note: met ? (hurt ?? 'no capacitor needed') : 'this inductor alone is too small',
  }
}

/** Shares of the marked value a capacitor can have in service. */
function sharesOf(facts: WindowFacts): Span {
  return { least: facts.leastShare, most: facts.mostShare }
}

function limitsOf(count: number, facts: WindowFacts) {
  const marked = (roomF: number) => mostMarkedF(roomF, count, facts.mostShare)
  const limit = (c: Ceiling): Limit => ({
    id: c.id,
    why: c.why,
    markedF: marked(c.roomF),
    ...(c.bareRoomF === undefined ? {} : { bareF: marked(c.bareRoomF) }),
  })
  const tightest = (all: readonly (Limit | undefined)[]) =>
    all.reduce<Limit | undefined>((best, one) => (one && (!best || one.markedF < best.markedF) ? one : best), undefined)
  const most = tightest([facts.works && limit(facts.works), facts.chassis && limit(facts.chassis)])
  const built =
    facts.buildableF === undefined
      ? undefined
      : { id: 'buildable', markedF: facts.buildableF, why: 'the largest that fits the contact' }
  return { most, upper: tightest([most, built]), permitted: tightest(facts.permitted.map(limit)) }
}

type Judged = { readonly verdict: Verdict; readonly note: string }

function judge(q: {
  topology: Topology
  least: WindowRow['least']
  leastF: number | undefined
  limits: ReturnType<typeof limitsOf>
  proposal: Proposal | undefined
  facts: WindowFacts
}): Judged {
  const { least, leastF, limits, proposal, facts } = q
  const upperF = limits.upper?.markedF
  if (upperF !== undefined && upperF <= 0) return { verdict: 'fails', note: 'no room left' }
  if (least.is === 'never') return { verdict: 'fails', note: 'no capacitor is large enough' }
  if (leastF !== undefined && upperF !== undefined && leastF > upperF) return { verdict: 'fails', note: 'shut' }
  if (leastF === undefined) return { verdict: 'unknown', note: 'needs the noise ends and the need' }
  const ceilingKnown = limits.most !== undefined || (facts.ownCeilingIsEnough && facts.buildableF !== undefined)
  if (!ceilingKnown) return { verdict: 'unknown', note: 'no ceiling known' }
  if (least.is === 'none-needed') return { verdict: 'ok', note: 'nothing needed' }
  if (!proposal) return { verdict: 'marginal', note: 'open, but no standard value' }
  if (upperF !== undefined && upperF / leastF < NARROW_RATIO) return { verdict: 'marginal', note: 'narrow' }
  const permittedF = limits.permitted?.markedF
  if (permittedF !== undefined && proposal.valueF > permittedF)
    return { verdict: 'marginal', note: 'above the permitted figure' }
  const hurt = hasInductor(q.topology)
    ? facts.inductorHurt(q.topology, proposal.valueF * CAPACITOR_COUNT[q.topology])
    : undefined
  return hurt ? { verdict: 'marginal', note: hurt } : { verdict: 'ok', note: 'open' }
}
