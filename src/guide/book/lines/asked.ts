/** At which rates or pull-ups the physics of a line is worked out, and what it leaves of a leg beside the usual load. */
import { roomPerLegF } from '../../../calc/bounds/room.ts'
import { loadingCeiling } from '../../../calc/loading/ceiling.ts'
import type { SignalFacts } from '../../../calc/loading/signal.ts'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import type { LineCard } from '../../../reference/line-cards.ts'
import { usualLoadOf } from '../../../reference/line-kinds/usual-load.ts'
import type { LineKind } from '../../../reference/line-kinds.ts'

/** `at`: in words, empty where the kind has one rate or none. */
export type Asked = { readonly at: string; readonly facts: SignalFacts }

/** Every way the physics of this kind is worked out: at its own rate, or at each usual rate or pull-up of its card. */
export function askedOf({ ratesHz, pullUpsOhm }: LineCard, kind: LineKind): readonly [Asked, ...Asked[]] {
  const atRate = (bitRateHz: number): Asked => ({
    at: ` at ${formatQuantity(bitRateHz, 'bitRate', 5)}`,
    facts: { kind, bitRateHz },
  })
  const withPullUp = (signalOhm: number): Asked => ({
    at: ` with a pull-up of ${formatQuantity(signalOhm, 'resistance')}`,
    facts: { kind, signalOhm },
  })
  if (ratesHz !== undefined) return [atRate(ratesHz[0]), ...ratesHz.slice(1).map(atRate)]
  if (pullUpsOhm !== undefined) return [withPullUp(pullUpsOhm[0]), ...pullUpsOhm.slice(1).map(withPullUp)]
  return [{ at: '', facts: { kind } }]
}

/** Farads that the physics leaves on each leg when nothing is added to what is usually there; 0 and below: nothing. */
export function roomsOf(card: LineCard, kind: LineKind): readonly { readonly at: string; readonly roomF: number }[] {
  const { isPair } = kind
  const taken = { isPair, existingF: usualLoadOf(kind).existingF ?? 0, crossF: 0, suppressorF: 0 }
  return askedOf(card, kind).flatMap(({ at, facts }) => {
    const { farads } = loadingCeiling(facts).works
    return farads === undefined ? [] : [{ at, roomF: roomPerLegF(farads, taken) }]
  })
}

/** First step of the trial ladder that is more than so many farads of a leg; undefined where none is. */
export function firstOver({ trial }: LineKind, legF: number | undefined): number | undefined {
  if (trial === undefined || legF === undefined) return undefined
  const legsOfStep = trial.counts === 'dm' ? 2 : 1
  return [trial.lowF, trial.mediumF, trial.highF].find((step) => legsOfStep * step > legF)
}
