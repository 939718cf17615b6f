import { describe, expect, it } from 'vitest'
import { scheduleOf } from '../../src/calc/connector/schedule.ts'
import type { Connector } from '../../src/calc/connector/types.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import type { Line } from '../../src/calc/types.ts'
import { createSheetRun, withClasses, withStrike } from '../../src/state/sheet-run.ts'
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

function begin(run: ReturnType<typeof createSheetRun>, connector: Connector, lines: readonly Line[]): void {
  run.start(connector, atOnce(scheduleOf(connector, lines)))
}

describe('a sheet being worked out', () => {
  it('ends with every contact, and what the whole connector says', async () => {
    const run = createSheetRun()
    begin(run, connectorOf([contactOf('1', 'a'), contactOf('2', undefined)]), [lineOf('a', DISCRETE)])
    expect(run.state.value.is).toBe('working')
    const state = await settledState(run)
    if (state.is !== 'done') throw new Error(`It is ${state.is}.`)
    expect(state.body.body.rows.map(({ id }) => id)).toEqual(['1', '2'])
    expect(state.body.body.findings.some(({ contacts }) => contacts.includes('2'))).toBe(true)
  })

  it('is no better than its contacts by themselves', async () => {
    const run = createSheetRun()
    // 1 µF on a line that stands 412 nF
    const large = contactOf('1', 'a', { chosenTopology: 'C', chosenF: '1u' })
    begin(run, connectorOf([large]), [lineOf('a', DISCRETE)])
    const state = await settledState(run)
    if (state.is !== 'done') throw new Error(`It is ${state.is}.`)
    const { findings } = state.body.body
    expect(findings.find(({ id }) => id === 'contacts-fails')).toMatchObject({ verdict: 'fails', contacts: ['1'] })
  })

  it('says what the strike of all contacts together came to, worst first, or that it is not there', async () => {
    const run = createSheetRun()
    begin(run, connectorOf([contactOf('1', 'a')]), [lineOf('a', DISCRETE)])
    const state = await settledState(run)
    if (state.is !== 'done') throw new Error(`It is ${state.is}.`)
    const { body } = state.body
    const finding = {
      id: 'strike-x',
      verdict: 'fails' as const,
      sentence: 'Contact 1 is broken through.',
      contacts: ['1'],
    }
    expect(withStrike(body, { is: 'done', findings: [finding] }).findings[0]).toEqual(finding)
    for (const strike of [{ is: 'idle' }, { is: 'stopped' }, { is: 'working', doneFrac: 0.5 }] as const) {
      const { findings } = withStrike(body, strike)
      expect(findings.length).toBe(body.findings.length + 1)
      expect(findings.at(-1)?.sentence).toMatch(/^All contacts struck together: /)
    }
  })

  it('says the power class of each proposed suppressor and how many of each, or that it is not there', async () => {
    const run = createSheetRun()
    begin(run, connectorOf([contactOf('1', 'a')], { texts: { strikeWaveform: 'wf4', strikeLevel: '3' } }), [
      lineOf('a', DISCRETE),
    ])
    const state = await settledState(run)
    if (state.is !== 'done') throw new Error(`It is ${state.is}.`)
    const { body, schedule } = state.body
    const said = new Map([['1', { ratedPulseW: 1500, why: 'Because of the test.' }]])
    const classed = withClasses(body, schedule, { is: 'done', said })
    expect(classed.rows[0]?.suppressor).toBe('33\u00a0V stand-off, unidirectional, 1.5\u00a0kW (10/1000 µs)')
    expect(classed.rows[0]?.why).toContain('Because of the test.')
    expect(classed.findings.at(-1)?.sentence).toContain('1 × 33\u00a0V stand-off, unidirectional, 1.5\u00a0kW')
    for (const classes of [{ is: 'idle' }, { is: 'stopped' }, { is: 'working', doneFrac: 0.5 }] as const) {
      const { findings, rows } = withClasses(body, schedule, classes)
      expect(findings.at(-1)?.sentence).toMatch(/^Power classes of the suppressors: /)
      expect(rows).toEqual(body.rows)
    }
  })

  it('can be stopped, and begun again', async () => {
    const run = createSheetRun()
    const connector = connectorOf([contactOf('1', 'a')])
    begin(run, connector, [lineOf('a', DISCRETE)])
    run.stop()
    expect(run.state.value.is).toBe('stopped')
    await new Promise((done) => setTimeout(done, 50))
    expect(run.state.value.is).toBe('stopped')
    begin(run, connector, [lineOf('a', DISCRETE)])
    expect((await settledState(run)).is).toBe('done')
  })
})
