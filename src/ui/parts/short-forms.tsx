import { shortFormsOf } from '../../guide/screen-texts.ts'

/** What the short forms on this screen stand for, in the order they are met; one tap away. */
export function ShortForms({ texts }: { readonly texts: readonly string[] }) {
  const forms = shortFormsOf(texts)
  if (forms.length === 0) return null
  return (
    <details class="fold">
      <summary>Short forms: {forms.map(({ form }) => form).join(', ')}</summary>
      <dl class="small">
        {forms.map(({ form, words }) => (
          <div key={form}>
            <dt>
              <strong>{form}</strong>
            </dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
