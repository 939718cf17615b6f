/** What a check still waits for, named once from its descriptor. */
import type { GivenValue, Input, Success } from '../types.ts'

/** Inputs that must be asked for and have no value, in the order of the descriptor. */
export function missingInputs(
  inputs: readonly Input[],
  given: Readonly<Record<string, GivenValue | undefined>>,
): readonly Input[] {
  return inputs.filter((input) => input.whenEmpty.do === 'ask' && given[input.key] === undefined)
}

/** The thing a field asks for, as a sentence names it: "the noise frequency". */
export function nameOf(input: Input): string {
  return input.whenEmpty.name ?? input.label.toLowerCase()
}

/** How it is found out; what the field is, where its descriptor says no more. */
export function howOf(input: Input): string {
  return input.whenEmpty.how ?? input.help
}

/** Names of what is missing, for "Enter …" and "needs …". */
export function missingNames(
  inputs: readonly Input[],
  given: Readonly<Record<string, GivenValue | undefined>>,
): readonly string[] {
  return missingInputs(inputs, given).map(nameOf)
}

/** The fact that would decide an answer, as the link to its field; undefined where there is no such field. */
export function needsOf(inputs: readonly Input[], key: string | undefined): Success['needs'] {
  const input = inputs.find((one) => one.key === key)
  return input && { key: input.key, sentence: howOf(input) }
}
