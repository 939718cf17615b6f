/** A sheet in a few lines of plain text, for whoever it is shared with. */
import { VERDICT_WORDS } from '../../verdict.ts'
import type { SheetBody } from './body.ts'
import { contactList } from './contact-list.ts'
import { NEVER, NONE, type SheetRow } from './rows.ts'

const ORDER = ['ok', 'marginal', 'fails', 'unknown'] as const

/** "9 yes, 2 with care, 1 never": how the contacts that carry a line stand. */
export function countWords(rows: readonly SheetRow[]): string {
  const barred = rows.filter(({ word }) => word === NEVER).length
  const counts = ORDER.map((verdict) => ({
    word: VERDICT_WORDS[verdict],
    count: rows.filter((row) => row.type === 'line' && row.verdict === verdict && row.word !== NEVER).length,
  }))
  const open = rows.filter((row) => row.type === 'line' && row.verdict === undefined && row.word !== NEVER).length
  const plain = rows.filter(({ type }) => type !== 'line').length
  return [
    ...counts,
    { word: NEVER, count: barred },
    { word: 'not decided', count: open },
    { word: 'without a line', count: plain },
  ]
    .filter(({ count }) => count > 0)
    .map(({ word, count }) => `${count} ${word}`)
    .join(', ')
}

/** Head, parts, every contact that carries a line, and the open questions. */
export function sheetWords({ connector, rows, parts, questions }: SheetBody): string {
  const order = rows.map(({ id }) => id)
  const said = (text: string) => (text === NONE ? '' : text)
  return [
    `${connector.name || 'Connector'}: ${rows.length} contacts; ${countWords(rows)}.`,
    ...parts.map(({ words, contacts }) => `${words}: ${contacts.length} ×, ${contactList(contacts, order)}`),
    ...rows
      .filter(({ type }) => type === 'line')
      .map((row) => {
        const what = [said(row.function), said(row.value) === '' ? row.topology : `${row.topology} ${row.value}`]
        return `${row.id}: ${[...what, row.word].filter((text) => text !== '').join(', ')}`
      }),
    ...questions.map(({ sentence }) => `Open: ${sentence}`),
  ].join('\n')
}
