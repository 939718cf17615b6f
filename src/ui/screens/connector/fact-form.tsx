import { useState } from 'preact/hooks'
import { readField } from '../../../calc/line/fields.ts'
import { CHECKS } from '../../../calc/registry.ts'
import type { FactKey, Input } from '../../../calc/types.ts'
import { expressionReading } from '../../../state/expression.ts'

type Group = { readonly title: string; readonly inputs: readonly Input[] }

/** Every fact a check asks for, under the first check that does; the kind of line has a list of its own. */
const GROUPS: readonly Group[] = (() => {
  const seen = new Set<FactKey>(['lineKind'])
  return CHECKS.map(({ title, inputs }) => ({
    title,
    inputs: inputs.filter(({ fact }) => {
      const isFirst = !seen.has(fact)
      seen.add(fact)
      return isFirst
    }),
  })).filter(({ inputs }) => inputs.length > 0)
})()

const INPUTS = GROUPS.flatMap(({ inputs }) => inputs)

/** One fact and its text for several lines; what its field refuses is not said of any. */
export function FactForm({ onSay }: { readonly onSay: (fact: FactKey, text: string) => void }) {
  const [fact, setFact] = useState<FactKey>('noiseHz')
  const [text, setText] = useState('')
  const [refused, setRefused] = useState<string | undefined>(undefined)
  const input = INPUTS.find((one) => one.fact === fact)
  const say = () => {
    if (input === undefined) return
    const field = readField(input, text, {}, expressionReading)
    if (field.state === 'refused') return setRefused(field.issue?.message)
    if (text.trim() === '') return setRefused(`Enter what it is for all of them. ${input.help}`)
    onSay(fact, text.trim())
  }
  const type = (next: string) => {
    setText(next)
    setRefused(undefined)
  }
  return (
    <form
      class="stack"
      aria-label="A fact of their lines"
      onSubmit={(event) => {
        event.preventDefault()
        say()
      }}
    >
      <div class="field wide">
        <label for="many-fact">A fact of their lines</label>
        <select
          id="many-fact"
          value={fact}
          onChange={(event) => {
            setFact(INPUTS.find((one) => one.fact === event.currentTarget.value)?.fact ?? fact)
            type('')
          }}
        >
          {GROUPS.map(({ title, inputs }) => (
            <optgroup key={title} label={title}>
              {inputs.map((one) => (
                <option key={one.fact} value={one.fact}>
                  {one.label}
                </option>
              ))}
            </optgroup>
          ))}
        </select>
      </div>
      <div class="field wide">
        <label for="many-fact-text">{input?.label}</label>
        <FactText input={input} text={text} onType={type} isRefused={refused !== undefined} />
        <p class="muted small">{input?.help}</p>
        {refused !== undefined && (
          <p id="many-fact-refused" class="against small" role="alert">
            {refused}
          </p>
        )}
      </div>
      <button type="submit" class="button">
        Say it of all chosen
      </button>
    </form>
  )
}

type TextGiven = {
  readonly input: Input | undefined
  readonly text: string
  readonly onType: (text: string) => void
  readonly isRefused: boolean
}

function FactText({ input, text, onType, isRefused }: TextGiven) {
  const options = input?.type.is === 'choice' ? input.type.options : input?.type.is === 'flag' ? YES_NO : undefined
  if (options !== undefined)
    return (
      <select id="many-fact-text" value={text} onChange={(event) => onType(event.currentTarget.value)}>
        <option value="">choose</option>
        {options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    )
  return (
    <input
      id="many-fact-text"
      type="text"
      value={text}
      autocomplete="off"
      autocapitalize="none"
      spellcheck={false}
      enterkeyhint="done"
      aria-invalid={isRefused}
      {...(isRefused && { 'aria-describedby': 'many-fact-refused' })}
      onInput={(event) => onType(event.currentTarget.value)}
    />
  )
}

const YES_NO = [
  { value: 'true', label: 'yes' },
  { value: 'false', label: 'no' },
]
