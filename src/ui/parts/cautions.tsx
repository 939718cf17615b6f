import { isSafetyId, SAFETY_TEXTS } from '../../reference/safety.ts'
import { Icon } from './icon.tsx'

/** Safety texts by id. The screening statement is left out: every answer ends with it anyway. */
export function Cautions(given: { readonly ids: readonly string[]; readonly open?: boolean; readonly label?: string }) {
  const { ids, open = false, label = 'Cautions' } = given
  const known = [...new Set(ids)].filter(isSafetyId).filter((id) => id !== 'screening')
  if (known.length === 0) return null
  return (
    <section class="cautions" aria-label={label}>
      {known.map((id) => (
        <details key={id} class="caution" open={open}>
          <summary>
            <Icon name="caution" />
            <span>{SAFETY_TEXTS[id].title}</span>
          </summary>
          <p>{SAFETY_TEXTS[id].text}</p>
        </details>
      ))}
    </section>
  )
}
