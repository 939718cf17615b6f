/** Every input of a check as it stands: its text, what it was read as, and where it comes from. */
import { type Field, isUsual } from '../../calc/line/fields.ts'
import { assumedText, printed } from '../parts/figure.ts'
import { originWords } from '../parts/origin.ts'
import { Part } from './frame.tsx'

/** Digits that lose nothing people type. */
const AS_TYPED = 6

export function SheetInputs({ fields }: { readonly fields: readonly Field[] }) {
  const given = fields.filter(({ state, text }) => text.trim() !== '' || state === 'assumed')
  const absent = fields.filter((field) => !given.includes(field))
  return (
    <Part title="Inputs; what nobody entered is marked as assumed">
      <dl class="inputs columns-3">
        {given.map((field) => (
          <div key={field.key} class={field.state === 'assumed' ? 'row assumed' : 'row'}>
            <dt>{field.input.label}:</dt>{' '}
            <dd>
              <strong>{inputText(field)}</strong> <em>{standing(field)}</em>
            </dd>
          </div>
        ))}
      </dl>
      {absent.length > 0 && (
        <p>
          <strong>Not entered:</strong> {absent.map(({ input }) => input.label).join('; ')}.
        </p>
      )}
    </Part>
  )
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

/** Whether it was assumed, is usual, was taken over or refused; what was typed needs no word. */
function standing(field: Field): string {
  if (field.state === 'assumed') return field.assumed?.favourable ? 'assumed, in your favour' : 'assumed'
  if (field.state === 'refused') return `refused: ${field.issue?.message ?? ''}`
  if (field.origin === undefined) return isUsual(field) ? 'usual value, assumed' : 'preset'
  return field.origin.by === 'user' ? '' : originWords(field.origin)
}

type Assumptions = { readonly fields: readonly Field[]; readonly granted: readonly string[] }

/** What the working takes for granted, and why each input that nobody entered stands as it does; one line each. */
export function SheetAssumptions({ fields, granted }: Assumptions) {
  const reasons = fields.flatMap((field) => {
    const rule = field.input.whenEmpty
    const why = field.state === 'assumed' ? field.assumed?.why : isUsual(field) && rule.do === 'assume' ? rule.why : ''
    return why ? [{ key: field.key, label: field.input.label, why }] : []
  })
  if (granted.length + reasons.length === 0) return null
  return (
    <Part title="Taken for granted, and why it is assumed" columns={3}>
      {granted.map((each) => (
        <p key={each} class="row">
          {each}
        </p>
      ))}
      {reasons.map(({ key, label, why }) => (
        <p key={key} class="row">
          <strong>{label}:</strong> {why}
        </p>
      ))}
    </Part>
  )
}
