/** The strike of a whole connector, away from the screen. */
export { strikeAnswer as run } from '../calc/connector/whole/strike/answer.ts'
