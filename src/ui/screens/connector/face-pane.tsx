import { useCallback, useMemo, useState } from 'preact/hooks'
import { type FaceView, faceOf } from '../../../calc/connector/face.ts'
import { hashOfContact } from '../../../state/connector-address.ts'
import { goTo } from '../../../state/router.ts'
import { type ContactMark, MARK_WORDS, MarkIcon, markOf } from '../../parts/contact-mark.tsx'
import { Face } from '../../parts/face.tsx'
import { useFrameLater } from '../../parts/frame-later.ts'
import { type ContactsGiven, contactWords } from './contact-list.tsx'

const SIDES = ['pins', 'sockets'] as const

type Given = ContactsGiven & {
  readonly choosing?: { readonly chosen: ReadonlySet<string>; readonly toggle: (id: string) => void } | undefined
}

/** The drawn face as it is looked at: the pin insert, or the socket insert, its mirror image. */
export function FacePane({ complaint, connector, rows: latestRows, choosing }: Given) {
  // the list beside it is drawn first, in two frames
  const rows = useFrameLater(useFrameLater(latestRows))
  const { contacts, shape, texts } = connector
  const [side, setSide] = useState<FaceView>(texts.gender === 'sockets' ? 'sockets' : 'pins')
  const ids = contacts.map(({ id }) => id).join('\n')
  const face = useMemo(() => faceOf(ids.split('\n'), shape, side), [ids, shape, side])
  const byId = useMemo(() => new Map(contacts.map((contact) => [contact.id, contact])), [contacts])
  const markAt = useCallback(
    (id: string): ContactMark => {
      const contact = byId.get(id)
      return contact === undefined ? 'open' : markOf(contact, rows.get(id))
    },
    [byId, rows],
  )
  const wordsOf = useCallback(
    (id: string): string => {
      const contact = byId.get(id)
      return contact === undefined ? id : contactWords(contact, rows.get(id))
    },
    [byId, rows],
  )
  const pick = (id: string) => {
    if (choosing === undefined) goTo(hashOfContact(complaint.id, connector.id, id))
    else choosing.toggle(id)
  }
  return (
    <section aria-label="Face" class="face-pane">
      <Face
        face={face}
        markAt={markAt}
        wordsOf={wordsOf}
        onPick={pick}
        label={`Face of ${connector.name || 'the connector'} seen at the ${side}, ${contacts.length} contacts: ${countWords(contacts.map(({ id }) => markAt(id)))}.`}
        {...(choosing && { chosen: choosing.chosen })}
      >
        <Sides side={side} onTurn={setSide} />
      </Face>
      <Legend marks={contacts.map(({ id }) => markAt(id))} />
    </section>
  )
}

/** Which insert is looked at. */
function Sides({ side, onTurn }: { readonly side: FaceView; readonly onTurn: (side: FaceView) => void }) {
  return (
    <fieldset class="sides">
      <legend class="unseen">Seen at the</legend>
      {SIDES.map((one) => (
        <label key={one} class="choice-button">
          <input type="radio" name="side" value={one} checked={side === one} onChange={() => onTurn(one)} />
          <span>{one}</span>
        </label>
      ))}
    </fieldset>
  )
}

/** How many there are of each, in the order they first stand. */
function countsOf(marks: readonly ContactMark[]): readonly (readonly [ContactMark, number])[] {
  const counts = new Map<ContactMark, number>()
  for (const mark of marks) counts.set(mark, (counts.get(mark) ?? 0) + 1)
  return (Object.keys(MARK_WORDS) as ContactMark[]).flatMap((mark) => {
    const count = counts.get(mark)
    return count === undefined ? [] : [[mark, count] as const]
  })
}

const countWords = (marks: readonly ContactMark[]): string =>
  countsOf(marks)
    .map(([mark, count]) => `${count} ${MARK_WORDS[mark]}`)
    .join(', ')

/** The signs that are on the face, each with its word and how often it stands there. */
function Legend({ marks }: { readonly marks: readonly ContactMark[] }) {
  return (
    <ul class="face-legend" aria-label="What stands on the face">
      {countsOf(marks).map(([mark, count]) => (
        <li key={mark} class={`contact-row ${mark}`}>
          <MarkIcon mark={mark} />
          {count} {MARK_WORDS[mark]}
        </li>
      ))}
    </ul>
  )
}
