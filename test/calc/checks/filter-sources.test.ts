/** What the filter check worked out says where its method comes from. */
import { expect, it } from 'vitest'
import { filterCheck } from '../../../src/calc/checks/filter/check.ts'
import { run } from '../../support/run-check.ts'

it('names the source of the chain matrices beside its figures', () => {
  const answer = run(filterCheck, {
    topology: 'C',
    capacitanceF: '10n',
    frequencyHz: '1M',
    sourceOhm: '50',
    loadOhm: '50',
  })
  const figures = Object.values(answer.outputs).filter(({ cell }) => cell.is === 'si')
  expect(figures.length).toBeGreaterThan(0)
  expect(figures.flatMap(({ basis }) => basis.sources.map(({ id }) => id))).toContain('paul')
})
