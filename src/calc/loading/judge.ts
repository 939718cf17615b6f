/** The one judgement of a signal: what it sees against what it stands, and what a coil does to it. Numbers only. */

import { atOneNode, roomPerLegF, roomToChassisF, type Taken } from '../bounds/room.ts'
import type { Verdict } from '../terms.ts'
import { worse } from '../verdict.ts'
import { type Around, cornerLadders, legSpan, type SignalFilter, sectionBox } from './box.ts'
import { seenFarads } from './budget.ts'
import { type CeilingAsk, type LoadingCeiling, loadingCeiling, type PermittedCeiling } from './ceiling.ts'
import { combinedEdgeSec, inductorRiseSec, riseSec } from './edge.ts'
import { carriesSignal, ownEdgeLimitSec, signalEnds } from './inductor.ts'
import { ladderLossDb, ladderOhm, ladderPhaseDeg, ladderReturnLossDb, type SignalLadder } from './ladder.ts'
import { resonanceReasons } from './resonance-reasons.ts'
import { maskDb, maskGrid, maskReferences } from './return-loss.ts'
import { type SignalFacts, signalOhmOf, usefulHzOf } from './signal.ts'

/** Why a signal is judged as it is: the criterion, the value, the limit. SI units, dB, degrees. */
export type LoadingReason =
  /** no ceiling is known: the field that would tell it is in the ceiling */
  | { readonly is: 'no-ceiling'; readonly verdict: 'unknown' }
  /** most the signal sees against what works; room and filter per leg */
  | {
      readonly is: 'works'
      readonly verdict: 'ok' | 'fails'
      readonly seenF: number
      readonly worksF: number
      readonly roomF: number
      readonly legF: number
    }
  | { readonly is: 'permitted'; readonly verdict: 'marginal'; readonly id: string; readonly roomF: number }
  /** a limit of the user's own that cannot be worked out */
  | { readonly is: 'own-lacks'; readonly verdict: 'unknown'; readonly ask: CeilingAsk }
  /** a line-to-line capacitor on a single line */
  | { readonly is: 'cross-on-single'; readonly verdict: 'unknown' }
  /** a coil, and the resistance the signal sees is not known */
  | { readonly is: 'resistance-unknown'; readonly verdict: 'unknown' }
  | {
      readonly is: 'ringing'
      readonly verdict: 'marginal'
      readonly damping: number
      readonly leastDamping: number
      readonly hz: number
    }
  /** a step goes over its end by this share */
  | {
      readonly is: 'overshoot'
      readonly verdict: 'marginal'
      readonly overshootFrac: number
      readonly mostFrac: number
    }
  | { readonly is: 'gain'; readonly verdict: 'marginal'; readonly gainDb: number; readonly hz: number }
  | { readonly is: 'own-edge' | 'edge'; readonly verdict: 'fails'; readonly edgeSec: number; readonly limitSec: number }
  | {
      readonly is: 'mask'
      readonly verdict: 'fails'
      readonly returnLossDb: number
      readonly maskDb: number
      readonly hz: number
    }
  | {
      readonly is: 'band-loss'
      readonly verdict: 'fails'
      readonly lossDb: number
      readonly limitDb: number
      readonly hz: number
    }
  | {
      readonly is: 'phase'
      readonly verdict: 'fails'
      readonly deg: number
      readonly limitDeg: number
      readonly hz: number
    }
  | {
      readonly is: 'terminal'
      readonly verdict: 'fails'
      readonly ohm: number
      readonly leastOhm: number
      readonly hz: number
    }

export type LoadingJudgement = {
  /** the worst of the reasons */
  readonly verdict: Verdict
  /** every reason, in the order they were looked at */
  readonly reasons: readonly LoadingReason[]
  readonly ceiling: LoadingCeiling
}

export type LoadingQuestion = {
  readonly facts: SignalFacts
  readonly taken: Taken
  readonly filter: SignalFilter
}

/** Rounding of a capacitance typed as the ceiling itself must not turn it into a failure. */
const HAIR = 1 + 1e-9
const HAIR_DB = 1e-9

/** Whether a capacitance in F is over its room, rounding apart. */
export const isOver = (legF: number, roomF: number): boolean => legF > Math.max(0, roomF) * HAIR

/** Room in F per leg under a document's figure. */
export function permittedRoomF(figure: PermittedCeiling, taken: Taken): number {
  const own = atOneNode(taken)
  return figure.per === 'leg' ? roomToChassisF(figure.farads, own) : roomPerLegF(figure.farads, own)
}

/**
 * Judges a filter on a line over the whole box of its tolerances: capacitance at its most against what works (fails)
 * and what documents permit (marginal); with a coil mask, own edge, edge, band loss, phase and terminal impedance
 * (fails) and least damping below 0.7 or a resonant gain (marginal). Unknown where no ceiling, or the resistance a coil
 * works against, is known. Single parts: spans whose least and most are equal.
 */
export function judgeLoading({ facts, taken, filter }: LoadingQuestion): LoadingJudgement {
  const ceiling = loadingCeiling(facts)
  const reasons = [
    ...capacitanceReasons(ceiling, taken, legSpan(filter).most),
    ...(!taken.isPair && taken.crossF > 0 ? [{ is: 'cross-on-single', verdict: 'unknown' } as const] : []),
    ...coilReasons(facts, taken, filter),
  ]
  return { verdict: reasons.reduce<Verdict>((worst, { verdict }) => worse(worst, verdict), 'ok'), reasons, ceiling }
}

function capacitanceReasons(
  { works, permitted, lacks }: LoadingCeiling,
  taken: Taken,
  legF: number,
): readonly LoadingReason[] {
  const over = permitted.flatMap((figure): readonly LoadingReason[] => {
    const roomF = permittedRoomF(figure, taken)
    // A line that is over its document's figure by itself is so with any filter.
    return roomF < 0 || isOver(legF, roomF) ? [{ is: 'permitted', verdict: 'marginal', id: figure.id, roomF }] : []
  })
  if (works.farads === undefined) return [{ is: 'no-ceiling', verdict: 'unknown' }, ...over]
  const lacking = lacks.map((ask) => ({ is: 'own-lacks', verdict: 'unknown', ask }) as const)
  const roomF = roomPerLegF(works.farads, taken)
  const verdict = roomF <= 0 || isOver(legF, roomF) ? 'fails' : 'ok'
  const seenF = seenFarads({ ...taken, legF })
  return [{ is: 'works', verdict, seenF, worksF: works.farads, roomF, legF }, ...lacking, ...over]
}

/** Whether the coils of a filter fail the signal: for a look at one part before its whole box is judged. */
export function coilFails(facts: SignalFacts, taken: Taken, filter: SignalFilter): boolean {
  const ends = carriesSignal(facts.kind) ? signalEnds(facts) : undefined
  if (ends === undefined) return false
  const around: Around = { kind: facts.kind, taken, ...ends }
  if (edgeReasons(facts, filter, around).length > 0) return true
  const ladders = cornerLadders(filter, around)
  return [maskReasons, bandReasons, terminalReasons].some(
    (judge) => ladders.length > 0 && judge(facts, ladders).length > 0,
  )
}

/** What the coils of a filter do to the signal, over the whole box; empty without one. Part of `judgeLoading`. */
export function coilReasons(facts: SignalFacts, taken: Taken, filter: SignalFilter): readonly LoadingReason[] {
  const { kind } = facts
  if (!carriesSignal(kind)) return []
  const ends = signalEnds(facts)
  // Impedances that need no source resistance are still judged: the least damped end stands in.
  const around: Around = { kind, taken, ...(ends ?? { sourceOhm: 1, loadOhm: Number.POSITIVE_INFINITY }) }
  const ladders = cornerLadders(filter, around)
  if (ladders.length === 0) return []
  if (ends === undefined) return [{ is: 'resistance-unknown', verdict: 'unknown' }, ...terminalReasons(facts, ladders)]
  return [
    ...resonanceReasons(facts, filter, around),
    ...edgeReasons(facts, filter, around),
    ...maskReasons(facts, ladders),
    ...bandReasons(facts, ladders),
    ...terminalReasons(facts, ladders),
  ]
}

function edgeReasons(facts: SignalFacts, filter: SignalFilter, around: Around): readonly LoadingReason[] {
  const box = sectionBox(filter, around)
  const ohm = signalOhmOf(facts)
  if (box === undefined || ohm === undefined) return []
  const rule = facts.kind.loading
  const ownSec = inductorRiseSec({ henries: box.henries.most, loopOhm: box.sourceOhm + box.loadOhm })
  const limitSec = ownEdgeLimitSec(facts)
  if (limitSec !== undefined)
    return ownSec > limitSec * HAIR ? [{ is: 'own-edge', verdict: 'fails', edgeSec: ownSec, limitSec }] : []
  if (rule.rule !== 'edge-rss') return []
  const driverEdgeSec = facts.driverEdgeSec ?? rule.driverEdgeSec
  const farads = box.farads.most + (box.damper?.farads.most ?? 0)
  const edgeSec = combinedEdgeSec([driverEdgeSec, riseSec({ ohm, farads }), ownSec])
  return edgeSec > rule.slowestEdgeSec * HAIR
    ? [{ is: 'edge', verdict: 'fails', edgeSec, limitSec: rule.slowestEdgeSec }]
    : []
}

function maskReasons({ kind }: SignalFacts, ladders: readonly SignalLadder[]): readonly LoadingReason[] {
  const rule = kind.loading
  if (rule.rule !== 'return-loss') return []
  let worst: Extract<LoadingReason, { is: 'mask' }> | undefined
  for (const ladder of ladders)
    for (const segment of rule.mask)
      for (const hz of maskGrid(segment)) {
        const found = Math.min(...maskReferences(rule).map((ohm) => ladderReturnLossDb(ladder, ohm, hz)))
        const asked = maskDb(segment, hz)
        if (found >= asked - HAIR_DB) continue
        if (worst === undefined || found - asked < worst.returnLossDb - worst.maskDb)
          worst = { is: 'mask', verdict: 'fails', returnLossDb: found, maskDb: asked, hz }
      }
  return worst === undefined ? [] : [worst]
}

/** Loss and phase at the highest useful frequency, against the criterion of the kind and against the user's own. */
function bandReasons(facts: SignalFacts, ladders: readonly SignalLadder[]): readonly LoadingReason[] {
  const rule = facts.kind.loading
  const hz = usefulHzOf(facts)
  if (hz === undefined) return []
  const { mostLossDb = Number.POSITIVE_INFINITY, mostPhaseDeg = Number.POSITIVE_INFINITY } = facts.own ?? {}
  const limitDb = Math.min(mostLossDb, rule.rule === 'band-loss' ? rule.mostDb : Number.POSITIVE_INFINITY)
  const limitDeg = Math.min(mostPhaseDeg, rule.rule === 'phase' ? rule.mostDeg : Number.POSITIVE_INFINITY)
  const said: LoadingReason[] = []
  if (Number.isFinite(limitDb)) {
    const lossDb = Math.max(...ladders.map((ladder) => ladderLossDb(ladder, hz)))
    if (lossDb > limitDb + HAIR_DB) said.push({ is: 'band-loss', verdict: 'fails', lossDb, limitDb, hz })
  }
  if (Number.isFinite(limitDeg)) {
    const deg = Math.max(...ladders.map((ladder) => Math.abs(ladderPhaseDeg(ladder, hz))))
    if (deg > limitDeg * HAIR) said.push({ is: 'phase', verdict: 'fails', deg, limitDeg, hz })
  }
  return said
}

/** What a tester sees through the coil: below its resonance a coil takes from the impedance of the capacitance. */
function terminalReasons({ kind }: SignalFacts, ladders: readonly SignalLadder[]): readonly LoadingReason[] {
  const rule = kind.loading
  if (rule.rule !== 'terminal-impedance') return []
  const open = ladders.map((ladder) => ({ ...ladder, loadOhm: Number.POSITIVE_INFINITY }))
  const ohm = Math.min(...open.map((ladder) => ladderOhm(ladder, rule.atHz)))
  return ohm < rule.leastOhm / HAIR
    ? [{ is: 'terminal', verdict: 'fails', ohm, leastOhm: rule.leastOhm, hz: rule.atHz }]
    : []
}
