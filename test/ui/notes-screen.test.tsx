// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import type { FieldNote } from '../../src/guide/types.ts'
import { findNotes, Notes } from '../../src/ui/screens/notes.tsx'
import { by, settle, show } from './support.ts'

const note = (id: string, title: string, text: string): FieldNote => ({
  id,
  title,
  paragraphs: [text],
  sources: [{ id: 'practice', standing: 'practice' }],
})

describe('field notes', () => {
  it('finds every word anywhere, with those in a title first', () => {
    const notes = [note('a', 'Bonding', 'Measure at the strobe.'), note('b', 'The strobe', 'High voltage.')]
    expect(findNotes(notes, 'STROBE').map(({ id }) => id)).toEqual(['b', 'a'])
    expect(findNotes(notes, 'strobe measure').map(({ id }) => id)).toEqual(['a'])
    expect(findNotes(notes, '')).toEqual(notes)
    expect(findNotes(notes, 'rudder')).toEqual([])
  })

  it('shows a note with its source and how well it is known', async () => {
    const [first] = FIELD_NOTES
    if (!first) throw new Error('there are no field notes')
    const place = show(<Notes id={first.id} />)
    await settle()
    expect(by('heading', first.title).tagName).toBe('H1')
    expect(place.querySelector('.standing')).not.toBeNull()
  })

  it('names a note that does not exist', async () => {
    show(<Notes id="no-such-note" />)
    await settle()
    expect(by('heading', 'No such note')).toBeDefined()
  })
})
