import type { ViewGiven } from './connector.tsx'

/** A table of contacts, pasted or from a file. */
export function Paste({ connector }: ViewGiven) {
  return <p>Connector “{connector.name}” takes its contacts one by one so far.</p>
}
