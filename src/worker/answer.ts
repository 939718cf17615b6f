/** An answer worked out away from the screen: what is sent for it, and how it is worked out there. */
import { evaluate } from '../calc/line/evaluate.ts'
import { type Field, unclaimed } from '../calc/line/fields.ts'
import type { Check, CheckId, Progress, Result } from '../calc/types.ts'

/** What an answer is worked out from: a field without its descriptor, which the worker has itself. */
type SentField = Pick<Field, 'key' | 'text' | 'state' | 'value' | 'issue' | 'assumed'>

/** Only the fields that something is said in: the others are what their descriptors say of them, there as here. */
export type CheckJob = { readonly check: CheckId; readonly fields: readonly SentField[] }

/** The job for an answer to these fields, which are all of the check. */
export function checkJob(check: Check, fields: readonly Field[]): CheckJob {
  return {
    check: check.id,
    fields: fields
      .filter((field) => field !== unclaimed(field.input))
      .map(({ key, text, state, value, issue, assumed }) => ({
        key,
        text,
        state,
        ...(value === undefined ? {} : { value }),
        ...(issue === undefined ? {} : { issue }),
        ...(assumed === undefined ? {} : { assumed }),
      })),
  }
}

/** The same answer as `evaluate` gives, digit for digit. */
export function* answerTo(check: Check | undefined, { check: id, fields }: CheckJob): Generator<Progress, Result> {
  if (check === undefined) throw new Error(`There is no check ${id}.`)
  const sent = new Map(fields.map((field) => [field.key, field]))
  const whole = check.inputs.map((input): Field => {
    const field = sent.get(input.key)
    return field === undefined ? unclaimed(input) : { ...field, input }
  })
  return yield* evaluate(check, whole)
}
