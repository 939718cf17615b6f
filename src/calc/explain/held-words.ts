/** Why a part that meets its need is no plain yes, as a clause. */
import type { Held } from '../bounds/box.ts'

export const HELD_WORDS: Readonly<Partial<Record<Held, string>>> = {
  carried: 'it takes what was entered of lead, bond or self-capacitance to do it, and less of that would lose it',
  short: 'a value its parts may have loses it',
  unproved: 'no value its parts may have was found to lose it, but a proof for all of them was not reached',
}
