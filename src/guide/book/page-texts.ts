/** The texts of a page of the book, in the order they stand there. */
import { isFolded, sectionsOf } from './sections.ts'
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

/** What of a block is shown as text that can be tapped; the heads of a table last, since a phone shows them as labels only. */
function tappedInBlock(block: Block): readonly string[] {
  if (block.is === 'table')
    return [...(block.caption === undefined ? [] : [block.caption]), ...block.rows.flat(), ...block.head]
  return block.is === 'waveform' ? [block.waveform.title] : blockTexts(block)
}

/**
 * The texts of a page whose words can be tapped, in the order they are read: all but its title, which is no text of the
 * page, the button that opens a check, and the heading of a folded section, which a tap opens.
 */
export function tappedTexts({ blocks }: BookPage): readonly string[] {
  const sections = sectionsOf(blocks)
  return sections.flatMap(({ heading, blocks: own }, index) => [
    ...(heading === undefined || isFolded(sections, index) ? [] : [heading]),
    ...own.filter(({ is }) => is !== 'open-check').flatMap(tappedInBlock),
  ])
}
