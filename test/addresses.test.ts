/**
 * The lists of keys that are written down a second time, held against the checks themselves: the table of the address
 * contract in DEVELOPERS.md, and the keys the guide may prefill, which the app carries without the checks.
 * To rewrite both: UPDATE=1 npx vitest run --project unit test/addresses.test.ts
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { evaluateNow } from '../src/calc/line/evaluate.ts'
import { readFields } from '../src/calc/line/fields.ts'
import { CHECKS } from '../src/calc/registry.ts'
import type { Check } from '../src/calc/types.ts'
import { SAMPLE } from './support/sample-texts.ts'

const ROOT = join(import.meta.dirname, '..')
const KEYS_FILE = join(ROOT, 'src/guide/check-keys.ts')
const HOUSE_FILE = join(ROOT, 'DEVELOPERS.md')

const byId = CHECKS.toSorted((a, b) => (a.id < b.id ? -1 : 1))
const keysOf = ({ inputs }: Check): string => inputs.map(({ key }) => key).join(' ')

/** Whether a check judges, asked with texts that make it answer. */
function judges(check: Check): boolean {
  const result = evaluateNow(check, readFields(check, { ...SAMPLE, lineKind: 'power-28-vdc', level: '3' }))
  if (!result.ok)
    throw new Error(`${check.id} does not answer: ${result.issues.map(({ message }) => message).join(' ')}`)
  return result.verdict !== undefined
}

const ROWS: readonly (readonly string[])[] = [
  ['check', 'keys', 'outputs'],
  ...byId.map((check) => {
    const outputs = check.outputs.map(({ key }) => key).join(' ')
    return [`\`${check.id}\``, keysOf(check), `${outputs}${judges(check) ? ' + verdict' : ''}`]
  }),
]

/** Cells as wide as the widest of their column, as the formatter of the house wants it. */
function tableOf([head = [], ...rows]: readonly (readonly string[])[]): string {
  const widths = head.map((_, column) => Math.max(...[head, ...rows].map((row) => row[column]?.length ?? 0)))
  const line = (cells: readonly string[], fill: string) =>
    `| ${widths.map((width, column) => (cells[column] ?? '').padEnd(width, fill)).join(' | ')} |\n`
  return [line(head, ' '), line([], '-'), ...rows.map((row) => line(row, ' '))].join('')
}

const TABLE = tableOf(ROWS)

const KEYS = `/**
 * Input keys an outcome may prefill, per check that exists. A check that is not here has no link yet.
 * Rewritten from the checks by test/addresses.test.ts; a copy, so that linting a guide does not load every check.
 */
import type { CheckId } from '../calc/types.ts'

const words = (text: string): readonly string[] => text.split(' ')

/** Keys of the address contract: permanent once landed. */
export const CHECK_KEYS: Partial<Readonly<Record<CheckId, readonly string[]>>> = {
${byId.map((check) => keysEntry(check.id, keysOf(check))).join('\n')}
}
`

/** One entry as the formatter of the house breaks it: within 120 columns on one line, else on three. */
function keysEntry(id: string, keys: string): string {
  const line = `  ${id}: words('${keys}'),`
  return line.length <= 120 ? line : `  ${id}: words(\n    '${keys}',\n  ),`
}

/** The table in DEVELOPERS.md: the lines from its head on. */
const OLD_TABLE = /^\| check +\| keys .*\n(?:\|.*\n)+/m

if (process.env['UPDATE'] === '1') {
  writeFileSync(HOUSE_FILE, readFileSync(HOUSE_FILE, 'utf8').replace(OLD_TABLE, TABLE))
  writeFileSync(KEYS_FILE, KEYS)
}

it('the address table in DEVELOPERS.md names every key and output of every check', () => {
  expect(OLD_TABLE.exec(readFileSync(HOUSE_FILE, 'utf8'))?.[0]).toBe(TABLE)
})

it('the keys the guide may prefill are the inputs of the checks', () => {
  expect(readFileSync(KEYS_FILE, 'utf8')).toBe(KEYS)
})
