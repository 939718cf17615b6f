/** A check worked out away from the screen. */
import { evaluate } from '../calc/line/evaluate.ts'
import type { Field } from '../calc/line/fields.ts'
import { unclaimed } from '../calc/line/resolver.ts'
import { checkById } from '../calc/registry.ts'
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
export function* run({ check: id, fields }: CheckJob): Generator<Progress, Result> {
  const check = checkById(id)
  if (check === undefined) throw new Error(`There is no check ${id}.`)
  const sent = new Map(fields.map((field) => [field.key, field]))
  const whole = check.inputs.map((input): Field => {
    const field = sent.get(input.key)
    return field === undefined ? unclaimed(input) : { ...field, input }
  })
  return yield* evaluate(check, whole)
}
