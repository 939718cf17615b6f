/** What a window says of its limits and of what a choke alone leaves. */
import { describe, expect, it } from 'vitest'
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { permittedLabel } from '../../../src/calc/explain/ceiling.ts'
import { lineKindById } from '../../../src/reference/line-kinds.ts'
import { run, si } from '../../support/run-check.ts'

const plain = (text: string): string => text.replaceAll('\u00a0', ' ')

it('names the Navy rule where that ends the window from above', () => {
  const supply = { lineKind: 'power-115-vac-400', navyRule: 'true', loadW: '1k' }
  const noise = { frequencyHz: '100k', neededDb: '60', sourceOhm: '50', loadOhm: '50' }
  const { verdict, headline } = run(windowCheck, { ...supply, ...noise })
  expect(verdict).toBe('fails')
  expect(plain(headline)).toMatch(/the noise needs [\d.]+ µF, the Navy rule allows [\d.]+ nF/u)
})

describe('a choke that does it alone', () => {
  const alone = (mostConversionDb: string) =>
    run(windowCheck, {
      lineKind: 'can',
      mode: 'common',
      frequencyHz: '1M',
      neededDb: '10',
      sourceOhm: '50',
      loadOhm: '50',
      chokeH: '10m',
      chokeMismatchFrac: '5 %',
      mostConversionDb,
    })

  it('is judged by what its unlike windings turn into signal as well', () => {
    const strict = alone('-60')
    // windings of 1 ± 0.05: some of it becomes signal, less than all
    expect(si(strict, 'conversionDb')).toBeLessThan(0)
    expect(strict.verdict).toBe('fails')
    expect(plain(strict.headline)).toMatch(/of the common mode becomes signal at 1 MHz, over the −60 dB allowed/u)
  })
})

it('names the mask of a port by its rule where the standard prints no figure for it', () => {
  const label = (id: string) => {
    const kind = lineKindById(id)
    if (kind === undefined) throw new Error(`no ${id}`)
    return plain(permittedLabel(kind, { id: 'mask', farads: 1e-12, per: 'leg', source: kind.loadingSource }))
  }
  // 100 ± 15 Ω of cable
  expect(label('ethernet-1000base-t')).toBe('return-loss mask with its 115 Ω corner, whole port')
  expect(label('ethernet-10base-t')).toBe('return-loss mask, whole port')
})

it('waits for what a trace needs where only its frequencies stand on the line', () => {
  const line = { lineKind: 'discrete-28v', signalOhm: '1k', sourceOhm: '50', loadOhm: '50', traceNeedHz: '1M' }
  expect(run(windowCheck, line).needs?.key).toBe('frequencyHz')
  expect(run(windowCheck, { ...line, traceNeedDb: '20' }).needs).toBeUndefined()
})

it('says beside each circuit with a coil what the coil does to the signal', () => {
  const line = { lineKind: 'rs-422', bitRateHz: '1M', inductanceH: '100u' }
  const noise = { frequencyHz: '10M', neededDb: '20', sourceOhm: '50', loadOhm: '50' }
  const strip = run(windowCheck, { ...line, ...noise }).pictures.find((picture) => picture.is === 'strip')
  const notes = (strip?.is === 'strip' ? strip.rows : []).filter(({ topology }) => topology !== 'C')
  expect(notes.length).toBeGreaterThan(0)
  // three tenths of a bit of 1 µs
  for (const { note } of notes)
    expect(plain(note)).toMatch(/^its own edge takes [\d.]+ µs, over the 300 ns a bit leaves/u)
})
