/**
 * The least power class against the golden pin-injection table: 34.4 V breakdown, used = peak power over rating times
 * diffusion factor. Between its rows by the same algebra, worked by hand: Rd = 11·45.4/P (clamp 45.4 V at the rated
 * current), I = (Voc − 34.4)/(Rs + Rd), used = I·(34.4 + Rd·I)/(P·factor).
 */
import { describe, expect, it } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { atOnce } from '../../../src/calc/line/evaluate.ts'
import { readFields } from '../../../src/calc/line/fields.ts'
import type { SurgeAsked } from '../../../src/calc/surge/asked.ts'
import { MOSTLY_USED } from '../../../src/calc/surge/judge.ts'
import { leastClass, leastClasses } from '../../../src/calc/surge/least-class.ts'
import golden from '../../golden/surge-tables.json' with { type: 'json' }
import { run, si } from '../../support/run-check.ts'

const asked = (texts: Readonly<Record<string, string>>): SurgeAsked =>
  Object.fromEntries(
    readFields(surgeCheck, { breakdownV: '34.4', dynamicOhm: '1', ...texts }).map(({ key, value }) => [key, value]),
  ) as unknown as SurgeAsked

const printed = (ratedW: number, waveform: string, level: number): number => {
  const row = golden.pinInjection.find(
    (one) => one.ratedW === ratedW && one.waveform === waveform && one.level === level,
  )
  return Number(row?.usedPercent) / 100
}

describe('the least power class of a pin injection', () => {
  it('is 1500 W for waveform 4 level 3: the table prints 45 %, 600 W would use 145 %', () => {
    const { found, below } = atOnce(leastClass(asked({ waveform: 'wf4', level: '3' })))
    expect(printed(1500, 'wf4', 3)).toBe(0.45)
    expect(found?.ratedPulseW).toBe(1500)
    expect(found?.usedFrac).toBeCloseTo(printed(1500, 'wf4', 3), 1)
    // Rd 0.832 Ω, 265.6/5.832 = 45.54 A at 72.3 V: 3293 W of 600·3.775 W
    expect(below?.ratedPulseW).toBe(600)
    expect(below?.usedFrac).toBeGreaterThan(1.45)
    expect(below?.usedFrac).toBeLessThan(1.45 * 1.03)
  })

  it('is 15 kW for waveform 5A level 3: the table prints 27 %, 5 kW would use 105 %', () => {
    const { found, below } = atOnce(leastClass(asked({ waveform: 'wf5a', level: '3' })))
    expect(printed(15000, 'wf5a', 3)).toBe(0.27)
    expect(found?.ratedPulseW).toBe(15000)
    expect(found?.usedFrac).toBeCloseTo(printed(15000, 'wf5a', 3), 1)
    // Rd 0.0999 Ω, 265.6/1.0999 = 241.5 A at 58.5 V: 14.13 kW of 5000·2.686 W
    expect(below?.ratedPulseW).toBe(5000)
    expect(below?.usedFrac).toBeGreaterThan(1.04)
    expect(below?.usedFrac).toBeLessThan(1.08)
  })

  it('agrees with every printed row: never above one that is printed as enough, never at one that is not', () => {
    for (const { ratedW, waveform, level, usedPercent } of golden.pinInjection) {
      if (usedPercent === null || waveform === 'wf3') continue
      const { found } = atOnce(leastClass(asked({ waveform, level: String(level) })))
      const least = found?.ratedPulseW ?? Number.POSITIVE_INFINITY
      if (Number(usedPercent) / 100 <= MOSTLY_USED) expect(least, `${waveform} ${level}`).toBeLessThanOrEqual(ratedW)
      else expect(least, `${waveform} ${level}`).toBeGreaterThan(ratedW)
    }
  })

  it('goes up where the circuit stands less: 51.0 V printed for 1500 W, 42.9 V by hand for 3000 W', () => {
    const { found, below } = atOnce(leastClass(asked({ waveform: 'wf4', level: '3', withstandV: '50' })))
    expect(below).toMatchObject({ ratedPulseW: 1500, by: 'volts' })
    // Rd 0.1665 Ω, 265.6/5.1665 = 51.4 A
    expect(found).toMatchObject({ ratedPulseW: 3000, isHeld: true })
    expect(found?.loadV).toBeCloseTo(42.96, 1)
  })

  it('counts the heat: at 85 °C with zero at 150 °C 1.92 times as much is used, so 3 kW', () => {
    // 45 % of 1500 W becomes 86 %, more than earns a yes
    expect(atOnce(leastClass(asked({ waveform: 'wf4', level: '3', ambientC: '85' }))).found?.ratedPulseW).toBe(3000)
  })

  it('is none where no class clamps low enough, and none where no rating is left', () => {
    const low = atOnce(leastClass(asked({ waveform: 'wf4', level: '3', withstandV: '34' })))
    expect(low.found).toBeUndefined()
    expect(low.below).toMatchObject({ ratedPulseW: 30000, by: 'volts' })
    const hot = atOnce(leastClass(asked({ waveform: 'wf4', level: '3', ambientC: '160' })))
    expect(hot).toMatchObject({ found: undefined, below: { by: 'rating' } })
    expect(hot.below?.usedFrac).toBeUndefined()
  })

  it('is judged at the worst of its box, as the surge check of the same part is', () => {
    const ringing = {
      waveform: 'wf3',
      level: '3',
      bidirectional: 'true',
      topology: 'CL',
      capacitanceF: '10n',
      inductanceH: '2u',
      toleranceFrac: '20 %',
    }
    const { found } = atOnce(leastClass(asked({ ...ringing, loadF: '3.3n', loadOhm: '10k' })))
    const part = { breakdownV: '34.4', ratedPulseW: String(found?.ratedPulseW) }
    const check = run(surgeCheck, { ...ringing, loadF: '3.3n', loadOhm: '10k', ...part })
    const [entered, worst] = [si(check, 'loadPeakV') ?? 0, si(check, 'worstLoadPeakV') ?? 0]
    expect(worst).toBeGreaterThan(1.02 * entered)
    expect(found?.loadV).toBeCloseTo(worst, 6)
    expect(found?.usedFrac).toBeCloseTo(si(check, 'worstUsedFrac') ?? 0, 9)
  }, 60_000)

  it('is found in steps that rise, one answer for each surge', () => {
    const running = leastClasses([asked({ waveform: 'wf4', level: '2' }), asked({ waveform: 'wf4', level: '3' })])
    const seen: number[] = []
    let step = running.next()
    while (!step.done) {
      seen.push(step.value.doneFrac)
      step = running.next()
    }
    expect(step.value.map(({ found }) => found?.ratedPulseW)).toEqual([400, 1500])
    expect(seen.length).toBeGreaterThan(10)
    expect(Math.max(...seen)).toBeLessThanOrEqual(1)
    expect(Math.min(...seen)).toBeGreaterThanOrEqual(0)
  })
})
