/** Volume a class 1 ceramic takes against a class 2 one of the same capacitance and voltage. */
import { practice } from './line-kinds/cite.ts'

/** Relative permittivity about 30 to 100 against 2000 to 4000: 20 to 130 times the volume. */
export const CLASS_1_TIMES = {
  least: 2000 / 100,
  most: 4000 / 30,
  source: practice('practice', 'relative permittivity 30 to 100 against 2000 to 4000'),
} as const
