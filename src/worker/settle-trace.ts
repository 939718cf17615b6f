/** A long trace brought to the few points that carry its need, away from the screen. */
export { settle as run } from '../calc/trace/settle.ts'
