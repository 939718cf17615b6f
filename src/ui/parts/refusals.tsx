import type { Field } from '../../calc/line/fields.ts'
import type { Result } from '../../calc/types.ts'
import { wantedField } from './wanted-field.ts'

/** What stands in the way of an answer, each with a way to the field. */
export function Refusals(given: {
  readonly result: Extract<Result, { ok: false }>
  readonly fields: readonly Field[]
  /** an older answer stands: this lies over it, so that nothing moves */
  readonly over?: boolean
}) {
  const { result, fields, over = false } = given
  return (
    <section class={over ? 'answer over' : 'answer'} aria-label={over ? 'No answer yet' : 'Answer'}>
      <p class="headline">No answer yet.</p>
      <ul class="plain">
        {result.issues.map((issue) => {
          const field = fields.find((each) => each.key === issue.key)
          return (
            <li key={`${issue.key}${issue.code}`}>
              {field && (
                <button type="button" class="link" onClick={() => focusField(issue.key)}>
                  {field.input.label}
                </button>
              )}
              {field ? ': ' : ''}
              {issue.message}
            </li>
          )
        })}
      </ul>
    </section>
  )
}

/** Opens the folds a field may be in, and puts the cursor there. */
export function focusField(key: string): void {
  wantedField.value = key
  const field = document.getElementById(`in-${key}`)
  if (field !== null) {
    enter(field)
    return
  }
  // its fold draws it first: within the same turn, so that a phone still takes it for the tap and shows its keys
  const drawn = new MutationObserver(() => {
    const late = document.getElementById(`in-${key}`)
    if (late !== null && wantedField.peek() === key) enter(late)
    if (wantedField.peek() !== key) drawn.disconnect()
  })
  drawn.observe(document.body, { childList: true, subtree: true })
  setTimeout(() => {
    drawn.disconnect()
    if (wantedField.peek() === key) wantedField.value = undefined
  }, GIVEN_UP_MS)
}

/** The screen may have no such field. */
const GIVEN_UP_MS = 1000

function enter(field: HTMLElement): void {
  wantedField.value = undefined
  for (let fold = folded(field); fold; fold = folded(field)) fold.setAttribute('open', '')
  const target = field.matches('input, button') ? field : field.querySelector<HTMLElement>('input:checked, input')
  target?.focus()
  field.scrollIntoView({ block: 'center' })
}

const folded = (field: Element) => field.closest('details:not([open])')
