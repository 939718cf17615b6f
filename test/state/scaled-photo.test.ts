/** A photo made small enough, against a canvas whose files grow with area and quality as real ones do. */
import { describe, expect, it } from 'vitest'
import { type Encode, fitted, MOST_BYTES, MOST_SIDE_PX, PhotoError, shrunk } from '../../src/state/scaled-photo.ts'

/** Bytes a pixel at full quality; a canvas without WebP gives PNG instead, as browsers do. */
const canvas =
  (bytesPerPx: number, types: readonly string[] = ['image/webp', 'image/jpeg']): Encode =>
  async ({ widthPx, heightPx }, type, quality) =>
    new Blob([new Uint8Array(Math.round(widthPx * heightPx * bytesPerPx * quality))], {
      type: types.includes(type) ? type : 'image/png',
    })

const LARGE = { widthPx: 4000, heightPx: 3000 }

describe('the size of a photo', () => {
  it('has a longest side of 1600 pixels, and none is made larger', () => {
    expect(fitted(LARGE, MOST_SIDE_PX)).toEqual({ widthPx: 1600, heightPx: 1200 })
    expect(fitted({ widthPx: 900, heightPx: 3200 }, MOST_SIDE_PX)).toEqual({ widthPx: 450, heightPx: 1600 })
    expect(fitted({ widthPx: 640, heightPx: 480 }, MOST_SIDE_PX)).toEqual({ widthPx: 640, heightPx: 480 })
    expect(fitted({ widthPx: 9000, heightPx: 1 }, MOST_SIDE_PX)).toEqual({ widthPx: 1600, heightPx: 1 })
  })

  it('keeps its best quality where that fits', async () => {
    const { bytes, type, widthPx } = await shrunk(LARGE, canvas(0.1))
    expect([bytes.byteLength, type, widthPx]).toEqual([Math.round(1600 * 1200 * 0.1 * 0.8), 'image/webp', 1600])
  })

  it('loses quality first, then size, until it fits', async () => {
    const less = await shrunk(LARGE, canvas(0.3))
    expect([less.bytes.byteLength <= MOST_BYTES, less.widthPx]).toEqual([true, 1600])
    const smaller = await shrunk(LARGE, canvas(1.5))
    expect(smaller.bytes.byteLength).toBeLessThanOrEqual(MOST_BYTES)
    expect(smaller.widthPx).toBeLessThan(1600)
    expect(smaller.heightPx / smaller.widthPx).toBeCloseTo(3 / 4, 2)
  })

  it('is a JPEG where the browser writes no WebP', async () => {
    expect((await shrunk(LARGE, canvas(0.1, ['image/jpeg']))).type).toBe('image/jpeg')
  })

  it('says so when it never fits or cannot be drawn', async () => {
    await expect(shrunk(LARGE, canvas(100))).rejects.toBeInstanceOf(PhotoError)
    await expect(shrunk(LARGE, async () => undefined)).rejects.toThrow(/could not draw/)
  })
})
