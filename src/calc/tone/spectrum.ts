/** The strongest tones in a stretch of sound: Hann window, Fourier transform, and the place between two lines by their ratio. */

export type Peak = { readonly hz: number; readonly levelDb: number }

/** Lines on either side of a peak that belong to it under a Hann window. */
const SKIRT = 3
/** Below this there is mains hum and handling, and too few periods in one stretch. */
export const LOWEST_HZ = 40

/**
 * The strongest tones, loudest first, at most `most` of them and none more than 40 dB below the first. `samples`: any
 * length from 1024 up, the largest power of two of it is read; `rateHz`: samples a second. A tone between two lines lies at
 * k + (2·α − 1)/(α + 1), with α the ratio of the second line to the first: exact for one tone under a Hann window.
 */
export function tonesIn(samples: Float32Array, rateHz: number, most = 5): readonly Peak[] {
  const size = 2 ** Math.floor(Math.log2(samples.length))
  if (size < 1024) return []
  const magnitude = spectrumOf(samples, size)
  const first = Math.max(2, Math.ceil((LOWEST_HZ * size) / rateHz))
  const taken = new Uint8Array(magnitude.length)
  const peaks: Peak[] = []
  for (let count = 0; count < most; count++) {
    let best = -1
    for (let k = first; k < magnitude.length - 1; k++)
      if (taken[k] === 0 && (best < 0 || at(magnitude, k) > at(magnitude, best))) best = k
    if (best < 0 || at(magnitude, best) === 0) break
    const levelDb = 20 * Math.log10((4 * at(magnitude, best)) / size)
    const loudest = peaks[0]
    if (loudest !== undefined && levelDb < loudest.levelDb - 40) break
    peaks.push({ hz: (placeOf(magnitude, best) * rateHz) / size, levelDb })
    taken.fill(1, Math.max(0, best - SKIRT), best + SKIRT + 1)
  }
  return peaks
}

const at = (values: Float64Array, index: number): number => values[index] ?? 0

function placeOf(magnitude: Float64Array, k: number): number {
  const side = at(magnitude, k + 1) >= at(magnitude, k - 1) ? 1 : -1
  const ratio = at(magnitude, k + side) / at(magnitude, k)
  return k + side * Math.min(0.5, Math.max(0, (2 * ratio - 1) / (ratio + 1)))
}

/** Magnitudes of the lines from 0 to half the rate, windowed, the mean taken off. `size`: a power of two. */
export function spectrumOf(samples: Float32Array, size: number): Float64Array {
  const [re, im] = [new Float64Array(size), new Float64Array(size)]
  let mean = 0
  for (let i = 0; i < size; i++) mean += (samples[i] ?? 0) / size
  for (let i = 0; i < size; i++) re[i] = ((samples[i] ?? 0) - mean) * (0.5 - 0.5 * Math.cos((2 * Math.PI * i) / size))
  transform(re, im)
  const half = new Float64Array(size / 2)
  for (let k = 0; k < half.length; k++) half[k] = Math.hypot(at(re, k), at(im, k))
  return half
}

/** Fourier transform in place, radix two, the length a power of two. Cooley and Tukey. */
function transform(re: Float64Array, im: Float64Array): void {
  const size = re.length
  for (let i = 1, j = 0; i < size; i++) {
    let bit = size >> 1
    for (; (j & bit) !== 0; bit >>= 1) j ^= bit
    j ^= bit
    if (i < j) {
      ;[re[i], re[j]] = [at(re, j), at(re, i)]
      ;[im[i], im[j]] = [at(im, j), at(im, i)]
    }
  }
  for (let length = 2; length <= size; length *= 2) {
    const half = length / 2
    for (let k = 0; k < half; k++) {
      const angle = (-2 * Math.PI * k) / length
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      for (let start = k; start < size; start += length) {
        const other = start + half
        const real = at(re, other) * cos - at(im, other) * sin
        const imaginary = at(re, other) * sin + at(im, other) * cos
        re[other] = at(re, start) - real
        im[other] = at(im, start) - imaginary
        re[start] = at(re, start) + real
        im[start] = at(im, start) + imaginary
      }
    }
  }
}
