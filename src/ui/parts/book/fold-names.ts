/** What a fold of a page is called: by what is in it. Pure. */
import type { Block } from '../../../guide/book/types.ts'
import { FILL_INS } from '../../../guide/fill-ins.ts'

export const HOW = 'How to check: '
const EXAMPLE = 'Example: '

/** A paragraph that goes on from the one before; what has a name of its own does not. */
export const isPlain = (block: Block): boolean =>
  block.is === 'text' && block.name === undefined && !block.text.startsWith(HOW) && !block.text.startsWith(EXAMPLE)

const MOST_NAME_LETTERS = 38

/** How a text begins, as far as a name goes: its first sentence, or as many whole words of it as there is room for. */
function firstWords(text: string): string {
  const sentence = text.split(/[.:;](?=\s|$)/u, 1)[0] ?? text
  if (sentence.length <= MOST_NAME_LETTERS) return sentence
  return `${sentence.slice(0, MOST_NAME_LETTERS).replace(/[\s,]+\S*$/u, '')}…`
}

/** What the fold of a block is called that has no heading of its own. */
export function nameOf(block: Block): string {
  switch (block.is) {
    case 'text':
      if (block.name !== undefined) return block.name
      return block.text.startsWith(HOW)
        ? 'How to check'
        : block.text.startsWith(EXAMPLE)
          ? 'Example'
          : firstWords(block.text)
    case 'list':
      return block.ordered === true ? `Steps, ${block.items.length}` : firstWords(block.items[0] ?? '')
    case 'never':
      return `Never, ${block.items.length}`
    case 'rows':
      return [...new Set(block.rows.map(({ label }) => label))].join(' · ')
    case 'table':
      return `${block.caption ?? 'Table'}, ${block.rows.length} rows`
    case 'drawing':
      return 'Drawing'
    case 'waveform':
      return block.waveform.title
    case 'sound':
      return 'Sound'
    case 'fill-in':
      return FILL_INS[block.table].title
    case 'open-check':
    case 'heading':
      return 'Checks'
  }
}
