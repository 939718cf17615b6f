import type { SaidBound } from '../../calc/types.ts'
import { CopyButton } from './copy-button.tsx'
import { limitText } from './figure.ts'
import { RowSlices } from './row-slices.tsx'
import { Working } from './working.tsx'

const NATURE_WORDS: Readonly<Record<SaidBound['nature'], string>> = {
  need: 'set by the attenuation needed',
  works: 'set by what the signal can stand',
  permitted: 'set by a document; above it: with care, needs approval',
  fits: 'set by what can be built',
}

/** Each bound on a capacitance with what opens it, and its working. */
export function Bounds({ bounds }: { readonly bounds: readonly SaidBound[] }) {
  if (bounds.length === 0) return null
  return (
    <details class="fold figures">
      <summary>Bounds and their working</summary>
      <RowSlices
        rows={bounds.map((bound) => (
          <details key={`${bound.id}${bound.topology}`} class="figure-row">
            <summary>
              <span class="figure-label">
                {bound.topology === 'any' ? '' : `${topologyWord(bound.topology)}: `}
                {bound.why}
              </span>
              <span class="figure si">
                {bound.side === 'least' ? '≥ ' : '≤ '}
                {limitText(bound.markedF, 'capacitance', bound.side)}
              </span>
            </summary>
            <p>
              {bound.appliesTo}; {NATURE_WORDS[bound.nature]}.
            </p>
            {bound.openedBy.length > 0 && (
              <ul class="plain">
                {bound.openedBy.map((opener) => (
                  <li key={opener.id}>{opener.sentence}</li>
                ))}
              </ul>
            )}
            <CopyButton
              text={() => limitText(bound.markedF, 'capacitance', bound.side)}
              words={`Copy ${limitText(bound.markedF, 'capacitance', bound.side)}`}
            />
            <Working basis={bound.basis} />
          </details>
        ))}
      />
    </details>
  )
}

function topologyWord(topology: string): string {
  return topology === 'PI' ? 'Pi' : topology
}
