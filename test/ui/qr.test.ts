import { describe, expect, it } from 'vitest'
import { codeOf, LONGEST_CODE } from '../../src/ui/paper/qr.ts'
import fc from '../support/property.ts'
import { readCode } from '../support/read-code.ts'

const ADDRESS =
  'https://pocket.example/stillpin/#/check/window?lineKind=can&frequencyHz=12 MHz&neededDb=2*10&toleranceFrac=10%20%25'

const readBack = (text: string): string | undefined => {
  const code = codeOf(text)
  return code && readCode(code.path, code.modules)
}

describe('the code of an address', () => {
  it('is read back by a reader of its own', () => {
    expect(readBack(ADDRESS)).toBe(ADDRESS)
    expect(readBack(`${ADDRESS}&µ=Ω`)).toBe(`${ADDRESS}&µ=Ω`)
  })

  it('is read back at every length up to the longest, and left out above', () => {
    const longest = ADDRESS.padEnd(LONGEST_CODE, '&capacitanceF=4n7')
    expect(readBack(longest)).toBe(longest)
    expect(codeOf(`${longest}x`)).toBeUndefined()
    const tails = fc.string({ unit: fc.constantFrom(...'&=;+%20µΩaF9.*/-'), maxLength: 300 })
    fc.assert(
      fc.property(tails, (tail) => {
        expect(readBack(`${ADDRESS}${tail}`)).toBe(`${ADDRESS}${tail}`)
      }),
      { numRuns: 20 },
    )
  })

  it('keeps four light modules around it', () => {
    const code = codeOf(ADDRESS)
    const dark = [...(code?.path ?? '').matchAll(/M(\d+) (\d+)h(\d+)/g)].flatMap(([, x, y, width]) => [
      Number(x),
      Number(y),
      (code?.modules ?? 0) - Number(x) - Number(width),
      (code?.modules ?? 0) - Number(y) - 1,
    ])
    expect(Math.min(...dark)).toBe(4)
  })
})
