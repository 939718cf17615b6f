/** What a check still waits for, named once from its descriptor. */
import type { GivenValue, Input } from '../types.ts'

/** Inputs that must be asked for and have no value, in the order of the descriptor. */
export function missingInputs(
  inputs: readonly Input[],
  given: Readonly<Record<string, GivenValue | undefined>>,
): readonly Input[] {
  return inputs.filter((input) => input.whenEmpty.do === 'ask' && given[input.key] === undefined)
}

/** The thing a field asks for, as a sentence names it: "the noise frequency". */
export function nameOf(input: Input): string {
  return (input.whenEmpty.do === 'ask' ? input.whenEmpty.name : undefined) ?? input.label.toLowerCase()
}

/** Names of what is missing, for "Enter …" and "needs …". */
export function missingNames(
  inputs: readonly Input[],
  given: Readonly<Record<string, GivenValue | undefined>>,
): readonly string[] {
  return missingInputs(inputs, given).map(nameOf)
}
