import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readPasted } from '../../../src/calc/connector/pasted.ts'

describe('tables pasted by anybody', () => {
  it('takes 20,000 damaged tables as a table or a sentence', () => {
    const scrap = fc.string({
      unit: fc.constantFrom('"', '""', ';', ',', '\t', '\n', '\r', 'a', '1', "'", '=', ' ', '\uFEFF', 'pin'),
    })
    fc.assert(
      fc.property(scrap, (text) => {
        const pasted = readPasted(text)
        expect(pasted.ok ? pasted.rows.length > 0 : pasted.message.length > 10).toBe(true)
      }),
      { numRuns: 20_000, seed: 6 },
    )
  })
})
