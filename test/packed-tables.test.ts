import { constants, deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pack } from '../scripts/packed-tables.mjs'
import { bytesOf, inflate, SIGNS, unpack } from '../scripts/unpack.mjs'
import { GUIDE } from '../src/guide/guide.ts'
import { LINE_KINDS } from '../src/reference/line-kinds.ts'

describe('packed tables', () => {
  it('come out as they went in', () => {
    for (const data of [[], 0, '', 'µΩ – “ä”', [null, true, -1.5e-12, 5e-324], GUIDE, LINE_KINDS]) {
      const { text, packedBytes, wholeBytes } = pack(data)
      expect(unpack(text, packedBytes, wholeBytes)).toEqual(data)
    }
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 5 }), (data) => {
        const { text, packedBytes, wholeBytes } = pack(data)
        expect(unpack(text, packedBytes, wholeBytes)).toEqual(JSON.parse(JSON.stringify(data)))
      }),
      { numRuns: 500, seed: 20_261_126 },
    )
  })

  it('are text without a sign that would need an escape', () => {
    expect(SIGNS).toHaveLength(91)
    const { text, packedBytes } = pack(GUIDE)
    expect(text).toMatch(/^[ -~]+$/)
    expect(text).not.toMatch(/['`\\$]/)
    expect(text.length).toBeLessThan(packedBytes * 1.232)
    expect(bytesOf(text, packedBytes)).toEqual(
      new Uint8Array(deflateRawSync(JSON.stringify(GUIDE), { level: 9, memLevel: 9 })),
    )
  })

  it('are read whatever way a deflater writes them: stored, in the fixed code, in codes of their own', () => {
    const whole = Buffer.from(`${JSON.stringify(LINE_KINDS)}${'ab'.repeat(70_000)}${'a'.repeat(600)}`)
    for (const strategy of [constants.Z_DEFAULT_STRATEGY, constants.Z_FIXED, constants.Z_HUFFMAN_ONLY, constants.Z_RLE])
      for (const level of [0, 1, 6, 9])
        expect(Buffer.from(inflate(deflateRawSync(whole, { level, strategy }), whole.length)).equals(whole)).toBe(true)
  })

  it('that are damaged are not read as something else', () => {
    const { text, packedBytes, wholeBytes } = pack(LINE_KINDS)
    for (const cut of [0.1, 0.5, 0.9])
      expect(() => unpack(text.slice(0, Math.floor(text.length * cut)), packedBytes, wholeBytes)).toThrow()
  })
})
