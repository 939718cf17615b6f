import type { ComponentChildren } from 'preact'
import type { Field } from '../../calc/line/fields.ts'
import { assumedText } from './figure.ts'

export type FieldProps = {
  readonly field: Field
  readonly onType: (text: string) => void
}

/** What stands under a field: why its text was refused, how to find it out, what is assumed meanwhile, and its help. */
export function FieldNotes({ field, onType }: FieldProps) {
  return (
    <>
      <div class="field-note" id={`note-${field.key}`}>
        <Note field={field} />
      </div>
      <Offer field={field} onType={onType} />
      <details class="help">
        <summary>
          <span class="unseen">About {field.input.label}</span>
          <span aria-hidden="true">?</span>
        </summary>
        <p>{field.input.help}</p>
        {field.input.whenEmpty.do === 'ask' && <p>{field.input.whenEmpty.how}</p>}
      </details>
    </>
  )
}

function Note({ field }: { readonly field: Field }): ComponentChildren {
  if (field.issue) return <p class="issue">{field.issue.message}</p>
  if (field.state === 'pending') return <p>Working out the calculation…</p>
  if (field.state === 'assumed' && field.assumed) {
    const { why, favourable } = field.assumed
    return (
      <p>
        assumed {assumedText(field)}: {why}
        {favourable ? ' (favourable)' : ''}
      </p>
    )
  }
  const rule = field.input.whenEmpty
  if (field.state === 'missing' && rule.do === 'ask') return <p>Not known yet. {rule.how}</p>
  return null
}

function Offer({ field, onType }: FieldProps) {
  const rule = field.input.whenEmpty
  if (field.state !== 'missing' || rule.do !== 'ask' || !rule.offer) return null
  const { text, why } = rule.offer
  return (
    <div class="offer">
      <button type="button" class="button" onClick={() => onType(text)}>
        Use {text}
      </button>
      <span class="muted small">{why}</span>
    </div>
  )
}
