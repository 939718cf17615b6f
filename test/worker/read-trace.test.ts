import { describe, expect, it } from 'vitest'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { handedOver, run } from '../../src/worker/read-trace.ts'
import { spectrumIn } from '../../src/worker/rows.ts'

const kindOf = async (source: Blob | string, fileName: string) =>
  atOnce(await run({ source, fileName, options: {} })).is

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
  ])('%j named %s is a %s', async (text, name, kind) => {
    expect(await kindOf(text, name)).toBe(kind)
  })

  it('on the disk is opened first, and what was read goes over without a copy', async () => {
    const file = atOnce(await run({ source: new Blob(['Hz,dBuV\n1000,2\n2000,3\n']), fileName: 'a.csv', options: {} }))
    if (file.is !== 'spectrum' || !file.reading.ok) throw new Error('it was not read')
    const { rows, spectrum } = file.reading
    const bytes = await rows.arrayBuffer()
    const { reading } = structuredClone(file, { transfer: [...handedOver(file)] })
    expect(reading).toMatchObject({
      ok: true,
      spectrum: { hz: Float64Array.of(1000, 2000), db: Float64Array.of(2, 3) },
    })
    expect(spectrum.hz.length).toBe(0)
    expect(spectrumIn(bytes)).toEqual({ hz: Float64Array.of(1000, 2000), db: Float64Array.of(2, 3) })
  })
})
