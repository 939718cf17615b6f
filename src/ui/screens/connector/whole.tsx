import type { ViewGiven } from './connector.tsx'

/** What only the whole connector tells. */
export function Whole({ connector }: ViewGiven) {
  return (
    <p>
      The sums over all {connector.contacts.length} contacts are not worked out here so far: a figure of one line is for
      that line alone.
    </p>
  )
}
