/** mathjs as a calculator that minds units: evaluates a formula and refuses what does not end in the unit expected. */
import { all, create, type MathType, type Unit } from 'mathjs'

const math = create(all ?? {})

/** Units of an answer; '' = a plain number. */
export type Base = 'Hz' | 'F' | 'H' | 'ohm' | ''

/** Values of a formula: a number, or a number with its unit. */
export type Values = Readonly<Record<string, number | readonly [number, string]>>

/** `w`, `S` and `Rp` stand for 2·π·f, Rs + RL and Rs·RL/(Rs + RL) wherever their parts are given. */
const SHORT = { w: '2*pi*f', S: '(Rs+RL)', Rp: '(Rs*RL/(Rs+RL))' } as const

/**
 * The value of `formula` in the unit `base`. Throws when units do not cancel on the way (1 + ohms) or when the answer is
 * in another unit.
 */
export function opinion(formula: string, values: Values, base: Base): number {
  const scope: Record<string, MathType> = {}
  for (const [name, value] of Object.entries(values))
    scope[name] = typeof value === 'number' ? value : math.unit(value[0], value[1])
  const written = formula.replace(/\b(w|S|Rp)\b/g, (name) => `(${SHORT[name as keyof typeof SHORT]})`)
  const answer: unknown = math.evaluate(written, scope)
  if (base === '') {
    if (typeof answer !== 'number') throw new TypeError(`${formula} is not a plain number but ${math.format(answer)}`)
    return answer
  }
  if (!math.isUnit(answer) || !answer.equalBase(math.unit(1, base)))
    throw new TypeError(`${formula} is not in ${base} but ${math.format(answer)}`)
  return (answer satisfies Unit).toNumber(base)
}
