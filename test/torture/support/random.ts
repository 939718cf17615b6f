/** Chance that can be repeated. */

export type Chance = {
  /** evenly from 0 up to 1 */
  readonly next: () => number
  /** a whole number from 0 up to `below` */
  readonly whole: (below: number) => number
  readonly pick: <T>(from: readonly T[]) => T
  readonly happens: (share: number) => boolean
}

/** mulberry32: 32 bits of state, even enough for drawing tests. */
export function chance(seed: number): Chance {
  let state = seed >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
  const whole = (below: number) => Math.floor(next() * below)
  const pick = <T>(from: readonly T[]): T => from[whole(from.length)] as T
  return { next, whole, pick, happens: (share) => next() < share }
}
