/** Measured files of a line in memory: what is chosen while the kept ones are still being read. */
import 'fake-indexeddb/auto'
import { expect, it } from 'vitest'
import { kept, openTraces, takeFile, traceWork } from '../../src/state/traces.ts'

const SPECTRUM = 'Frequency (Hz),Level (dBµV)\n10000,50\n150000,105\n500000,52\n'

const shown = () => (kept.value ?? []).map(({ role, name }) => `${role} ${name}`).sort()

it('a file chosen before the kept ones are read stays, beside them', async () => {
  await openTraces('line-a')
  await takeFile({ name: 'after.csv', source: SPECTRUM }, 'after')
  await openTraces('line-b')
  expect(shown()).toEqual([])

  const reading = openTraces('line-a')
  const taking = takeFile({ name: 'before.csv', source: SPECTRUM }, 'before')
  await Promise.all([reading, taking])
  expect(shown()).toEqual(['after after.csv', 'before before.csv'])
  expect(traceWork.value).toBeUndefined()

  await openTraces('line-b')
  await openTraces('line-a')
  expect(shown()).toEqual(['after after.csv', 'before before.csv'])
})
