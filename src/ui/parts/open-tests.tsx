import type { Evidence } from '../../guide/investigation.ts'
import { hashOf } from '../../state/router.ts'
import { RowLink } from './row-link.tsx'

type Given = {
  readonly tests: readonly Evidence[]
  readonly title: string
  /** how many are shown; the rest is left to the next step */
  readonly most?: number
  readonly onOpen?: () => void
}

const KINDS = { ask: 'a question', look: 'a look', test: 'a test' } as const

/** Tests not done yet, each one tap away from its card. */
export function OpenTests({ tests, title, most = 5, onOpen }: Given) {
  if (tests.length === 0) return null
  return (
    <section aria-label={title}>
      <h2>{title}</h2>
      <ul class="rows">
        {tests.slice(0, most).map((item) => (
          <li key={item.id}>
            <RowLink href={hashOf('ask', item.id)} onClick={onOpen} title={item.text}>
              {KINDS[item.kind]}, {item.minutes >= 1440 ? 'days' : `${item.minutes} min`}
              {item.opens ? '; opens or loads a circuit' : ''}
            </RowLink>
          </li>
        ))}
      </ul>
    </section>
  )
}
