import { formatQuantity } from '../../calc/quantity/format.ts'
import type { GivenValue } from '../../calc/types.ts'
import { bandsAt } from '../../reference/radio-bands.ts'

/** Which receivers listen where the noise is: what a typed noise frequency disturbs. Nothing where no band is known. */
export function NoiseBands({ value }: { readonly value: GivenValue | undefined }) {
  const frequenciesHz = [value].flat().filter((hz) => typeof hz === 'number')
  const heard = frequenciesHz.map((hz) => ({ hz, bands: bandsAt(hz) })).filter(({ bands }) => bands.length > 0)
  if (heard.length === 0) return null
  return (
    <p>
      {heard.map(({ hz, bands }) => (
        <span key={hz}>
          {formatQuantity(hz, 'frequency', 6)} is heard by {bands.map(({ system }) => system).join(', ')}.{' '}
        </span>
      ))}
      <a class="link" href="#/notes/radio-bands">
        Radio bands
      </a>
    </p>
  )
}
