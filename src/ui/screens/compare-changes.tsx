import { useState } from 'preact/hooks'
import type { Field } from '../../calc/line/fields.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Differs, VariantId } from '../../state/variants.ts'
import { Icon } from '../parts/icon.tsx'
import { fieldWords } from './compare-shape.ts'

type Given = {
  /** keys of the inputs that differ in any variant */
  readonly keys: readonly string[]
  readonly model: CheckModel
  /** absent for the check as entered, whose fields stand where they always do */
  readonly id?: VariantId
  readonly differs?: Differs
  readonly onChange?: (differs: Differs | undefined) => void
}

/** The inputs that differ: fixed where the check itself stands, to be typed in a variant; what is changed is marked. */
export function Changes({ keys, model, id, differs, onChange }: Given) {
  const fields = model.fields.value
  const shown = keys.flatMap((key) => fields.find((field) => field.key === key) ?? [])
  if (id === undefined || differs === undefined || onChange === undefined)
    return (
      <dl class="changes">
        {shown.map((field) => (
          <div key={field.key}>
            <dt>{field.input.label}</dt>
            <dd>{fieldWords(field)}</dd>
          </div>
        ))}
      </dl>
    )
  const put = (key: string, text: string) => onChange({ ...differs, [key]: text })
  const drop = (key: string) => {
    const { [key]: _gone, ...rest } = differs
    onChange(rest)
  }
  const isOwn = ({ key }: Field) => differs[key] !== undefined
  return (
    <div class="changes">
      {shown.map((field) =>
        isOwn(field) ? (
          <Changed
            key={field.key}
            id={id}
            field={field}
            text={differs[field.key] ?? ''}
            onType={(text) => put(field.key, text)}
            onDrop={() => drop(field.key)}
          />
        ) : (
          <dl key={field.key}>
            <dt>{field.input.label}</dt>
            <dd>{fieldWords(field)}, as in A</dd>
          </dl>
        ),
      )}
      <AddChange
        id={id}
        fields={fields.filter((field) => !isOwn(field))}
        onPick={(field) => put(field.key, field.text)}
      />
      <button type="button" class="link" onClick={() => onChange(undefined)}>
        Take variant {id.toUpperCase()} away
      </button>
    </div>
  )
}

type ChangedGiven = {
  readonly id: VariantId
  readonly field: Field
  readonly text: string
  readonly onType: (text: string) => void
  readonly onDrop: () => void
}

function Changed({ id, field, text, onType, onDrop }: ChangedGiven) {
  const { input, key, state, issue } = field
  const name = `${id}.${key}`
  const isRefused = state === 'refused'
  return (
    <div class="change">
      <label for={name}>
        <span class="changed-mark" aria-hidden="true">
          ≠
        </span>{' '}
        {input.label}
        <span class="unseen">, changed in {id.toUpperCase()}</span>
      </label>
      <div class="change-row">
        {input.type.is === 'choice' || input.type.is === 'flag' ? (
          <select id={name} name={name} value={text} onChange={(event) => onType(event.currentTarget.value)}>
            {optionsOf(field).map(({ value, label }) => (
              <option key={value} value={value}>
                {label}
              </option>
            ))}
          </select>
        ) : (
          <input
            id={name}
            name={name}
            type="text"
            value={text}
            autocomplete="off"
            autocapitalize="none"
            spellcheck={false}
            aria-invalid={isRefused}
            aria-describedby={isRefused ? `note-${name}` : undefined}
            onInput={(event) => onType(event.currentTarget.value)}
          />
        )}
        <button type="button" class="icon-button" onClick={onDrop}>
          <Icon name="close" />
          <span class="unseen">{input.label} as in A again</span>
        </button>
      </div>
      {isRefused && (
        <p id={`note-${name}`} class="issue">
          {issue?.message}
        </p>
      )}
    </div>
  )
}

function optionsOf({ input }: Field): readonly { readonly value: string; readonly label: string }[] {
  const none = { value: '', label: 'not entered' }
  if (input.type.is === 'flag') return [none, { value: 'true', label: 'yes' }, { value: 'false', label: 'no' }]
  return input.type.is === 'choice' ? [none, ...input.type.options] : []
}

function AddChange(given: {
  readonly id: VariantId
  readonly fields: readonly Field[]
  readonly onPick: (field: Field) => void
}) {
  const { id, fields, onPick } = given
  const [picked, setPicked] = useState('')
  return (
    <label class="add-change">
      <span>Change in {id.toUpperCase()}</span>
      <select
        value={picked}
        onChange={(event) => {
          const field = fields.find(({ key }) => key === event.currentTarget.value)
          setPicked('')
          if (field) onPick(field)
        }}
      >
        <option value="">Choose an input</option>
        {fields.map(({ key, input }) => (
          <option key={key} value={key}>
            {input.label}
          </option>
        ))}
      </select>
    </label>
  )
}
