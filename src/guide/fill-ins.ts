/** Tables that are filled in on the screen, as typed: events that come only in flight, and which breaker does it. */

/** One line of a filled table: text by column. */
export type FilledRow = Readonly<Record<string, string>>

/** What was filled in, lines by table. Ids of tables and columns are permanent. */
export type Filled = Readonly<Record<string, readonly FilledRow[]>>

export type FillInId = 'events' | 'breakers'

/** A table to fill in. `row`: what one line is called. */
export type FillIn = {
  readonly id: FillInId
  readonly title: string
  readonly row: string
  readonly columns: readonly {
    readonly id: string
    readonly label: string
    readonly hint?: string
    /** usual words, offered while typing; anything else may be typed */
    readonly usual?: readonly string[]
  }[]
}

const LEVELS = ['0 gone', '1 just there', '2 disturbs'] as const

export const FILL_INS: Readonly<Record<FillInId, FillIn>> = {
  events: {
    id: 'events',
    title: 'Events in flight',
    row: 'Event',
    columns: [
      { id: 'time', label: 'Date and time' },
      { id: 'place', label: 'Place', hint: 'position, heading' },
      {
        id: 'phase',
        label: 'Phase of flight',
        usual: ['parked', 'taxi', 'take-off', 'climb', 'cruise', 'descent', 'approach', 'landing'],
      },
      { id: 'height', label: 'Altitude' },
      { id: 'weather', label: 'Weather and air temperature' },
      { id: 'on', label: 'What was on', hint: 'loads, radios, what was just switched' },
      { id: 'seen', label: 'What was heard or seen' },
      { id: 'exposure', label: 'Exposure', hint: 'how long in these conditions, with and without the event' },
    ],
  },
  breakers: {
    id: 'breakers',
    title: 'Breaker matrix',
    row: 'Switch or breaker',
    columns: [
      { id: 'name', label: 'Switch or breaker' },
      { id: 'off', label: 'Off', usual: LEVELS },
      { id: 'on', label: 'On', usual: LEVELS },
      { id: 'again', label: 'Off again', usual: LEVELS },
      { id: 'with', label: 'With another one', hint: 'which one, and what then' },
    ],
  },
}

/** The lines of a table that hold anything. */
export const filledRows = (filled: Filled | undefined, id: FillInId): readonly FilledRow[] =>
  (filled?.[id] ?? []).filter((row) => Object.values(row).some((text) => text.trim() !== ''))
