import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const LIST = readFileSync(join(import.meta.dirname, 'update-scenarios.md'), 'utf8')

it('has a test for every scenario of an update and of what is stored', () => {
  const rows = LIST.split('\n').filter((line) => line.startsWith('| ') && !line.startsWith('| ---'))
  const scenarios = rows.slice(1).map((row) => row.split('|').map((cell) => cell.trim()))
  expect(scenarios.length).toBeGreaterThan(30)
  const gone = scenarios.filter(([, , file = '', title = '']) => {
    const path = join(import.meta.dirname, file)
    return !existsSync(path) || title === '' || !readFileSync(path, 'utf8').includes(`'${title}'`)
  })
  expect(gone).toEqual([])
})
