import { describe, expect, it } from 'vitest'
import { resolve } from '../../src/calc/line/resolver.ts'
import { checkById } from '../../src/calc/registry.ts'
import { lineFrom, readAhead } from '../../src/state/opening.ts'

const noExpress = () => undefined
const pair = (key: string, text: string) => ({ key, text })
const OPENED = [
  {
    id: 'window',
    query: [
      pair('lineKind', 'arinc-429-high'),
      pair('frequencyHz', '12M'),
      pair('measuredDb', '71.3'),
      pair('limitDb', '46.2'),
    ],
  },
  { id: 'surge', query: [pair('waveform', 'wf4'), pair('level', '3'), pair('lineKind', 'power-28-vdc')] },
]

describe('a Line read ahead of its check', () => {
  it.each(OPENED)('fills the fields of $id with what they hold when it is read at once', ({ id, query }) => {
    const check = checkById(id)
    if (check === undefined) throw new Error(`no check ${id}`)
    const line = lineFrom(check, query, noExpress)
    const done = [...readAhead(check, line, noExpress)].map(({ doneFrac }) => doneFrac)
    expect(done.length).toBeGreaterThan(check.inputs.length)
    expect(done).toEqual(done.toSorted((a, b) => a - b))
    expect(resolve(line, noExpress).fields(check)).toEqual(resolve({ ...line }, noExpress).fields(check))
  })
})
