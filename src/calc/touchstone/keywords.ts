/** The keywords of version 2.0, each with what follows it. */
import { quote } from '../quantity/reading.ts'
import { MOST_PORTS, type ModePort, refusedAt, type TouchstoneRefused } from './types.ts'

export type Keywords = {
  readonly version?: string
  readonly portCount?: number
  readonly order?: '12_21' | '21_12'
  readonly frequencyCount?: number
  readonly noiseCount?: number
  readonly matrix?: 'full' | 'lower' | 'upper'
  readonly modes?: readonly ModePort[]
}

const MOST_FREQUENCIES = 10_000_000

/** Keywords with what one line adds; a sentence where it cannot be read. Sections are told apart by the reader. */
export function withKeyword(
  known: Keywords,
  name: string,
  rest: string,
  line: number,
): Keywords | TouchstoneRefused | undefined {
  const wrong = (wanted: string): TouchstoneRefused =>
    refusedAt(`Line ${line}: [${name}] is followed by “${quote(rest)}”; it takes ${wanted}.`, line)
  switch (name.toLowerCase()) {
    case 'version':
      return /^2\.[01]$/.test(rest) ? { ...known, version: rest } : wrong('2.0')
    case 'number of ports': {
      const count = whole(rest)
      return count !== undefined && count >= 1 && count <= MOST_PORTS
        ? { ...known, portCount: count }
        : wrong(`a number from 1 to ${MOST_PORTS}`)
    }
    case 'two-port data order':
    case 'two-port order':
      return rest === '12_21' || rest === '21_12' ? { ...known, order: rest } : wrong('12_21 or 21_12')
    case 'number of frequencies': {
      const count = whole(rest)
      return count !== undefined && count >= 1 && count <= MOST_FREQUENCIES
        ? { ...known, frequencyCount: count }
        : wrong('how many frequencies there are')
    }
    case 'number of noise frequencies': {
      const count = whole(rest)
      return count !== undefined && count >= 1 ? { ...known, noiseCount: count } : wrong('how many there are')
    }
    case 'matrix format': {
      const format = rest.toLowerCase()
      return format === 'full' || format === 'lower' || format === 'upper'
        ? { ...known, matrix: format }
        : wrong('Full, Lower or Upper')
    }
    case 'mixed-mode order': {
      const modes = modesIn(rest)
      return modes ? { ...known, modes } : wrong('modes such as D1,2 C1,2 S3')
    }
    default:
      return undefined
  }
}

const whole = (text: string): number | undefined => (/^\d{1,8}$/.test(text) ? Number(text) : undefined)

function modesIn(text: string): readonly ModePort[] | undefined {
  const modes = text
    .toUpperCase()
    .replaceAll(/\s*,\s*/g, ',')
    .split(/\s+/)
    .map((word): ModePort | undefined => {
      const [, letter, first, second] = /^([SCD])(\d{1,2})(?:,(\d{1,2}))?$/.exec(word) ?? []
      if (letter === 'S' && second === undefined) return { is: 'single', port: Number(first) }
      if ((letter !== 'C' && letter !== 'D') || second === undefined || first === second) return undefined
      return { is: letter === 'C' ? 'common' : 'differential', ports: [Number(first), Number(second)] }
    })
  return modes.every((mode) => mode !== undefined) ? (modes as readonly ModePort[]) : undefined
}
