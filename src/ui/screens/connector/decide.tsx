import type { ViewGiven } from './connector.tsx'

/** What is decided for every contact. */
export function Decide({ connector }: ViewGiven) {
  return (
    <p>
      The {connector.contacts.length} contacts are decided one by one so far: the checks of a line propose a part for
      it.
    </p>
  )
}
