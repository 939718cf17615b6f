/** What the field book tells of every kind of line: its own row over what its family has in common. */
import { ANALOG_CARDS } from './line-cards/analog.ts'
import { BARRED_CARDS } from './line-cards/barred.ts'
import { DATA_CARDS } from './line-cards/data.ts'
import { FAMILY_CARDS } from './line-cards/families.ts'
import { FAST_CARDS } from './line-cards/fast.ts'
import { POWER_CARDS } from './line-cards/power.ts'
import type { BarredCard, CardRow, LineCard } from './line-cards/types.ts'
import type { LineKind } from './line-kinds/types.ts'

export type { BarredCard, LineCard, MeterOhms, NotKnown, SuppressorCap, Told } from './line-cards/types.ts'
export type { Wave } from './line-cards/wave.ts'

/** Rows by the id of the kind. */
export const LINE_CARDS: Readonly<Record<string, CardRow>> = {
  ...POWER_CARDS,
  ...ANALOG_CARDS,
  ...DATA_CARDS,
  ...FAST_CARDS,
}

/** The card of a kind that is not barred. A kind without a row has what its family knows, and says what nobody knows. */
export const lineCardOf = ({ id, family }: Pick<LineKind, 'id' | 'family'>): LineCard => ({
  ...FAMILY_CARDS[family],
  ...LINE_CARDS[id],
})

/** The card of a barred kind: nothing to measure, nothing to fit. */
export function barredCardOf({ id, family }: Pick<LineKind, 'id' | 'family'>): BarredCard {
  const { carries, faults, never } = FAMILY_CARDS[family]
  return BARRED_CARDS[id] ?? { carries, faults, never }
}
