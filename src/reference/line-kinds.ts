/** Kinds of line: what each budgets, permits and stands. The rows are in line-kinds/, by family. */
import { ANALOG_KINDS, NOT_LISTED_KIND } from './line-kinds/analog.ts'
import { BARRED_KINDS } from './line-kinds/barred.ts'
import { DATA_KINDS } from './line-kinds/data.ts'
import { FAST_KINDS } from './line-kinds/fast.ts'
import { MORE_KINDS } from './line-kinds/more.ts'
import { POWER_KINDS } from './line-kinds/power.ts'
import type { LineKind } from './line-kinds/types.ts'

export type {
  Citation,
  LineFamily,
  LineKind,
  LineTransformer,
  LoadingRule,
  MaskSegment,
  OwnPeaks,
  OwnSwing,
  Permitted,
  SignalOhm,
  Supply,
  TrialLadder,
} from './line-kinds/types.ts'

/** Every kind, in the order a list shows them: the frequent ones of each family first, the barred ones last. */
export const LINE_KINDS: readonly LineKind[] = [
  ...POWER_KINDS,
  ...ANALOG_KINDS,
  ...DATA_KINDS,
  ...FAST_KINDS,
  ...MORE_KINDS,
  ...BARRED_KINDS,
  NOT_LISTED_KIND,
]

/** Permanent, readable id of a kind; `lineKindById` says whether a text is one. */
export type LineKindId = string

const BY_ID: ReadonlyMap<string, LineKind> = new Map(LINE_KINDS.map((kind) => [kind.id, kind]))

/** The kind with this id, or undefined for a text that is none. */
export const lineKindById = (id: string): LineKind | undefined => BY_ID.get(id)

/** What a kind matches when somebody searches: name, id and aliases, in lower case. */
export const lineKindWords = (kind: LineKind): string => [kind.name, kind.id, ...kind.aliases].join(' ').toLowerCase()
