import type { ComponentChildren } from 'preact'
import type { Field } from '../../calc/fields.ts'
import type { Input } from '../../calc/types.ts'
import { ChoiceField } from './choice.tsx'
import { assumedText } from './figure.ts'

export type FieldProps = {
  readonly field: Field
  readonly onType: (text: string) => void
}

/** One input of a check, by its descriptor: a text, a row of choices or a switch, with its help and what is known of it. */
export function FieldView({ field, onType }: FieldProps) {
  switch (field.input.type.is) {
    case 'choice':
      return <ChoiceField field={field} onType={onType} />
    case 'flag':
      return <FlagField field={field} onType={onType} />
    case 'number':
    case 'tolerance':
      return <TextField field={field} onType={onType} />
  }
}

/** Keyboard that suits: whole digits for counts, the letters pad where a prefix or a unit may follow. */
function inputMode(input: Input): 'numeric' | 'text' {
  return input.type.is === 'number' && input.type.quantity === 'count' ? 'numeric' : 'text'
}

function TextField({ field, onType }: FieldProps) {
  const { input, key, text } = field
  const id = `in-${key}`
  const refused = field.state === 'refused'
  return (
    <div class={`field ${field.state}`}>
      <label for={id}>{input.label}</label>
      <input
        id={id}
        name={key}
        type="text"
        value={text}
        inputMode={inputMode(input)}
        autocomplete="off"
        autocapitalize="none"
        autocorrect="off"
        spellcheck={false}
        enterkeyhint="done"
        aria-invalid={refused}
        aria-describedby={`note-${key}`}
        onInput={(event) => onType(event.currentTarget.value)}
      />
      <FieldNotes field={field} onType={onType} />
    </div>
  )
}

function FlagField({ field, onType }: FieldProps) {
  const { input, key } = field
  const id = `in-${key}`
  return (
    <div class={`field flag ${field.state}`}>
      <label for={id}>{input.label}</label>
      <input
        id={id}
        name={key}
        type="checkbox"
        class="switch"
        checked={field.value === true}
        aria-invalid={field.state === 'refused'}
        aria-describedby={`note-${key}`}
        onChange={(event) => onType(event.currentTarget.checked ? 'true' : 'false')}
      />
      <FieldNotes field={field} onType={onType} />
    </div>
  )
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
