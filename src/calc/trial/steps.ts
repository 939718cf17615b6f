/** The columns of a trial put side by side: one step a row. */
import type { ColumnEntry } from '../column.ts'
import type { LevelUnit } from '../quantity/level-unit.ts'

export type Place = 'chassis' | 'between'
export type Heard = 'gone' | 'less' | 'same' | 'more'

/** What was read: a word against the bare line, or a level on the receiver. */
export type NoiseNote =
  | { readonly is: 'word'; readonly word: Heard }
  | { readonly is: 'level'; readonly db: number; readonly unit?: LevelUnit }

/** One step; `farads` 0 is the empty adapter. */
export type TrialStep = {
  readonly part: 'bare' | 'empty' | 'capacitor'
  readonly farads: number
  readonly place: Place
  readonly noise?: NoiseNote
  readonly signal?: 'good' | 'degraded'
  readonly repeats?: 'agreed' | 'differed' | 'once'
  readonly time?: string
}

export type Columns = {
  readonly steps: readonly ColumnEntry[]
  readonly places?: readonly ColumnEntry[] | undefined
  readonly noise?: readonly ColumnEntry[] | undefined
  readonly signal?: readonly ColumnEntry[] | undefined
  readonly repeats?: readonly ColumnEntry[] | undefined
  readonly times?: readonly ColumnEntry[] | undefined
}

/** Words of the columns, as they are typed. */
export const STEP_WORDS = ['bare', 'empty'] as const
export const PLACE_WORDS = ['chassis', 'between'] as const
export const NOISE_WORDS = ['gone', 'less', 'same', 'more'] as const
export const SIGNAL_WORDS = ['good', 'not looked at', 'degraded'] as const
export const REPEAT_WORDS = ['agreed', 'differed', 'once'] as const

const wordIn = <W extends string>(words: readonly W[], entry: ColumnEntry | undefined): W | undefined =>
  entry?.is === 'word' ? words.find((word) => word === entry.word) : undefined

function noiseOf(entry: ColumnEntry | undefined): NoiseNote | undefined {
  if (entry?.is === 'number')
    return { is: 'level', db: entry.si, ...(entry.unit === undefined ? {} : { unit: entry.unit }) }
  const word = wordIn(NOISE_WORDS, entry)
  return word && { is: 'word', word }
}

/** One place alone, beside a bare line that has none, is that of every adapter. */
function everyPlaceOf({ steps: [first], places }: Pick<Columns, 'steps' | 'places'>): ColumnEntry | undefined {
  const isBare = first?.is === 'word' && first.word === 'bare'
  return isBare && places?.length === 1 ? places[0] : undefined
}

/**
 * Rows of capacitors beside which no place is written, while places are written beside others: where they stood nobody
 * knows. Where no place is written at all, every one stood to chassis.
 */
export function unplacedRows(columns: Pick<Columns, 'steps' | 'places'>): readonly number[] {
  const { steps, places = [] } = columns
  if (everyPlaceOf(columns) !== undefined || places.every(({ is }) => is === 'none')) return []
  return steps.flatMap((entry, row) =>
    entry.is === 'number' && entry.si > 0 && wordIn(PLACE_WORDS, places[row]) === undefined ? [row] : [],
  )
}

/** Steps without a part between two semicolons are no steps: what else stands in their row says nothing. */
export function stepsOf(columns: Columns): readonly TrialStep[] {
  const everyPlace = everyPlaceOf(columns)
  return columns.steps.flatMap((entry, row): readonly TrialStep[] => {
    if (entry.is === 'none') return []
    const farads = entry.is === 'number' ? entry.si : 0
    const noise = noiseOf(columns.noise?.[row])
    const signal = wordIn(SIGNAL_WORDS, columns.signal?.[row])
    const repeats = wordIn(REPEAT_WORDS, columns.repeats?.[row])
    const time = columns.times?.[row]
    return [
      {
        part: entry.is === 'word' && entry.word === 'bare' ? 'bare' : farads > 0 ? 'capacitor' : 'empty',
        farads,
        place: wordIn(PLACE_WORDS, everyPlace ?? columns.places?.[row]) ?? 'chassis',
        ...(noise === undefined ? {} : { noise }),
        ...(signal === undefined || signal === 'not looked at' ? {} : { signal }),
        ...(repeats === undefined ? {} : { repeats }),
        ...(time?.is === 'word' ? { time: time.word } : {}),
      },
    ]
  })
}
