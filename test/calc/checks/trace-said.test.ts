/** What the trace check says while something is missing: the next field to fill, and no figure that is none. */
import { expect, it } from 'vitest'
import { traceCheck } from '../../../src/calc/checks/trace/check.ts'
import { run } from '../../support/run-check.ts'
import { LEAD } from '../../support/trace-lead.ts'

const plain = (text: string) => text.replaceAll(/[\u00A0\u2009\u202F]/g, ' ')

it('asks for the corners of a limit of your own where they are missing, frequencies first', () => {
  const own = { ...LEAD, limit: 'own', unit: 'dbuv' }
  expect(run(traceCheck, own).needs?.key).toBe('ownHz')
  expect(run(traceCheck, { ...own, ownHz: '10k; 10M' }).needs?.key).toBe('ownDb')
})

it('says nothing of the worst where no kept point lies under the limit', () => {
  const stale = { ...LEAD, traceRowCount: '1000', traceSettledFor: 'another' }
  expect(plain(run(traceCheck, stale).headline)).toContain('On these it is worst')
  expect(run(traceCheck, { ...stale, traceHz: '1 Hz' }).headline).toMatch(/margin or reading\.$/u)
})

it('works the need out where its first point asks for the most', () => {
  // 105 dBµV of which the line and its relaxation leave 28.6 dB too much
  expect(run(traceCheck, LEAD).outputs['neededDb']?.basis.steps).not.toEqual([])
})
