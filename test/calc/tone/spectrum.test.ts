/** Tones from synthesised sound: within 0.1 % at 10 dB signal to noise, with a seed; the sound is made here. */
import { describe, expect, test } from 'vitest'
import { tonesIn } from '../../../src/calc/tone/spectrum.ts'
import { random } from '../../support/random.ts'

const RATE_HZ = 48_000
const SIZE = 32_768

/** Noise of the bell curve, standard deviation 1 (Box and Muller). */
function bell(draw: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw())
}

function sound(tones: readonly { hz: number; size: number }[], noise: number, draw: () => number): Float32Array {
  const phases = tones.map(() => 2 * Math.PI * draw())
  return Float32Array.from({ length: SIZE }, (_, i) =>
    tones.reduce(
      (sum, { hz, size }, k) => sum + size * Math.sin((2 * Math.PI * hz * i) / RATE_HZ + (phases[k] ?? 0)),
      noise * bell(draw),
    ),
  )
}

describe('one tone', () => {
  test('lies within 0.1 % at 10 dB signal to noise, from 100 Hz to 10 kHz, in 300 sounds', () => {
    const draw = random(20261126)
    let worst = 0
    for (let i = 0; i < 300; i++) {
      const hz = 100 * 100 ** draw()
      // power of a sine of size 1 is 1/2; 10 dB below it is a tenth of that
      const [found] = tonesIn(sound([{ hz, size: 1 }], Math.sqrt(0.05), draw), RATE_HZ, 1)
      worst = Math.max(worst, Math.abs((found?.hz ?? 0) / hz - 1))
    }
    expect(worst).toBeLessThan(1e-3)
  })

  test('without noise lies on its place to a thousandth of a line', () => {
    const draw = random(3)
    for (let i = 0; i < 50; i++) {
      const hz = 200 + 5000 * draw()
      const [found] = tonesIn(sound([{ hz, size: 0.3 }], 0, draw), RATE_HZ, 1)
      expect(Math.abs((found?.hz ?? 0) - hz)).toBeLessThan((0.001 * RATE_HZ) / SIZE)
      expect(found?.levelDb).toBeCloseTo(20 * Math.log10(0.3), -0.5)
    }
  })
})

describe('several tones', () => {
  test('come loudest first, those far below left out', () => {
    const draw = random(11)
    const found = tonesIn(
      sound(
        [
          { hz: 2400, size: 1 },
          { hz: 400, size: 0.5 },
          { hz: 4800, size: 0.1 },
        ],
        1e-3,
        draw,
      ),
      RATE_HZ,
    )
    expect(found.slice(0, 3).map(({ hz }) => Math.round(hz))).toEqual([2400, 400, 4800])
  })

  test('silence, and a stretch too short, have none', () => {
    expect(tonesIn(new Float32Array(SIZE), RATE_HZ)).toEqual([])
    expect(tonesIn(new Float32Array(500).fill(1), RATE_HZ)).toEqual([])
  })
})
