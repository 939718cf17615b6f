/** Kinds of line: what each budgets, permits and stands. The rows are in line-kinds/, by family. */
import { ANALOG_KINDS, NOT_LISTED_KIND } from './line-kinds/analog.ts'
import { BARRED_KINDS } from './line-kinds/barred.ts'
import { DATA_KINDS } from './line-kinds/data.ts'
import { FAST_KINDS } from './line-kinds/fast.ts'
import { MORE_KINDS } from './line-kinds/more.ts'
import { POWER_KINDS } from './line-kinds/power.ts'
import { TRADE_WORDS } from './line-kinds/trade-words.ts'
import type { LineFamily, LineKind } from './line-kinds/types.ts'

export type {
  Citation,
  LineFamily,
  LineKind,
  LoadingRule,
  MaskSegment,
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

/** What a kind matches when somebody searches: name, id, aliases and words of the trade, each on its own. */
export const lineKindNames = (kind: LineKind): readonly string[] => [
  kind.name,
  kind.id,
  ...kind.aliases,
  ...(TRADE_WORDS[kind.id] ?? []),
]

/** The same as one text in lower case. */
export const lineKindWords = (kind: LineKind): string => lineKindNames(kind).join(' ').toLowerCase()

const FAMILY_NAMES: Readonly<Record<LineFamily, string>> = {
  'power-dc': 'Power',
  'power-ac': 'Power',
  ground: 'Power',
  drive: 'Switching and drives',
  discrete: 'Discretes and keying',
  sensor: 'Sensors',
  carrier: 'Position, heading and speed',
  audio: 'Audio and video',
  video: 'Audio and video',
  'data-pair': 'Data on a pair',
  'data-single': 'Data on single wires',
  other: 'Other lines',
  coax: 'Never with a trial part',
  barred: 'Never with a trial part',
}

/** The heading a kind stands under in a list; the barred kinds stand together, whatever they carry. */
export const lineKindGroup = ({ family, barredWhy }: LineKind): string =>
  FAMILY_NAMES[barredWhy === undefined ? family : 'barred']
