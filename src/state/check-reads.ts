/** Which facts every check reads, worked out when the app is built: what one of them shares with others computes nothing. */
import { CHECKS } from '../calc/registry.ts'

export const built = CHECKS.map(({ id, title, question, inputs }) => ({
  id,
  title,
  question,
  inputs: inputs.map(({ fact }) => ({ fact })),
}))
