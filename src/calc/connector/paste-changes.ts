/** What one row of a pasted table changes, in words for the preview. */
import { lineKindById } from '../../reference/line-kinds.ts'
import { saySame } from '../line/fields.ts'
import type { Line } from '../types.ts'
import { TEXT_COLUMNS, TEXT_OF_COLUMN, TYPE_WORD } from './contact-words.ts'
import type { ReadRow } from './paste-rows.ts'
import { COLUMN_LABEL } from './pasted-columns.ts'
import { FACT_COLUMNS, FACT_OF_COLUMN, inputOfColumn } from './pasted-facts.ts'
import type { Contact } from './types.ts'

/** `before` is empty where nothing stood. */
export type Change = { readonly what: string; readonly before: string; readonly after: string }

const kindName = (id: string): string => lineKindById(id)?.name ?? id

/** In the order of the columns. `before`: the line the contact carried. */
export function changesOf(row: ReadRow, contact: Contact, before: Line | undefined): readonly Change[] {
  const { old, meaning, facts, texts } = row
  const changes: Change[] = []
  const note = (what: string, was: string, is: string) => {
    if (was !== is) changes.push({ what, before: was, after: is })
  }
  // a new contact carries a line unless it says otherwise
  note(
    COLUMN_LABEL.type,
    old === undefined ? (contact.type === 'line' ? TYPE_WORD.line : '') : TYPE_WORD[old.type],
    TYPE_WORD[contact.type],
  )
  for (const column of TEXT_COLUMNS) {
    const field = TEXT_OF_COLUMN[column]
    if (texts[field] !== undefined) note(COLUMN_LABEL[column], old?.texts[field] ?? '', texts[field])
  }
  if (meaning?.is === 'kind')
    note(COLUMN_LABEL.kind, kindName(before?.facts.lineKind?.text ?? ''), kindName(meaning.kind))
  for (const column of FACT_COLUMNS) {
    const [was, is] = [before?.facts[FACT_OF_COLUMN[column]]?.text ?? '', facts[column]]
    if (is !== undefined && !(was !== '' && saySame(inputOfColumn(column), was, is)))
      note(COLUMN_LABEL[column], was, is)
  }
  if (old !== undefined && contact.lineId !== undefined && contact.lineId !== old.lineId)
    changes.push(
      before === undefined
        ? { what: 'Line', before: '', after: 'a new one' }
        : { what: 'Line', before: 'its own', after: 'that of the other leg' },
    )
  if (contact.leg !== old?.leg && contact.leg !== undefined)
    changes.push({ what: 'Leg', before: old?.leg ?? '', after: contact.leg })
  return changes
}
