/**
 * A page of the field book as data: what it says, draws and plays, and where each of it comes from. Every figure in a text
 * is worked out by `calc` or read from `reference` in the function that makes the page; no figure is written twice.
 */
import type { CheckId, Source } from '../../calc/types.ts'
import type { LineKindId } from '../../reference/line-kinds.ts'
import type { DrawingId } from '../drawing-ids.ts'
import type { BookDrawingId } from '../drawings/book-ids.ts'
import type { FillInId } from '../fill-ins.ts'

/** Where a page stands. Part of no address: `#/notes/<shelf>` lists it, `#/notes/<id>` is the page, on whichever shelf. */
export type Shelf = 'notes' | 'lines' | 'sounds' | 'tests' | 'drawings' | 'tables' | 'cases'

/** What a label stands for; `source` where it is not the page's. */
export type BookRow = { readonly label: string; readonly text: string; readonly source?: Source }

/** Volts over time, drawn with its levels named. Seconds and volts. */
export type Waveform = {
  readonly title: string
  /** all that the picture tells, for those who do not see it */
  readonly said: string
  readonly spanSec: number
  /** one trace a wire */
  readonly wires: readonly {
    readonly label: string
    readonly points: readonly (readonly [sec: number, volt: number])[]
  }[]
  /** lines across the picture: a limit, a threshold, a level */
  readonly levels: readonly { readonly label: string; readonly volt: number }[]
  /** stretches of time that are named: one bit, one rise */
  readonly marks?: readonly { readonly label: string; readonly fromSec: number; readonly toSec: number }[]
}

/** What a sound looks like: decibels under the loudest in columns evenly over log frequency, and its level along the time. */
export type SoundPicture = {
  readonly fromHz: number
  readonly toHz: number
  readonly belowDb: readonly number[]
  readonly seconds: number
  /** 0 to 1, in even steps over the seconds */
  readonly rhythm: readonly number[]
}

export type Block =
  /** `isFolded`: its section is one tap away, however short the page */
  | { readonly is: 'heading'; readonly text: string; readonly isFolded?: true }
  /** `name`: what it is called where it is one tap away */
  | { readonly is: 'text'; readonly text: string; readonly name?: string }
  | { readonly is: 'list'; readonly items: readonly string[]; readonly ordered?: true }
  | { readonly is: 'rows'; readonly rows: readonly BookRow[] }
  | {
      readonly is: 'table'
      readonly caption?: string
      readonly head: readonly string[]
      readonly rows: readonly (readonly string[])[]
    }
  /** what hurts people, equipment or the finding */
  | { readonly is: 'never'; readonly items: readonly string[] }
  | { readonly is: 'drawing'; readonly drawing: DrawingId | BookDrawingId }
  | { readonly is: 'waveform'; readonly waveform: Waveform }
  /** a sound by its id in `sounds/`, drawn, and played on a tap; `said`: what the picture tells, for those who do not see it */
  | { readonly is: 'sound'; readonly sound: string; readonly said: string }
  | { readonly is: 'fill-in'; readonly table: FillInId }
  /** a button that opens a check with these texts */
  | {
      readonly is: 'open-check'
      readonly check: CheckId
      readonly prefill: Readonly<Record<string, string>>
      readonly why: string
    }

/** Another page, a check, or an item of the guide, by its id. */
export type BookLink = { readonly page: string } | { readonly check: CheckId } | { readonly item: string }

export type BookPage = {
  /** permanent, kebab-case, unique over all shelves: `line-…`, `sound-…`, `test-…`, `drawing-…`, `table-…`, `case-…` */
  readonly id: string
  readonly shelf: Shelf
  readonly title: string
  /** one line under the title: in lists and in what a search finds */
  readonly inShort: string
  /** words it is looked up by, beside its own: trade words, short forms, what people say and write */
  readonly words?: readonly string[]
  readonly lineKind?: LineKindId
  readonly blocks: readonly Block[]
  /** cautions of the reference by their id, shown first */
  readonly cautions?: readonly string[]
  readonly sources: readonly [Source, ...Source[]]
  readonly related?: readonly BookLink[]
}
