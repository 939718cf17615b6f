/** Every input of a check as it stands: its text, what it was read as, and where it comes from. */
import { type Field, isUsual } from '../../calc/line/fields.ts'
import { assumedText, printed } from '../parts/figure.ts'
import { originWords } from '../parts/origin.ts'
import { Part } from './frame.tsx'

/** Digits that lose nothing people type. */
const AS_TYPED = 6

/** Entered or taken over in columns; what was assumed with the reason, and what nobody entered, in running lines. */
export function SheetInputs({ fields }: { readonly fields: readonly Field[] }) {
  const isAssumed = (field: Field) => field.state === 'assumed' || (isUsual(field) && field.origin === undefined)
  const assumed = fields.filter(isAssumed)
  const entered = fields.filter((field) => field.text.trim() !== '' && !isAssumed(field))
  const absent = fields.filter((field) => field.text.trim() === '' && !isAssumed(field))
  return (
    <Part title="Inputs">
      <dl class="inputs columns-3">
        {entered.map((field) => (
          <div key={field.key} class="row">
            <dt>{field.input.label}:</dt>{' '}
            <dd>
              <strong>{inputText(field)}</strong> <em>{standing(field)}</em>
            </dd>
          </div>
        ))}
      </dl>
      <Assumed words="Assumed, usual values" fields={assumed.filter(({ state }) => state !== 'assumed')} />
      <Assumed words="Assumed" fields={assumed.filter((field) => field.assumed?.favourable === false)} />
      <Assumed words="Assumed in your favour" fields={assumed.filter((field) => field.assumed?.favourable === true)} />
      {absent.length > 0 && (
        <p class="row">
          <strong>Not entered:</strong> {absent.map(({ input }) => input.label).join('; ')}.
        </p>
      )}
    </Part>
  )
}

/** What stands in for inputs that nobody entered, each with its reason. */
function Assumed({ words, fields }: { readonly words: string; readonly fields: readonly Field[] }) {
  if (fields.length === 0) return null
  return (
    <p class="row">
      <strong>{words}:</strong>{' '}
      {fields.map((field, at) => (
        <span key={field.key}>
          {at > 0 && '; '}
          {field.input.label} <strong>{inputText(field)}</strong>
          {assumedReason(field)}
        </span>
      ))}
      .
    </p>
  )
}

/** Why it was assumed, in brackets. */
export function assumedReason({ assumed, input: { whenEmpty } }: Field): string {
  const why = assumed?.why ?? (whenEmpty.do === 'assume' ? whenEmpty.why : '')
  return why === '' ? '' : ` (${why})`
}

/** The text as it was typed, and what it was read as where that is more than its unit; a choice by its words. */
export function inputText(field: Field): string {
  const { text, state, input } = field
  if (state === 'assumed') return assumedText(field)
  const typed = text.trim()
  const read = readWords(field)
  if (read === undefined) return typed
  return input.type.is === 'choice' || input.type.is === 'flag' || saysAll(read, typed) ? read : `${typed} = ${read}`
}

/** Whether what was read holds every letter that was typed, with nothing added but a unit: "12M" and "12 MHz". */
function saysAll(read: string, typed: string): boolean {
  const [said, wanted] = [read, typed].map((text) =>
    text.replaceAll(/\s/g, '').replaceAll('−', '-').replaceAll('u', 'µ'),
  )
  return said?.startsWith(wanted ?? '') === true && /^\p{L}*[%Ω/°]?\p{L}*$/u.test(said.slice(wanted?.length))
}

function readWords({ input, value }: Field): string | undefined {
  const { type } = input
  if (type.is === 'choice') return type.options.find((option) => option.value === value)?.label
  if (type.is === 'flag') return value === true ? 'yes' : 'no'
  if (type.is !== 'number') return undefined
  if (typeof value === 'number') return printed(value, type.quantity, AS_TYPED)
  if (!Array.isArray(value)) return undefined
  return value.map((each: number) => printed(each, type.quantity, AS_TYPED)).join('; ')
}

/** Whether it was taken over or refused; what was typed needs no word. */
function standing(field: Field): string {
  if (field.state === 'refused') return `refused: ${field.issue?.message ?? ''}`
  if (field.origin === undefined) return 'preset'
  return field.origin.by === 'user' ? '' : originWords(field.origin)
}
