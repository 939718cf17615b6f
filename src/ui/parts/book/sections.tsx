import { isFolded, sectionsOf } from '../../../guide/book/sections.ts'
import type { Block } from '../../../guide/book/types.ts'
import { BlockView } from './block.tsx'
import { Text } from './terms.tsx'

/** A page's blocks by section. Of a long page all but the first are folded; on paper every one is open. */
export function Sections({ blocks, title }: { readonly blocks: readonly Block[]; readonly title: string }) {
  const sections = sectionsOf(blocks)
  return (
    <div class="stack">
      {sections.map((section, index) => {
        const views = section.blocks.map((block) => (
          <BlockView key={JSON.stringify(block)} block={block} title={title} />
        ))
        const { heading } = section
        if (heading === undefined) return views
        if (!isFolded(sections, index))
          return [
            <h2 key={heading}>
              <Text of={heading} />
            </h2>,
            ...views,
          ]
        return (
          <details key={heading} class="fold">
            <summary>
              <h2>{heading}</h2>
            </summary>
            <div class="stack">{views}</div>
          </details>
        )
      })}
    </div>
  )
}
