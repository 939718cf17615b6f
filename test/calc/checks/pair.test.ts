/** The pair check as a screen uses it. */
import { describe, expect, it } from 'vitest'
import { pairCheck } from '../../../src/calc/checks/pair/check.ts'
import { run, si } from '../../support/run-check.ts'

const pair = (texts: Record<string, string>) => run(pairCheck, texts)
const WORST = { capacitanceF: '1.2n', capacitance2F: '0.8n', legOhm: '50' }
const why = (texts: Record<string, string>, key: string): string => {
  const cell = pair(texts).outputs[key]?.cell
  return cell?.is === 'none' ? cell.why : ''
}

describe('two unequal legs', () => {
  it('convert as worked out by hand', () => {
    const result = pair({ ...WORST, frequencyHz: '1M' })
    expect(si(result, 'conversionDb')).toBeCloseTo(-18.8589, 4)
    expect(si(result, 'worstConversionDb')).toBeCloseTo(-13.9794, 4)
    expect(si(result, 'worstHz')).toBeCloseTo(3.248737e6, -1)
  })

  it('are judged at the worst of several frequencies', () => {
    expect(si(pair({ ...WORST, frequencyHz: '100k;3.3M;31M' }), 'conversionDb')).toBeCloseTo(-13.98, 2)
  })

  it('can be swapped without a change', () => {
    const swapped = pair({ capacitanceF: '0.8n', capacitance2F: '1.2n', legOhm: '50', frequencyHz: '1M' })
    expect(si(swapped, 'conversionDb')).toBe(si(pair({ ...WORST, frequencyHz: '1M' }), 'conversionDb'))
  })

  it('draw a curve that never passes the worst', () => {
    const plot = pair(WORST).pictures.find((picture) => picture.is === 'plot')
    const peak = Math.max(...(plot?.curves[0]?.y ?? []))
    expect(peak).toBeLessThanOrEqual(-13.9794 + 1e-4)
    expect(peak).toBeGreaterThan(-13.99)
  })

  it('get a line-to-line capacitor of ten times the larger leg as advice', () => {
    const said = pair(WORST).findings.map(({ sentence }) => sentence)
    expect(said.join(' ')).toContain('12')
  })
})

describe('what does not exist is said, not shown as zero', () => {
  it('equal legs convert nothing', () => {
    const equal = { capacitanceF: '1n', capacitance2F: '1000p', legOhm: '50', frequencyHz: '1M' }
    for (const key of ['conversionDb', 'worstConversionDb', 'worstHz']) expect(why(equal, key)).toContain('equal')
  })

  it('one empty leg rises without end', () => {
    const dead = { capacitanceF: '1n', capacitance2F: '0', legOhm: '50' }
    expect(why(dead, 'worstHz')).toContain('rising')
    expect(si(pair(dead), 'worstConversionDb')).toBe(0)
  })

  it('nothing is converted at DC', () => {
    expect(why({ ...WORST, frequencyHz: '0' }, 'conversionDb')).toContain('DC')
  })

  it('a missing leg is asked for', () => {
    expect(pair({ capacitanceF: '1n' }).headline).toContain('the other leg')
  })

  it('legs too small to matter give no curve and no infinity', () => {
    const result = pair({ capacitanceF: '1e-320', capacitance2F: '0', legOhm: '50', frequencyHz: '1M' })
    for (const { cell } of Object.values(result.outputs))
      if (cell.is === 'si') expect(Number.isFinite(cell.si)).toBe(true)
  })
})
