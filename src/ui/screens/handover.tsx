import type { ComponentChildren } from 'preact'
import { FILL_INS, type Filled, type FillInId, filledRows } from '../../guide/fill-ins.ts'
import type { Event } from '../../guide/investigation.ts'
import type { Position } from '../../guide/types.ts'
import { FilledTable } from '../parts/fill-in.tsx'
import { dayAndTime } from './moment.ts'

type Given = {
  /** type and registration, as typed */
  readonly aircraft: string
  readonly position: Position
  readonly events: readonly Event[]
  readonly tables: Filled | undefined
  readonly photos: ComponentChildren
}

/** For the next shift: what was seen, tried and excluded, what is open, and what has to be put back. Printed as it is. */
export function Handover({ aircraft, position, events, tables, photos }: Given) {
  const { trail, standings, openTests, setAside } = position
  if (trail.length === 0) return null
  const seen = trail.filter(({ node }) => node.kind === 'ask' && node.about !== 'safety')
  const tried = trail.filter(({ node, optionId }) => node.kind !== 'ask' && optionId !== 'set-aside')
  const excluded = standings.filter(({ is }) => is === 'out')
  const open = setAside.length > 0 ? setAside : openTests.slice(0, 5)
  return (
    <details class="fold handover">
      <summary>Hand-over for the next shift</summary>
      {aircraft.trim() !== '' && <List title="Aircraft" items={[aircraft]} />}
      <List title="Seen" items={seen.map(({ node, label }) => `${node.text} ${label}`)} />
      <List
        title="Tried"
        items={tried.map(
          ({ node, label, isVoid }) => `${node.text} ${label}${besides(events, node.id)}${isVoid ? VOID : ''}`,
        )}
      />
      <FilledIn tables={tables} id="events" />
      <FilledIn tables={tables} id="breakers" />
      {photos}
      <List title="Excluded" items={excluded.map(({ suspect }) => suspect.name)} />
      <List title="Open" items={open.map(({ text }) => text)} />
      <List
        title="To be put back and counted"
        items={tried.filter(({ node }) => node.opens).map(({ node }) => `after: ${node.text}`)}
        none="nothing was opened or loaded"
      />
    </details>
  )
}

const VOID = ': not counted until it repeats'
const REPEAT_WORDS = { agreed: 'three times, agreed', differed: 'repeated, differed', once: 'once' } as const

/** Reading, repeats and time of an item, as far as they were written down. */
export function besides(events: readonly Event[], id: string): string {
  const event = events.findLast(({ evidence }) => evidence === id)
  if (event === undefined) return ''
  const parts = [event.reading, event.repeats && REPEAT_WORDS[event.repeats], dayAndTime(event.at)]
  return ` (${parts.filter((part) => part !== undefined && part !== '').join('; ')})`
}

/** What was filled in of a table, where anything was. */
function FilledIn({ tables, id }: { readonly tables: Filled | undefined; readonly id: FillInId }) {
  const rows = filledRows(tables, id)
  if (rows.length === 0) return null
  return (
    <>
      <h3>{FILL_INS[id].title}</h3>
      <FilledTable form={FILL_INS[id]} rows={rows} />
    </>
  )
}

function List(given: { readonly title: string; readonly items: readonly string[]; readonly none?: string }) {
  const { title, items, none = 'nothing' } = given
  return (
    <>
      <h3>{title}</h3>
      {items.length === 0 ? (
        <p class="muted">{none}</p>
      ) : (
        <ul class="plain">
          {items.map((item) => (
            <li key={item}>{item}</li>
          ))}
        </ul>
      )}
    </>
  )
}
