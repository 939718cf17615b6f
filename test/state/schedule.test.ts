import { describe, expect, it } from 'vitest'
import { createGroupRun, groupingAsked } from '../../src/state/group-run.ts'
import { scheduleRun } from '../../src/state/schedule.ts'
import { connectorOf, contactOf, DISCRETE, lineOf } from '../calc/connector/some-connector.ts'

/** Waits until the state is as told. */
const until = <T>(read: { subscribe: (told: (value: T) => void) => () => void }, is: (value: T) => boolean) =>
  new Promise<T>((resolve) => {
    let stop: (() => void) | undefined
    let found = false
    stop = read.subscribe((value) => {
      if (found || !is(value)) return
      found = true
      resolve(value)
      queueMicrotask(() => stop?.())
    })
  })

const lines = [lineOf('a', DISCRETE), lineOf('b', { ...DISCRETE, neededDb: '26' })]
const connector = connectorOf([contactOf('1', 'a'), contactOf('2', 'b')])

describe('the schedule the screens share', () => {
  it('is worked out once for the same connector and lines, and again when either changes', async () => {
    const run = scheduleRun('one')
    run.want(connector, lines)
    const first = await until(run.state, ({ is }) => is === 'done')
    expect(first.shown?.rows.map(({ verdict }) => verdict)).toEqual(['ok', 'ok'])
    run.want(connector, [...lines, lineOf('elsewhere', DISCRETE)])
    expect(run.state.peek()).toBe(first)
    expect(scheduleRun('one')).toBe(run)
    run.want(connector, [lineOf('a', { ...DISCRETE, neededDb: '' }), lines[1] as (typeof lines)[number]])
    // what was there before stays to be read
    expect(run.state.peek().shown).toBe(first.shown)
    const second = await until(run.state, ({ is }) => is === 'done')
    expect(second.shown?.rows[0]?.verdict).toBe('unknown')
  })

  it('stops, and goes on when it is asked again', async () => {
    const run = scheduleRun('two')
    run.want(connector, [lineOf('a', { ...DISCRETE, neededDb: '21' }), lineOf('b', { ...DISCRETE, neededDb: '27' })])
    run.stop()
    expect(run.state.peek().is).toBe('stopped')
    run.want(connector, lines)
    expect((await until(run.state, ({ is }) => is === 'done')).isAlone).toBe(false)
  })

  it('is tried again where it broke', async () => {
    const run = scheduleRun('three')
    let isTorn = true
    const { facts, ...rest } = lineOf('a', DISCRETE)
    const torn = {
      ...rest,
      get facts() {
        if (isTorn) throw new Error('torn')
        return facts
      },
    }
    const again = [torn, lines[1] as (typeof lines)[number]]
    run.want(connector, again)
    await until(run.state, ({ is }) => is === 'broken')
    isTorn = false
    run.want(connector, again)
    expect((await until(run.state, ({ is }) => is === 'done')).shown?.rows.length).toBe(2)
  })

  it('groups at a tap', async () => {
    const run = scheduleRun('one')
    run.want(connector, lines)
    const { shown } = await until(run.state, ({ is, shown: one }) => is === 'done' && one?.rows[0]?.verdict === 'ok')
    if (shown === undefined) throw new Error('no schedule')
    const group = createGroupRun()
    group.start(shown, connector)
    const done = await until(group.state, ({ is }) => is === 'done')
    expect(done.is === 'done' && done.answer.curve[0]?.parts).toBe(1)
  })

  it('reads what was typed about grouping, and takes one value a plane where nothing was', () => {
    expect(groupingAsked({ texts: {} })).toEqual({ ratio: 1, mostParts: 12 })
    expect(groupingAsked({ texts: { valueRatio: '10', mostParts: '3' } })).toEqual({ ratio: 10, mostParts: 3 })
    expect(groupingAsked({ texts: { valueRatio: '0.1', mostParts: 'few' } })).toEqual({ ratio: 1, mostParts: 12 })
  })
})
