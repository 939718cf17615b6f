import { Fragment } from 'preact'
import { SAFETY_TEXTS, type SafetyId } from '../../../reference/safety.ts'
import { Icon } from '../icon.tsx'

/** Never the first of a line. */
const DOT = '\u00A0· '

/** What to beware of, all in sight by its short name, the gravest first; a tap tells each in full. On paper they stand in full. */
export function CautionLine({ ids }: { readonly ids: readonly SafetyId[] }) {
  if (ids.length === 0) return null
  return (
    <section class="caution-line" aria-label="Cautions">
      <details class="caution">
        <summary>
          <Icon name="caution" />
          <span>
            {ids.map((id, at) => (
              <Fragment key={id}>
                {at > 0 && DOT}
                {at === 0 ? <strong>{SAFETY_TEXTS[id].title}</strong> : SAFETY_TEXTS[id].title}
              </Fragment>
            ))}
          </span>
        </summary>
        {ids.map((id) => (
          <p key={id}>
            <strong>{SAFETY_TEXTS[id].title}.</strong> {SAFETY_TEXTS[id].text}
          </p>
        ))}
      </details>
    </section>
  )
}
