/** The sections of a page: what stands before its first heading, and then a heading with all that follows it. */
import type { Block } from './types.ts'

export type Section = { readonly heading?: string; readonly isFolded?: boolean; readonly blocks: readonly Block[] }

export function sectionsOf(blocks: readonly Block[]): readonly Section[] {
  const sections: { heading?: string; isFolded?: boolean; blocks: Block[] }[] = []
  for (const block of blocks) {
    const last = sections.at(-1)
    if (block.is === 'heading') sections.push({ heading: block.text, isFolded: block.isFolded === true, blocks: [] })
    else if (last === undefined) sections.push({ blocks: [block] })
    else last.blocks.push(block)
  }
  return sections
}
