import { describe, expect, it } from 'vitest'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { run } from '../../src/worker/read-trace.ts'

const kindOf = (source: string, fileName: string) => atOnce(run({ source, fileName, options: {} })).is

describe('a measured file', () => {
  it.each([
    ['# MHz S RI R 50\n1 0.5 0.1\n', 'pasted', 'network'],
    ['! from the bench\n! second\n# GHz Z MA R 50\n1 50 0\n', 'bench.txt', 'network'],
    [
      '[Version] 2.0\n# MHz S RI\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n1 0 0\n[End]',
      'pasted',
      'network',
    ],
    ['Hz,dBuV\n1000,2\n2000,3\n', 'odd.s2p', 'network'],
    ['#\n1 0.5 0.1\n', 'plain.ts', 'network'],
    ['# Freq(Hz) Level(dBuV)\n1000 2\n2000 3\n', 'a.txt', 'spectrum'],
    ['# hangar 3\nHz,dBuV\n1000,2\n', 'a.csv', 'spectrum'],
  ])('%j named %s is a %s', (text, name, kind) => {
    expect(kindOf(text, name)).toBe(kind)
  })

  it('that cannot be opened here asks for its text', () => {
    const found = atOnce(run({ source: new Blob(['x']), fileName: 'a.csv', options: {} }))
    expect(found).toEqual({ is: 'needs-text' })
  })
})
