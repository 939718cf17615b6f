import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const LIST = readFileSync(join(import.meta.dirname, 'wcag.md'), 'utf8')

/** The criteria of WCAG 2.2 (W3C Recommendation of 5 October 2023) at the two levels, 4.1.1 being gone. */
const LEVELS = {
  A: '1.1.1 1.2.1 1.2.2 1.2.3 1.3.1 1.3.2 1.3.3 1.4.1 1.4.2 2.1.1 2.1.2 2.1.4 2.2.1 2.2.2 2.3.1 2.4.1 2.4.2 2.4.3 2.4.4 2.5.1 2.5.2 2.5.3 2.5.4 3.1.1 3.2.1 3.2.2 3.2.6 3.3.1 3.3.2 3.3.7 4.1.2',
  AA: '1.2.4 1.2.5 1.3.4 1.3.5 1.4.3 1.4.4 1.4.5 1.4.10 1.4.11 1.4.12 1.4.13 2.4.5 2.4.6 2.4.7 2.4.11 2.5.7 2.5.8 3.1.2 3.2.3 3.2.4 3.3.3 3.3.4 3.3.8 4.1.3',
} as const

const ROWS = LIST.split('\n')
  .filter((line) => /^\| \d/.test(line))
  .map((line) => line.split('|').map((cell) => cell.trim()))

it('lists each of the 55 criteria of level A and AA once, each with a result and what shows it', () => {
  const wanted = Object.entries(LEVELS).flatMap(([level, all]) => all.split(' ').map((id) => `${id} (${level})`))
  const listed = ROWS.map(([, criterion = '']) => criterion.replace(/^(\S+) .*(\(A+\))$/, '$1 $2'))
  expect(wanted.length).toBe(55)
  expect([...listed].sort()).toEqual([...wanted].sort())
  const bare = ROWS.filter(
    ([, , , result = '', evidence = '']) => !/^(passes|fails|does not apply)$/.test(result) || evidence.length < 15,
  )
  expect(bare).toEqual([])
})

it('names only tests that are there', () => {
  const named = [...LIST.matchAll(/`([a-z-]+) › ([^`]+)`/g)]
  expect(named.length).toBeGreaterThan(30)
  const gone = named.filter(([, file = '', title = '']) => {
    const path = join(import.meta.dirname, 'e2e', `${file}.e2e.ts`)
    return !existsSync(path) || !readFileSync(path, 'utf8').includes(title)
  })
  expect(gone.map(([whole]) => whole)).toEqual([])
})
