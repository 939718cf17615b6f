import type { Desk } from '../../../state/desk.ts'
import { kept } from '../../../state/traces.ts'
import { Parts } from './fitted-parts.tsx'
import { Losses } from './losses.tsx'
import { Pair } from './measured-pair.tsx'

type Given = { readonly desk: Desk }

/** A filter by its Touchstone file: on the bench, between the line's own ends, and as parts of the model. */
export function MeasuredFilter({ desk }: Given) {
  const file = kept.value?.find((one) => one.is === 'network')
  if (file?.is !== 'network') return null
  const { network, name } = file
  return (
    <section class="stack" aria-label="Measured filter">
      <h3>Measured filter</h3>
      {network.portCount === 2 && <Losses network={network} name={name} desk={desk} />}
      {network.portCount === 1 && (
        <p>One port gives an impedance, not a loss: a part of its own can be fitted to it.</p>
      )}
      {network.portCount > 2 && <Pair network={network} name={name} desk={desk} />}
      {network.portCount <= 2 && <Parts network={network} desk={desk} />}
    </section>
  )
}
