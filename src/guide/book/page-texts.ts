/** The texts of a page of the book, in the order they stand there. */
import type { Block, BookPage } from './types.ts'

/** What a block says in words; what a drawing says is read out, not shown. */
export function blockTexts(block: Block): readonly string[] {
  switch (block.is) {
    case 'heading':
    case 'text':
      return [block.text]
    case 'list':
    case 'never':
      return block.items
    case 'rows':
      return block.rows.flatMap(({ label, text }) => [label, text])
    case 'table':
      return [...(block.caption === undefined ? [] : [block.caption]), ...block.head, ...block.rows.flat()]
    case 'open-check':
      return [block.why]
    case 'drawing':
    case 'waveform':
    case 'sound':
    case 'fill-in':
      return []
  }
}

export const pageTexts = ({ title, blocks }: BookPage): readonly string[] => [title, ...blocks.flatMap(blockTexts)]

/** What of a block is shown as text that can be tapped, a button that opens a check is not; the heads of a table last, since a phone shows them as labels only. */
export function tappedInBlock(block: Block): readonly string[] {
  if (block.is === 'open-check') return []
  if (block.is === 'table')
    return [...(block.caption === undefined ? [] : [block.caption]), ...block.rows.flat(), ...block.head]
  return block.is === 'waveform' ? [block.waveform.title] : blockTexts(block)
}
