/** What the coils of a filter make a signal ring, go over its end or gain, over the box of tolerances. */
import { type Around, cornerLadders, type SignalFilter, sectionBox, stepBox } from './box.ts'
import { dampingRatio, LEAST_DAMPING, leastDamped, ringHz, ringingEnds } from './inductor.ts'
import type { LoadingReason } from './judge.ts'
import { ladderPeak, type SignalLadder } from './ladder.ts'
import { overshootOf, worstOvershoot } from './overshoot.ts'
import type { SignalFacts } from './signal.ts'

const HAIR_SHARE = 1e-6
/** A resonance that lifts the signal by this much is heard of; the filter check speaks up at the same. */
const GAIN_DB = 0.1

/** Ringing, overshoot or gain, where the resistance of the signal lets it ring most; then where it was taken for the rest. */
export function resonanceReasons(facts: SignalFacts, filter: SignalFilter, around: Around): readonly LoadingReason[] {
  const hardest: Around = { ...around, ...ringingEnds(facts) }
  for (const one of hardest.sourceOhm === around.sourceOhm ? [around] : [hardest, around]) {
    const damping = dampingReasons(filter, one)
    const found = damping.length > 0 ? damping : gainReasons(cornerLadders(filter, one), filter, one)
    if (found.length > 0) return found
  }
  return []
}

/** As much as a section of the least damping goes over. */
const MOST_OVERSHOOT = overshootOf(LEAST_DAMPING)
/** Damped as much as this a section goes over by less than that, however its coils are split (0.937 at most, searched). */
const NEVER_OVER_FROM = 0.95

function dampingReasons(filter: SignalFilter, around: Around): readonly LoadingReason[] {
  // A damper that has no capacitor to stand across damps nothing.
  const isDamped = sectionBox(filter, around)?.damper !== undefined
  const ringing = isDamped ? [] : ringingReasons(filter, around)
  return ringing.length > 0 ? ringing : overshootReasons(filter, around)
}

/** Two coils around the capacitance, or a damper across it: what a step does, over the box. */
function overshootReasons(filter: SignalFilter, around: Around): readonly LoadingReason[] {
  const box = stepBox(filter, around)
  const section = box && sectionBox(filter, around)
  const closed = section && leastDamped(section)
  if (box === undefined || closed === undefined) return []
  if (section?.damper === undefined && (dampingRatio(closed) ?? 0) >= NEVER_OVER_FROM) return []
  const overshootFrac = worstOvershoot(box)
  return overshootFrac > MOST_OVERSHOOT + HAIR_SHARE
    ? [{ is: 'overshoot', verdict: 'marginal', overshootFrac, mostFrac: MOST_OVERSHOOT }]
    : []
}

function ringingReasons(filter: SignalFilter, around: Around): readonly LoadingReason[] {
  const box = sectionBox(filter, around)
  const worst = box && leastDamped(box)
  const damping = worst && dampingRatio(worst)
  const hz = worst && ringHz(worst)
  return damping === undefined || hz === undefined || damping >= LEAST_DAMPING
    ? []
    : [{ is: 'ringing', verdict: 'marginal', damping, leastDamping: LEAST_DAMPING, hz }]
}

/** A passive line between equal ends never amplifies; into a high impedance a coil between two capacitances can. */
function gainReasons(ladders: readonly SignalLadder[], filter: SignalFilter, around: Around): readonly LoadingReason[] {
  const box = sectionBox(filter, around)
  const section = box && leastDamped(box)
  const hz = section && ringHz(section)
  if (hz === undefined || Number.isFinite(around.loadOhm)) return []
  // One coil before one capacitance and nothing else is second order: as damped as this it does not amplify.
  if (ladders.every(({ elements }) => elements.length <= 2)) return []
  const worst = ladders.map((ladder) => ladderPeak(ladder, hz)).reduce((a, b) => (b.gainDb > a.gainDb ? b : a))
  return worst.gainDb > GAIN_DB ? [{ is: 'gain', verdict: 'marginal', ...worst }] : []
}
