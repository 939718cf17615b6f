/** What every contact loses and hears with every part as marked. */
import { add, type Complex, divide, magnitude, multiply, ONE, subtract, ZERO } from '../complex.ts'
import { type At, markedAt, type Plated } from '../plate/cells.ts'
import { lossDb } from '../plate/loss.ts'
import type { Plate } from '../plate/plate.ts'
import { ALPHA, BARE, BETA, OWN, PLATE } from '../plate/share.ts'

export type Marked = {
  /** loss while all are driven alike, dB */
  readonly togetherDb: number
  /** what it hears while it is quiet and all others are driven, against its bare level, dB (≤ 0 = below) */
  readonly receivedDb: number
}

/** Vp = Zb·Σα/(1 + Zb·Σβ), V = own·E + plate·Vp. */
export function markedLosses(contacts: readonly Plated[], { hz, bondOhm }: Plate): readonly Marked[] {
  const points = contacts.map((plated) => markedAt(plated, hz))
  const at = (point: At | undefined, of: number): Complex =>
    point === undefined ? ZERO : [point.shares[of] as number, point.shares[of + 1] as number]
  const sum = (of: number) => points.reduce((all, point) => add(all, at(point, of)), ZERO)
  const alphas = sum(ALPHA)
  const fall = add(ONE, multiply(bondOhm, sum(BETA)))
  const plateVolts = (alpha: Complex) => divide(multiply(bondOhm, alpha), fall)
  return points.map((point) => {
    const bare = magnitude(at(point, BARE))
    const through = (alpha: Complex) => multiply(at(point, PLATE), plateVolts(alpha))
    const together = magnitude(add(at(point, OWN), through(alphas)))
    const heard = magnitude(through(subtract(alphas, at(point, ALPHA))))
    return { togetherDb: lossDb(together, bare), receivedDb: -lossDb(heard, bare) }
  })
}
