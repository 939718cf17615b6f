/** Every check by name with the question it answers, worked out when the app is built: a list of them computes nothing. */
import { CHECKS } from '../calc/registry.ts'

export const built = CHECKS.map(({ id, title, question }) => ({ id, title, question }))
