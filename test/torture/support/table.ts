/** The table of what was done and what came of it: printed by every run, kept in the repository by the long one. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

/** The long form, on demand: TORTURE=long npx vitest run --project torture */
export const IS_LONG = process.env['TORTURE'] === 'long'

/** How often something is done: in the test command, and on demand. */
export const turns = (inCommand: number, onDemand: number): number =>
  Number(process.env['TURNS'] ?? (IS_LONG ? onDemand : inCommand))

const KEPT = join(import.meta.dirname, '..', 'table.md')
const HEAD = `# What the app has stood

Written by \`TORTURE=long npx vitest run --project torture\`, and what is killed by
\`TORTURE=long npx vitest run --project site test/e2e/kills.e2e.ts\`; one line for each attack, by the longest run so far.

| attack | times | seed | lost, wrong or hung | slowest |
| --- | --- | --- | --- | --- |
`

export type Row = {
  readonly attack: string
  readonly times: number
  readonly seed: number
  readonly bad: number
  readonly slowestMs?: number
}

const lineOf = ({ attack, times, seed, bad, slowestMs }: Row): string =>
  `| ${attack} | ${times} | ${seed} | ${bad} | ${slowestMs === undefined ? '' : `${Math.ceil(slowestMs)} ms`} |`

/** Prints a row; a long run puts it into the kept table, in place of the one of the same attack. */
export function note(row: Row): void {
  const line = lineOf(row)
  console.log(line)
  if (!IS_LONG) return
  // whoever formats the file may have filled its cells up: rows are told apart by what stands in the first one
  const old = existsSync(KEPT) ? readFileSync(KEPT, 'utf8').split('\n') : []
  const others = old.filter((one) => {
    const first = one.split('|')[1]?.trim() ?? ''
    return one.startsWith('| ') && first !== 'attack' && !/^-+$/.test(first) && first !== row.attack
  })
  writeFileSync(KEPT, `${HEAD}${[...others, line].sort().join('\n')}\n`)
}

/** Runs a job and gives what it came to and how much of a processor's time it took: a busy machine adds nothing to that. */
export function clocked<T>(job: () => T): { readonly value: T; readonly ms: number } {
  const from = process.cpuUsage()
  const value = job()
  const { user, system } = process.cpuUsage(from)
  return { value, ms: (user + system) / 1000 }
}

/** Nothing may hang longer than this. */
export const HANG_MS = 1000
