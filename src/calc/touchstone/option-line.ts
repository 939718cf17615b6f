/** The line that begins with #: unit, parameter, format, reference resistance, in any order. Touchstone 1.1 and 2.0. */
import { quote } from '../quantity/reading.ts'
import { type NumberFormat, type Parameter, refusedAt, type TouchstoneRefused, type TouchstoneUnit } from './types.ts'

export type OptionLine = {
  readonly unit: TouchstoneUnit
  readonly parameter: Parameter
  readonly format: NumberFormat
  /** one for all ports, or one a port */
  readonly referenceOhm: readonly number[]
}

const UNITS: Readonly<Record<string, TouchstoneUnit>> = { HZ: 'Hz', KHZ: 'kHz', MHZ: 'MHz', GHZ: 'GHz' }
const PARAMETERS: readonly string[] = ['S', 'Y', 'Z', 'H', 'G']
const FORMATS: readonly string[] = ['MA', 'DB', 'RI']

/** What is not said stands as the specification has it: GHz, S, MA, 50 Ω. */
export function readOptionLine(text: string, line: number): OptionLine | TouchstoneRefused {
  const words = text.replace(/^#/, '').trim().toUpperCase().split(/\s+/).filter(Boolean)
  let unit: TouchstoneUnit = 'GHz'
  let parameter: Parameter = 'S'
  let format: NumberFormat = 'MA'
  const referenceOhm: number[] = []
  for (let i = 0; i < words.length; i++) {
    const word = words[i] as string
    if (Object.hasOwn(UNITS, word)) unit = UNITS[word] as TouchstoneUnit
    else if (PARAMETERS.includes(word)) parameter = word as Parameter
    else if (FORMATS.includes(word)) format = word as NumberFormat
    else if (word === 'R') {
      while (i + 1 < words.length && /^[+\d.]/.test(words[i + 1] as string)) {
        const ohm = Number(words[i + 1])
        if (!(ohm > 0) || !Number.isFinite(ohm))
          return refusedAt(
            `Line ${line}: the reference “${quote(words[i + 1] as string)}” is no resistance above 0.`,
            line,
          )
        referenceOhm.push(ohm)
        i += 1
      }
      if (referenceOhm.length === 0)
        return refusedAt(`Line ${line}: “R” has no resistance behind it, as in “R 50”.`, line)
    } else
      return refusedAt(
        `Line ${line}: “${quote(word)}” is no word of an option line; it takes a unit, S, Y, Z, H or G, then MA, DB or RI, and R with a resistance.`,
        line,
      )
  }
  return { unit, parameter, format, referenceOhm: referenceOhm.length === 0 ? [50] : referenceOhm }
}
