/** One page an instrument: how it is set, where it is put, what a good and a bad picture look like, and what fools people. */
import { DERIVED, PRACTICE } from '../../../reference/line-kinds/cite.ts'
import type { Tool } from '../../investigation.ts'
import type { BookPage } from '../types.ts'
import { CLAMPED_INSTRUMENTS } from './clamped-instruments.ts'
import type { Instrument } from './instrument.ts'
import { WIRED_INSTRUMENTS } from './wired-instruments.ts'

const asPage = (one: Instrument): BookPage => ({
  id: one.id,
  shelf: 'tests',
  title: one.title,
  inShort: one.inShort,
  words: one.words,
  blocks: [
    { is: 'rows', rows: one.set.map(([label, text]) => ({ label, text })) },
    ...(one.pictures.length === 0 ? [] : [{ is: 'heading', text: 'Good and bad pictures', isFolded: true } as const]),
    ...one.pictures,
    { is: 'heading', text: 'What fools people' },
    { is: 'list', items: one.fools },
    ...(one.never === undefined ? [] : [{ is: 'never', items: one.never } as const]),
  ],
  cautions: one.cautions,
  sources: [PRACTICE, DERIVED, ...(one.sources ?? [])],
  related: one.links,
})

const INSTRUMENTS = (): readonly Instrument[] => [...WIRED_INSTRUMENTS(), ...CLAMPED_INSTRUMENTS()]

/** A page for each instrument. */
export const instrumentPages = (): readonly BookPage[] => INSTRUMENTS().map(asPage)

/** Which page tells of a tool of the guide. */
export const instrumentPageOf = (tool: Tool): string | undefined =>
  INSTRUMENTS().find(({ tools }) => tools.includes(tool))?.id
