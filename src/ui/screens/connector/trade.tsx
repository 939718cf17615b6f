import type { ViewGiven } from './connector.tsx'

/** The ways out of this device and back in. */
export function Trade({ connector }: ViewGiven) {
  return <p>Connector “{connector.name}” stays on this device so far: there is no file of it yet to take away.</p>
}
