/** The surge check by an address, and what it says. */
import { surgeCheck } from '../../src/calc/checks/surge/check.ts'
import type { Success } from '../../src/calc/types.ts'
import { run } from './run-check.ts'

/** An address as the app reads it. */
export const open = (query: string): Success =>
  run(
    surgeCheck,
    Object.fromEntries(query.split('&').map((pair) => pair.split('=').map(decodeURIComponent) as [string, string])),
  )

/** Verdict of a word among the outputs. */
export const word = (result: Success, key: string) => {
  const cell = result.outputs[key]?.cell
  return cell?.is === 'word' ? cell.verdict : cell?.is
}

export const said = (result: Success): string =>
  result.findings.map((f) => f.sentence.replaceAll('\u00a0', ' ')).join(' ')
