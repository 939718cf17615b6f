/** The least power class of each surge, away from the screen. */
export { leastClasses as run } from '../calc/surge/least-class.ts'
