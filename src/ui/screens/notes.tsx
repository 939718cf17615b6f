import { useState } from 'preact/hooks'
import { checkById } from '../../calc/registry.ts'
import { FIELD_NOTES } from '../../guide/notes.ts'
import { usesOf } from '../../guide/notes-used.ts'
import { noteTexts } from '../../guide/screen-texts.ts'
import type { FieldNote } from '../../guide/types.ts'
import { hashOf } from '../../state/router.ts'
import { lazy } from '../lazy.tsx'
import { Icon } from '../parts/icon.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { ScrollX } from '../parts/scroll-x.tsx'
import { ShortForms } from '../parts/short-forms.tsx'
import { Sources } from '../parts/working.tsx'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'

const DrawingView = lazy(async () => (await import('../parts/drawing.tsx')).DrawingView)
const FillInTable = lazy(async () => (await import('../parts/fill-in.tsx')).FillInTable)

/** Field notes: a list to search, or one note. */
export function Notes({ id }: { readonly id: string | undefined }) {
  if (id === undefined) return <NoteList />
  const note = FIELD_NOTES.find((each) => each.id === id)
  return note ? <NotePage key={id} note={note} /> : <Nowhere path={`#/notes/${id}`} what="note" />
}

/** Notes that hold every word of the search, those with it in the title first. */
export function findNotes(notes: readonly FieldNote[], search: string): readonly FieldNote[] {
  const words = search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '')
  const inTitle = (note: FieldNote) => words.every((word) => note.title.toLowerCase().includes(word))
  const anywhere = (note: FieldNote) => {
    const table = note.table ? [...note.table.head, ...note.table.rows.flat()] : []
    const text = [note.title, ...note.paragraphs, ...table].join(' ').toLowerCase()
    return words.every((word) => text.includes(word))
  }
  const titled = notes.filter(inTitle)
  return [...titled, ...notes.filter((note) => !titled.includes(note) && anywhere(note))]
}

function NoteList() {
  const [search, setSearch] = useState('')
  const found = findNotes(FIELD_NOTES, search)
  return (
    <>
      <Head title="Notes">
        <p class="muted">What to know at the aircraft, with its source.</p>
      </Head>
      <label class="search">
        <span>Search the notes</span>
        <input
          type="search"
          value={search}
          autocomplete="off"
          autocapitalize="none"
          enterkeyhint="search"
          onInput={(event) => setSearch(event.currentTarget.value)}
        />
      </label>
      <p class="muted small" role="status">
        {found.length === 0 ? 'No note has all of these words; try fewer.' : `${found.length} of ${FIELD_NOTES.length}`}
      </p>
      <ul class="rows">
        {found.map((note) => (
          <li key={note.id}>
            <a href={hashOf('notes', note.id)}>
              <strong>{note.title}</strong>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </>
  )
}

function NotePage({ note }: { readonly note: FieldNote }) {
  const related = (note.related ?? []).flatMap(({ check, note: other }) => {
    const target = check === undefined ? undefined : checkById(check)
    const page = other === undefined ? undefined : FIELD_NOTES.find((each) => each.id === other)
    return [
      ...(target ? [{ hash: hashOf('check', target.id), title: `Check: ${target.title}` }] : []),
      ...(page ? [{ hash: hashOf('notes', page.id), title: page.title }] : []),
    ]
  })
  const tests = usesOf(note.id).map(({ id, text }) => ({ hash: hashOf('ask', id), title: `Asked for by: ${text}` }))
  return (
    <>
      <Head title={note.title}>
        <a class="up" href="#/notes">
          <Icon name="back" />
          All notes
        </a>
      </Head>
      <PrintHead />
      <article class="prose stack">
        {note.paragraphs.map((paragraph) => (
          <p key={paragraph}>{paragraph}</p>
        ))}
        {note.picture && <DrawingView id={note.picture} />}
        {note.fillIn && <FillInTable id={note.fillIn} />}
        {note.table && <NoteTable title={note.title} table={note.table} />}
        <ShortForms texts={noteTexts(note)} />
        <h2>Source</h2>
        <Sources sources={note.sources} />
      </article>
      {related.length + tests.length > 0 && (
        <section aria-label="Related">
          <h2>Related</h2>
          <ul class="rows">
            {[...related, ...tests].map(({ hash, title }) => (
              <li key={hash}>
                <a href={hash}>
                  <span>{title}</span>
                  <Icon name="go" />
                </a>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  )
}

function NoteTable({ title, table }: { readonly title: string; readonly table: NonNullable<FieldNote['table']> }) {
  return (
    <ScrollX label={`Table: ${title}`}>
      <table>
        <thead>
          <tr>
            {table.head.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, index) =>
                index === 0 ? (
                  <th key={table.head[index]} scope="row" data-label={table.head[index]}>
                    {cell}
                  </th>
                ) : (
                  <td key={table.head[index]} data-label={table.head[index]}>
                    {cell}
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollX>
  )
}
