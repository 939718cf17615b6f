import type { Input } from '../../calc/types.ts'
import { ChoiceField } from './choice.tsx'
import { FieldNotes, type FieldProps } from './field-notes.tsx'
import { useTyped } from './typed.ts'

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
      return <TextField {...given} />
  }
}

/** Keyboard that suits: whole digits for counts, the letters pad where a prefix or a unit may follow. */
function inputMode(input: Input): 'numeric' | 'text' {
  return input.type.is === 'number' && input.type.quantity === 'count' ? 'numeric' : 'text'
}

function TextField(given: FieldProps) {
  const { field, onType, onTake, onTakeText, onLeave, isUnsaid = false } = given
  const { input, key, text } = field
  const typed = useTyped(text, onType)
  const id = `in-${key}`
  const refused = field.state === 'refused' && !isUnsaid
  return (
    <div class={`field ${isUnsaid ? 'value' : field.state}`} data-origin={field.origin?.by}>
      <label for={id}>{input.label}</label>
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
        aria-describedby={`note-${key}`}
        onInput={(event) => typed.type(event.currentTarget.value)}
        onBlur={() => {
          typed.leave()
          onLeave?.()
        }}
      />
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
