import type { ComponentChildren } from 'preact'
import { BlockView } from './block.tsx'
import { Fold, Names } from './fold.tsx'
import { nameOf } from './fold-names.ts'
import type { Part } from './page-layout.ts'
import { Text } from './terms.tsx'

type Folded = Extract<Part, { readonly is: 'fold' }>
type Run = Exclude<Part, Folded> | readonly Folded[]

/** Folds that follow each other stand side by side, by their names. */
function runsOf(parts: readonly Part[]): readonly Run[] {
  const runs: Run[] = []
  for (const part of parts) {
    const last = runs.at(-1)
    if (part.is === 'open') runs.push(part)
    else if (last === undefined || 'is' in last) runs.push([part])
    else runs.splice(-1, 1, [...last, part])
  }
  return runs
}

/** Called by what stands in it anyway: on paper, where it is open, it needs no name. */
const saysItself = ({ name, blocks: [first] }: Folded): boolean =>
  first !== undefined && !(first.is === 'text' && first.name !== undefined) && name === nameOf(first)

const NONE: ReadonlySet<Part> = new Set()

/** A page as it is laid out: what is open, and the rest by name. `foot`: what stands folded at the end of every page. */
export function Sections(given: {
  readonly parts: readonly Part[]
  readonly title: string
  readonly wanted?: ReadonlySet<Part>
  readonly foot?: ComponentChildren
}) {
  const { parts, title, wanted = NONE, foot } = given
  const runs = runsOf(parts)
  const last = runs.at(-1)
  const endsFolded = last !== undefined && !('is' in last)
  return (
    <div class="stack">
      {runs.map((run, at) =>
        'is' in run ? (
          <OpenPart key={JSON.stringify(run)} part={run} title={title} />
        ) : (
          <Names key={run.map(({ name }) => name).join()}>
            {run.map((part) => (
              <Fold
                key={part.name}
                name={part.name}
                isOpen={wanted.has(part)}
                isNever={part.blocks[0]?.is === 'never'}
                isRepeated={saysItself(part)}
              >
                {part.blocks.map((block) => (
                  <BlockView key={JSON.stringify(block)} block={block} title={title} />
                ))}
              </Fold>
            ))}
            {at === runs.length - 1 && foot}
          </Names>
        ),
      )}
      {!endsFolded && <Names>{foot}</Names>}
    </div>
  )
}

function OpenPart({ part, title }: { readonly part: Exclude<Part, Folded>; readonly title: string }) {
  const { heading, shown } = part
  return (
    <>
      {heading !== undefined && (
        <h2>
          <Text of={heading} />
        </h2>
      )}
      {shown.map(({ block, atOnce }) => (
        <BlockView key={JSON.stringify(block)} block={block} title={title} {...(atOnce !== undefined && { atOnce })} />
      ))}
    </>
  )
}
