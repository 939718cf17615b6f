/** One need of one contact beside everybody else on the plate: proved, refuted by a point found, or neither. */
import { PROVED_DB } from '../../bounds/box.ts'
import type { Need } from '../../bounds/surroundings.ts'
import { ROUNDING_DB } from '../../checks/window/row-need.ts'
import { boxesAt, type Plated } from './cells.ts'
import { FLOOR_DB } from './loss.ts'
import { metTogether } from './met.ts'
import { type Others, onlyThese, othersThan, type Plate } from './plate.ts'
import { boundTogether, promisedDb } from './together.ts'

export type Together = {
  readonly need: Need
  /** no point of all boxes loses less, dB */
  readonly leastDb: number
  /** the least found where the need is not proved: it occurs, dB */
  readonly foundDb?: number
  /** the same as `leastDb` with nothing on the bond but the contacts of its own line, dB */
  readonly aloneDb: number
  /** `met`: proved; `short`: a point was found that fails; `open`: neither */
  readonly is: 'met' | 'short' | 'open'
  /** a bead on the plate is not known at its frequency: the decibels say nothing */
  readonly lacksBead?: true
}

/** `i` is its place on the plate, `mates` the places of its own line, itself left out; `plated` may be another part there. */
export function judge(
  plate: Plate,
  q: { readonly i: number; readonly plated: Plated; readonly need: Need; readonly mates: readonly number[] },
): Together {
  const { i, plated, need, mates } = q
  if (plate.unknownBeads.length > 0) return { need, leastDb: FLOOR_DB, aloneDb: FLOOR_DB, is: 'open', lacksBead: true }
  const boxes = boxesAt(plated, plate.hz) ?? []
  const others = othersThan(plate, i)
  const { leastDb, at } = boundTogether(boxes, others, { needDb: need.db })
  const aloneDb = boundTogether(boxes, onlyThese(plate, mates)).leastDb
  if (plate.isUnknown) return { need, leastDb, aloneDb, is: 'open' }
  if (leastDb >= need.db - ROUNDING_DB) return { need, leastDb, aloneDb, is: 'met' }
  const shortDb = need.db - PROVED_DB
  const foundDb = metTogether(at, { boxes: plate.boxes, butAt: i }, others, shortDb)
  return { need, leastDb, aloneDb, foundDb, is: foundDb < shortDb ? 'short' : 'open' }
}

/** A first look at a part, on the corners of its boxes alone: dB over its need, and no proof. */
export const glance = (plated: Plated, need: Need, others: Others): number =>
  promisedDb(boxesAt(plated, need.hz) ?? [], others) - need.db
