import { describe, expect, it } from 'vitest'
import { filterCheck } from '../../src/calc/checks/filter/check.ts'
import { atOnce } from '../../src/calc/line/evaluate.ts'
import { readFields } from '../../src/calc/line/fields.ts'
import { readTouchstone } from '../../src/calc/touchstone/read.ts'
import { chainAt, chainLossDb } from '../../src/calc/touchstone/two-port.ts'
import { modelFile } from '../../src/state/model-file.ts'

/** Circuit F06 of ngspice: 39.049322 dB at 10 MHz between 5 Ω and 1 kΩ. */
const F06 = {
  topology: 'LC',
  capacitanceF: '10n',
  inductanceH: '2.2u',
  esrOhm: '0.02',
  eslH: '0.5n',
  dcrOhm: '0.02',
  inductorParallelOhm: '5k',
  inductorParallelF: '3p',
  bondOhm: '0',
  bondH: '0',
}

describe('a filter written as a file', () => {
  it('loses between other ends what ngspice says, once it is read back', () => {
    const made = modelFile(readFields(filterCheck, F06))
    if (!made.ok) throw new Error(made.message)
    expect(made.file.name).toBe('filter-lc.s2p')
    const text = String(made.file.content)
    expect(text).toMatch(/^[\x20-\x7E\r\n]*$/)
    const reading = atOnce(readTouchstone(text, { fileName: made.file.name }))
    if (!reading.ok) throw new Error(reading.message)
    const row = reading.network.hz.findIndex((hz) => Math.abs(hz - 10e6) < 1)
    expect(chainLossDb(chainAt(reading.network, row), [5, 0], [1000, 0])).toBeCloseTo(39.049322, 5)
    expect(reading.comments).toContain('Capacitance: 10n')
  })

  it.each([
    [{ ...F06, topology: '' }, 'Choose the topology first'],
    [{ ...F06, capacitanceF: 'many' }, 'Capacitance: “many” is not a number'],
    [{ ...F06, beadHz: '10M', beadOhm: '50', beadReactanceOhm: '30' }, 'A bead is known at its own frequencies only'],
  ])('case %#: says why there is none', (texts, sentence) => {
    const made = modelFile(readFields(filterCheck, texts))
    expect(made.ok ? '' : made.message).toContain(sentence)
  })
})
