import type { Node } from './arithmetic.ts'

/** The factory of the parser alone: mathjs has it, its types do not list it. */
declare module 'mathjs/number' {
  export function createParse(parts: Readonly<Record<string, unknown>>): (text: string) => Node
}
