/** The face of a connector with a mark and a name on every contact: on paper, and as a file. */
import { type FaceView, faceOf } from '../../calc/connector/face.ts'
import type { SheetBody } from '../../calc/connector/sheet/body.ts'
import { NEVER, type SheetRow } from '../../calc/connector/sheet/rows.ts'
import { type ContactMark, MARK_WORDS, MarkIcon } from '../parts/contact-mark.tsx'
import { FaceContacts, FaceOutline } from '../parts/face-drawing.tsx'
import { SHEET_PX } from './lay.tsx'

/** From contact to contact, so that a name of three letters is as large as the smallest print. */
const APART_PX = 32

function markOf({ word, type, verdict, topology }: SheetRow): ContactMark {
  if (word === NEVER) return 'barred'
  if (type !== 'line') return type
  return verdict ?? (topology === 'bare' ? 'bare' : 'open')
}

export function SheetFace({ body: { connector, rows } }: { readonly body: SheetBody }) {
  const { contacts, shape, texts, name } = connector
  const side: FaceView = texts.gender === 'sockets' ? 'sockets' : 'pins'
  const ids = contacts.map(({ id }) => id)
  const face = faceOf(ids, shape, side)
  const marks = new Map(rows.map((row) => [row.id, markOf(row)]))
  const markAt = (id: string): ContactMark => marks.get(id) ?? 'open'
  const { halfWidth, halfHeight } = face
  const [width, height] = [2 * halfWidth, 2 * halfHeight]
  const widthPx = Math.min(SHEET_PX, width * APART_PX)
  const title = `Face of ${name || 'the connector'}, seen at the ${side}`
  const used = (Object.keys(MARK_WORDS) as ContactMark[]).filter((mark) => [...marks.values()].includes(mark))
  return (
    <figure class="picture sheet-face">
      <figcaption>{title}</figcaption>
      <svg
        class="face-drawing"
        viewBox={`${-halfWidth} ${-halfHeight} ${width} ${height}`}
        width={widthPx}
        height={(widthPx * height) / width}
        role="img"
        aria-label={`${title}: ${ids.map((id) => `${id} ${MARK_WORDS[markAt(id)]}`).join(', ')}`}
      >
        <FaceOutline face={face} />
        <FaceContacts places={face.places} markAt={markAt} isNamed />
      </svg>
      <ul class="legend">
        {used.map((mark) => (
          <li key={mark} class={mark}>
            <MarkIcon mark={mark} />
            {MARK_WORDS[mark]}
          </li>
        ))}
      </ul>
    </figure>
  )
}
