import type { Input } from '../../calc/types.ts'
import { ChoiceField } from './choice.tsx'
import { FieldNotes, type FieldProps } from './field-notes.tsx'
import { prefixKeysOf } from './prefixes.ts'
import { useTyped } from './typed.ts'
import { isUnitSaid, unitOf } from './unit.ts'

/** One input of a check, by its descriptor: a text, a row of choices or a switch, with its help and what is known of it. */
export function FieldView(given: FieldProps) {
  switch (given.field.input.type.is) {
    case 'choice':
      return <ChoiceField {...given} />
    case 'flag':
      return <FlagField {...given} />
    case 'number':
    case 'tolerance':
    case 'level':
    case 'column':
      return <TextField {...given} />
  }
}

/** Keyboard that suits: whole digits for counts, the letters pad where a prefix or a unit may follow. */
function inputMode(input: Input): 'numeric' | 'text' {
  const { type } = input
  return type.is === 'number' && type.quantity === 'count' && type.category === undefined ? 'numeric' : 'text'
}

function TextField(given: FieldProps) {
  const { field, onType, onTake, onTakeText, onLeave, isUnsaid = false } = given
  const { input, key, text } = field
  const typed = useTyped(text, onType)
  const id = `in-${key}`
  const unit = unitOf(input)
  const refused = field.state === 'refused' && !isUnsaid
  const many = input.type.is === 'number' && input.type.many === true ? ' many' : ''
  return (
    <div class={`field ${isUnsaid ? 'value' : field.state}${many}`} data-origin={field.origin?.by}>
      <label for={id}>{input.label}</label>
      <span class="measure">
        <input
          id={id}
          name={key}
          type="text"
          value={typed.shown}
          inputMode={inputMode(input)}
          autocomplete="off"
          autocapitalize="none"
          // in capitals it is set as an attribute: the property of that name is a boolean in some browsers
          autoCorrect="off"
          spellcheck={false}
          enterkeyhint="done"
          aria-invalid={refused}
          data-keys={prefixKeysOf(input)}
          aria-describedby={`note-${key}`}
          onInput={(event) => typed.type(event.currentTarget.value)}
          onBlur={() => {
            typed.leave()
            onLeave?.()
          }}
        />
        {unit !== '' && (
          <span class={isUnitSaid(typed.shown, unit) ? 'unit said' : 'unit'} aria-hidden="true">
            {unit}
          </span>
        )}
      </span>
      <FieldNotes
        {...given}
        shown={typed.shown}
        onType={(other) => {
          typed.leave()
          onType(other)
        }}
        {...(onTake && {
          onTake: (other) => {
            typed.leave()
            onTake(other)
          },
        })}
        {...(onTakeText && {
          onTakeText: (other, left) => {
            typed.leave()
            onTakeText(other, left)
          },
        })}
      />
    </div>
  )
}

function FlagField(given: FieldProps) {
  const { field, onType } = given
  const { input, key } = field
  const id = `in-${key}`
  return (
    <div class={`field flag ${field.state}`} data-origin={field.origin?.by}>
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
      <FieldNotes {...given} />
    </div>
  )
}
