/** Measured files of a line in memory: what is chosen while another, or what is kept, is still being read. */
import 'fake-indexeddb/auto'
import { expect, it } from 'vitest'
import { leaveTraceWork, stopTraceWork, traceWork } from '../../src/state/trace-work.ts'
import { kept, openTraces, takeFile, traceRefusals } from '../../src/state/traces.ts'

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

const file = (name: string, source = SPECTRUM) => ({ name, source })
const underWay = () => traceWork.value && [traceWork.value.what, ...traceWork.value.next]

it('a file chosen while another is read waits for it, and both are kept', async () => {
  await openTraces('line-c')
  const before = takeFile(file('before.csv'), 'before')
  const after = takeFile(file('after.csv'), 'after')
  expect(underWay()).toEqual(['Reading before.csv', 'Reading after.csv'])
  await Promise.all([before, after])
  expect(shown()).toEqual(['after after.csv', 'before before.csv'])
  expect(underWay()).toBeUndefined()
  await openTraces('line-d')
  await openTraces('line-c')
  expect(shown()).toEqual(['after after.csv', 'before before.csv'])
})

it('of two files chosen for one role the later stays, on the disk too', async () => {
  await openTraces('line-e')
  // the first takes longer to be packed
  const rows = Array.from({ length: 20_000 }, (_one, at) => `${10_000 + at},50`).join('\n')
  const long = takeFile(file('long.csv', `Frequency (Hz),Level (dBµV)\n${rows}`), 'before')
  await Promise.all([long, takeFile(file('short.csv'), 'before')])
  expect(shown()).toEqual(['before short.csv'])
  await openTraces('line-d')
  await openTraces('line-e')
  expect(shown()).toEqual(['before short.csv'])
})

it('a stop ends what is under way, and what waited goes on; who leaves ends both', async () => {
  await openTraces('line-f')
  const before = takeFile(file('before.csv'), 'before')
  const after = takeFile(file('after.csv'), 'after')
  stopTraceWork()
  expect(underWay()).toEqual(['Reading after.csv'])
  expect([await before, (await after)?.name]).toEqual([undefined, 'after.csv'])
  expect(shown()).toEqual(['after after.csv'])

  const both = [takeFile(file('before.csv'), 'before'), takeFile(file('new.csv'), 'after')]
  leaveTraceWork()
  expect(underWay()).toBeUndefined()
  expect(await Promise.all(both)).toEqual([undefined, undefined])
  expect(shown()).toEqual(['after after.csv'])
})

it('of one file read anew in another way only the newest counts', async () => {
  await openTraces('line-g')
  const one = file('peak-and-average.csv', 'Frequency (Hz),Peak (dBµV),Average (dBµV)\n10000,50,40\n150000,60,45\n')
  const peak = takeFile(one, 'before', { levelAt: 1 })
  const average = takeFile(one, 'before', { levelAt: 2 })
  expect(underWay()).toEqual(['Reading peak-and-average.csv'])
  expect(await peak).toBeUndefined()
  const trace = await average
  expect(trace?.is === 'spectrum' && [...trace.spectrum.db]).toEqual([40, 45])
})

it('says of each of two files why it was not taken, until the next is chosen', async () => {
  await openTraces('line-h')
  const two = [file('one.csv', 'no numbers'), file('two.csv', 'none here')] as const
  await Promise.all(two.map((one) => takeFile(one, 'before')))
  expect(traceRefusals.value.map((one) => one.file.name)).toEqual(['one.csv', 'two.csv'])
  const third = takeFile(file('three.csv'), 'before')
  expect(traceRefusals.value).toEqual([])
  await third
})

it('what was said of a file stays while another is chosen beside what is under way, not when it is read anew', async () => {
  await openTraces('line-i')
  const one = file('one.csv', 'no numbers')
  const first = takeFile(one, 'before')
  const second = takeFile(file('two.csv'), 'before')
  await first
  const third = takeFile(file('three.csv'), 'after')
  expect(traceRefusals.value).toHaveLength(1)
  const anew = takeFile(one, 'before', { frequencyUnit: 'Hz' })
  expect(traceRefusals.value).toEqual([])
  await Promise.all([second, third, anew])
  expect(shown()).toEqual(['after three.csv', 'before two.csv'])
})
