/** The common-mode choke that the fields of the window describe, as its noise and as its signal meet it. */
import type { NoiseMode } from '../../bounds/legs.ts'
import type { LegChoke, Span } from '../../bounds/surroundings.ts'
import type { CoilOwn } from '../../loading/ladder.ts'
import { type Choke, type ChokeSize, chokePart, chokeSpanH, leakageSpanH } from '../../network/choke.ts'
import type { WindowGiven } from './inputs.ts'

export type WindowChoke = {
  readonly size: ChokeSize
  /** the windings themselves, the leakage at its most */
  readonly windings: Choke
  /** as one leg meets it in the mode of the noise */
  readonly leg: LegChoke
  /** henries in the loop of the signal: its leakage, and what its windings have beside it, both in a row */
  readonly loopH: Span
  readonly loop: CoilOwn
  readonly isLeakageStated: boolean
}

const hasCore = ({ chokeH = 0 }: WindowGiven): boolean => chokeH > 0

/** Around one wire nothing cancels in the core: it is not counted, and nothing is known. */
export const isOneWire = (given: WindowGiven): boolean => hasCore(given) && given.chokeWires === 'one'

/** Every wire of the circuit through one core; undefined without one. */
export function chokeOf(given: WindowGiven, mode: NoiseMode): WindowChoke | undefined {
  if (!hasCore(given) || isOneWire(given)) return undefined
  const { chokeH: windingH = 0, chokeLeakageH, toleranceFrac: tolerance, chokeOhm, chokeF } = given
  const size: ChokeSize = {
    windingH,
    leakageH: chokeLeakageH,
    growth: (1 + tolerance.highFrac) / (1 - tolerance.lowFrac),
  }
  const loopH = leakageSpanH(size)
  const windings: Choke = {
    windingH,
    leakageH: chokeLeakageH ?? leakageSpanH({ ...size, growth: 1 }).most,
    windingOhm: chokeOhm,
    acrossF: chokeF,
    mismatchFrac: given.chokeMismatchFrac ?? 0,
  }
  return {
    size,
    windings,
    leg: {
      part: chokePart(windings, mode),
      side: given.chokeSide === 'load' ? 'load' : 'source',
      spanH: chokeSpanH(size, mode),
    },
    loopH,
    loop: { dcrOhm: 2 * chokeOhm, parallelF: chokeF / 2, parallelOhm: Number.POSITIVE_INFINITY },
    isLeakageStated: chokeLeakageH !== undefined,
  }
}
