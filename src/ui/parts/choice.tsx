import { useRef, useState } from 'preact/hooks'
import type { Field } from '../../calc/line/fields.ts'
import type { Option } from '../../calc/types.ts'
import { FieldNotes, type FieldProps } from './field-notes.tsx'
import { Icon } from './icon.tsx'
import { OptionSearch } from './option-search.tsx'
import { TopologyDrawing } from './topology-drawing.tsx'

/** More choices than this are searched, not lined up; so are a few with long names. */
const MOST_IN_A_ROW = 8
const MOST_LETTERS = 90

export function optionsFor(field: Field): readonly Option[] {
  return field.input.type.is === 'choice' ? field.input.type.options : []
}

/** The word for leaving a choice open, when its descriptor allows that. */
export function openWord(field: Field): string | undefined {
  const rule = field.input.whenEmpty
  if (rule.do === 'omit') return 'not stated'
  if (field.input.defaultText !== undefined && field.text.trim() !== '') return undefined
  return rule.do === 'ask' ? 'not known' : 'leave it open'
}

export function ChoiceField(given: FieldProps) {
  const options = optionsFor(given.field)
  const letters = options.reduce((sum, { label }) => sum + label.length, 0)
  return options.length > MOST_IN_A_ROW || letters > MOST_LETTERS ? <PickerField {...given} /> : <RowField {...given} />
}

function RowField(given: FieldProps) {
  const { field, onType } = given
  const { key, input } = field
  const open = openWord(field)
  const chosen = field.text.trim()
  const choices = [...optionsFor(field), ...(open === undefined ? [] : [{ value: '', label: open }])]
  return (
    <div
      id={`in-${key}`}
      class={`field choice ${field.state}`}
      data-origin={field.origin?.by}
      role="radiogroup"
      aria-labelledby={`label-${key}`}
      aria-invalid={field.state === 'refused'}
      aria-describedby={`note-${key}`}
    >
      <span class="legend-word" id={`label-${key}`}>
        {input.label}
      </span>
      <div class={choices.some(({ value }) => value === 'PI') ? 'choices drawn' : 'choices'}>
        {choices.map((option) => (
          <label key={option.value} class={option.value === '' ? 'choice-button said' : 'choice-button'}>
            <input
              type="radio"
              name={key}
              value={option.value}
              checked={chosen === option.value}
              onChange={() => onType(option.value)}
            />
            <span>
              <TopologyDrawing value={option.value} />
              {option.label}
            </span>
          </label>
        ))}
      </div>
      <FieldNotes {...given} />
    </div>
  )
}

function PickerField(given: FieldProps) {
  const { field, onType } = given
  const { key, input } = field
  const dialog = useRef<HTMLDialogElement>(null)
  const [isOpen, setOpen] = useState(false)
  const current = optionsFor(field).find((option) => option.value === field.text.trim())
  const open = openWord(field)
  const close = () => dialog.current?.close()
  const pick = (value: string) => {
    onType(value)
    close()
  }
  return (
    <div class={`field picker ${field.state}`} data-origin={field.origin?.by}>
      <span class="legend-word" id={`label-${key}`}>
        {input.label}
      </span>
      <button
        type="button"
        id={`in-${key}`}
        name={key}
        value={field.text}
        class="picker-button"
        aria-haspopup="dialog"
        aria-labelledby={`label-${key} in-${key}`}
        aria-invalid={field.state === 'refused'}
        aria-describedby={`note-${key}`}
        onClick={() => {
          setOpen(true)
          dialog.current?.showModal()
        }}
      >
        <span>{current?.label ?? (field.text.trim() === '' ? (open ?? 'choose') : field.text)}</span>
        <Icon name="search" />
      </button>
      <FieldNotes {...given} />
      <dialog ref={dialog} class="sheet" aria-label={input.label} onClose={() => setOpen(false)}>
        {isOpen && (
          <>
            <div class="sheet-head">
              <h2>{input.label}</h2>
              <button type="button" class="icon-button" onClick={close}>
                <Icon name="close" />
                <span class="unseen">Close</span>
              </button>
            </div>
            <OptionSearch
              options={optionsFor(field)}
              chosen={field.text.trim()}
              onPick={pick}
              last={open === undefined ? undefined : { value: '', label: open }}
            />
          </>
        )}
      </dialog>
    </div>
  )
}
