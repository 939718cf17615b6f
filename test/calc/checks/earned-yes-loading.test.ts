/** What the signal side must not say yes to. */
import { describe, expect, it } from 'vitest'
import { loadingCheck } from '../../../src/calc/checks/loading/check.ts'
import { faradsForReturnLoss } from '../../../src/calc/loading/return-loss.ts'
import { run, si } from '../../support/run-check.ts'

const load = (texts: Record<string, string>) => run(loadingCheck, { suppressorF: '0', existingF: '0', ...texts })
const words = (texts: Record<string, string>) =>
  load(texts)
    .findings.map(({ sentence }) => sentence)
    .join(' ')

describe('100BASE-TX', () => {
  const fast = { lineKind: 'ethernet-100base-tx' }

  it('stands what its mask leaves over the whole cable range the document names: 24 pF a leg, not 26.5', () => {
    // 16 dB at 30 MHz and 10 dB at 80 MHz against 115 Ω on a 100 Ω line, two legs in series: the tighter of the two.
    const at = (db: number, hz: number) => faradsForReturnLoss({ db, hz, loadOhm: 100, referenceOhm: 115 })
    expect(si(load(fast), 'mostCapacitanceF')).toBeCloseTo(2 * Math.min(at(16, 30e6), at(10, 80e6)), 15)
    expect(si(load(fast), 'mostCapacitanceF')).toBeCloseTo(24.2e-12, 13)
    expect(load({ ...fast, capacitanceF: '25p' }).verdict).toBe('fails')
    expect(load({ ...fast, capacitanceF: '24p' }).verdict).not.toBe('fails')
  })

  it('says that transceiver and magnetics share it', () => {
    expect(words({ ...fast, capacitanceF: '5p' })).toContain('which transceiver and magnetics share')
    expect(words({ ...fast, capacitanceF: '5p' })).toContain('cable range its document names')
  })

  it('is judged over that range with an inductor too', () => {
    // 68 nH before 2 pF in each leg keeps the mask against 100 Ω by 0.4 dB and misses it against 85 Ω by as much.
    expect(load({ ...fast, capacitanceF: '2p', inductanceH: '68n' }).verdict).toBe('fails')
    expect(load({ ...fast, capacitanceF: '2p', inductanceH: '47n' }).verdict).toBe('ok')
  })
})
