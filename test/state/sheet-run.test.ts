import { describe, expect, it } from 'vitest'
import { createSheetRun } from '../../src/state/sheet-run.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../calc/connector/some-connector.ts'

const settledState = async (run: ReturnType<typeof createSheetRun>) => {
  await new Promise<void>((done) => {
    const leave = run.state.subscribe((state) => {
      if (state.is === 'working') return
      queueMicrotask(() => leave())
      done()
    })
  })
  return run.state.value
}

describe('a sheet being worked out', () => {
  it('ends with every contact, and what the whole connector says', async () => {
    const run = createSheetRun()
    run.start(connectorOf([contactOf('1', 'a'), contactOf('2', undefined)]), [lineOf('a', DISCRETE)])
    expect(run.state.value.is).toBe('working')
    const state = await settledState(run)
    if (state.is !== 'done') throw new Error(`It is ${state.is}.`)
    expect(state.body.rows.map(({ id }) => id)).toEqual(['1', '2'])
    expect(state.body.findings.some(({ contacts }) => contacts.includes('2'))).toBe(true)
  })

  it('is worked out again once a typed calculation can be read', async () => {
    const run = createSheetRun()
    run.start(connectorOf([contactOf('1', 'a')]), [lineOf('a', { ...DISCRETE, neededDb: '2*10' })])
    const state = await settledState(run)
    expect(state.is === 'done' && state.body.rows[0]?.needs).toBe('20\u00a0dB at 10\u00a0MHz')
  })

  it('can be stopped, and begun again', async () => {
    const run = createSheetRun()
    const connector = connectorOf([contactOf('1', 'a')])
    run.start(connector, [lineOf('a', DISCRETE)])
    run.stop()
    expect(run.state.value.is).toBe('stopped')
    await new Promise((done) => setTimeout(done, 50))
    expect(run.state.value.is).toBe('stopped')
    run.start(connector, [lineOf('a', DISCRETE)])
    expect((await settledState(run)).is).toBe('done')
  })
})
