/** test/golden/guide-paths.txt is for reading; UPDATE=1 writes it anew. */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { GUIDE } from '../../src/guide/guide.ts'
import { survey } from '../../src/guide/paths.ts'
import { pathsFile } from './walk.ts'

const FILE = join(import.meta.dirname, '../golden/guide-paths.txt')

it('keeps the file of paths as reviewed', () => {
  const now = pathsFile(GUIDE)
  if (process.env['UPDATE'] === '1') writeFileSync(FILE, now)
  expect(now).toBe(readFileSync(FILE, 'utf8'))
})

it('counts the same number of paths by enumeration as by the survey, none longer than 12 taps', () => {
  const [head = ''] = readFileSync(FILE, 'utf8').split('\n')
  const { start } = survey(GUIDE)
  expect(head).toContain(`${start?.paths} distinct paths, at most ${start?.taps} taps`)
  expect(start?.taps).toBeLessThanOrEqual(12)
})
