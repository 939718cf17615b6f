import { describe, expect, it } from 'vitest'
import { contactIds, LETTER_IDS } from '../../../src/calc/connector/contact-ids.ts'
import { faceOf, RECTANGULAR_ROWS } from '../../../src/calc/connector/face.ts'

const ids = (text: string) => {
  const found = contactIds({ is: 'own', text })
  return found.ok ? found.ids : found.message
}

describe('names of contacts', () => {
  it('leaves out the letters that are read as other signs', () => {
    expect(LETTER_IDS.length).toBe(70)
    expect(LETTER_IDS.slice(0, 10).join('')).toBe('ABCDEFGHJK')
    expect(LETTER_IDS.indexOf('a')).toBe(23)
    expect(LETTER_IDS.slice(-3)).toEqual(['XX', 'YY', 'ZZ'])
    for (const letter of ['I', 'O', 'Q', 'l', 'o', 'II', 'OO', 'QQ']) expect(LETTER_IDS).not.toContain(letter)
  })

  it('ends an insert of 61 lettered contacts at PP', () => {
    const found = contactIds({ is: 'letters', count: 61 })
    expect(found.ok && found.ids.at(-1)).toBe('PP')
  })

  it('counts numbers up and says what a connector can have', () => {
    const found = contactIds({ is: 'numbers', count: 128 })
    expect(found.ok && [found.ids[0], found.ids[127]]).toEqual(['1', '128'])
    for (const count of [0, 257, 1.5, Number.NaN])
      expect(contactIds({ is: 'numbers', count })).toMatchObject({
        ok: false,
        message: expect.stringContaining('1 to 256'),
      })
    expect(contactIds({ is: 'letters', count: 71 })).toMatchObject({
      ok: false,
      message: expect.stringContaining('70'),
    })
  })

  it('takes an own list with spans, and refuses what is double or runs down', () => {
    expect(ids('1-3, A–C;P1')).toEqual(['1', '2', '3', 'A', 'B', 'C', 'P1'])
    expect(ids('H-K')).toEqual(['H', 'J', 'K'])
    expect(ids('1 2 2')).toContain('“2” stands twice')
    expect(ids('9-1')).toContain('1-9')
    expect(ids(' ')).toContain('Enter the names')
    expect(ids('1-9999')).toContain('more than 256')
    expect(ids('A-I')).toContain('no row of letters')
  })
})

describe('the face', () => {
  it('has the rows of the rectangular shells, contact 1 left on pins and right on sockets', () => {
    for (const [count, rows] of Object.entries(RECTANGULAR_ROWS)) {
      const names = Array.from({ length: Number(count) }, (_, i) => String(i + 1))
      const pins = faceOf(names, 'rectangular')
      expect(pins.places.length).toBe(Number(count))
      expect(new Set(pins.places.map(({ y }) => y.toFixed(3))).size).toBe(rows.length)
      expect(pins.places[0]?.x).toBe(-((rows[0] as number) - 1) / 2)
      const sockets = faceOf(names, 'rectangular', 'sockets')
      expect(sockets.places[0]?.x).toBe(((rows[0] as number) - 1) / 2)
    }
    expect(faceOf(['1', '2'], 'rectangular').shape).toBe('ring')
  })

  it('keeps every two contacts of a ring face apart, up to 256', () => {
    for (let count = 1; count <= 256; count++) {
      const { places, halfWidth, halfHeight } = faceOf(
        Array.from({ length: count }, (_, i) => String(i)),
        'ring',
      )
      expect(places.length).toBe(count)
      let nearest = Number.POSITIVE_INFINITY
      let isInside = true
      places.forEach((a, i) => {
        isInside &&= Math.abs(a.x) < halfWidth && Math.abs(a.y) < halfHeight
        for (let k = i + 1; k < places.length; k++) {
          const b = places[k] as typeof a
          nearest = Math.min(nearest, Math.hypot(a.x - b.x, a.y - b.y))
        }
      })
      expect(isInside, `${count} contacts`).toBe(true)
      expect(nearest, `${count} contacts`).toBeGreaterThan(0.999)
    }
  })
})
