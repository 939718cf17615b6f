/** What a sound looks like, worked out from its own samples: its spectrum and its rhythm. */
import { spectrumOf, tonesIn } from '../../../calc/tone/spectrum.ts'
import type { SoundPicture } from '../types.ts'
import { render, type Sound } from './synthesis.ts'

const RATE_HZ = 24_000
const SIZE = 4096
/** Columns of the spectrum, evenly over the logarithm of frequency. */
const COLUMNS = 64
const FROM_HZ = 40
const TO_HZ = 10_000
/** Steps of the rhythm, in seconds. */
const STEP_SEC = 0.02
/** Decibels under the loudest that are drawn. */
export const DRAWN_DB = 50

/** Loudest level in each column over the whole sound, and the level along the time. */
export function pictureOf(sound: Sound): SoundPicture {
  const samples = render(sound, RATE_HZ)
  const loudest = new Float64Array(COLUMNS)
  for (let from = 0; from + SIZE <= samples.length; from += SIZE) {
    const lines = spectrumOf(samples.subarray(from, from + SIZE), SIZE)
    for (let k = 1; k < lines.length; k++) {
      const hz = (k * RATE_HZ) / SIZE
      if (hz < FROM_HZ || hz > TO_HZ) continue
      const column = Math.min(COLUMNS - 1, Math.floor((COLUMNS * Math.log(hz / FROM_HZ)) / Math.log(TO_HZ / FROM_HZ)))
      loudest[column] = Math.max(loudest[column] ?? 0, lines[k] ?? 0)
    }
  }
  const top = Math.max(...loudest)
  const step = Math.round(STEP_SEC * RATE_HZ)
  const rhythm = Array.from({ length: Math.floor(samples.length / step) }, (_, i) =>
    samples.subarray(i * step, (i + 1) * step).reduce((most, value) => Math.max(most, Math.abs(value)), 0),
  )
  return {
    fromHz: FROM_HZ,
    toHz: TO_HZ,
    belowDb: [...loudest].map((level) => Math.min(DRAWN_DB, level > 0 ? 20 * Math.log10(top / level) : DRAWN_DB)),
    seconds: sound.seconds,
    rhythm,
  }
}

/** The strongest tone of a stretch of the sound, in hertz; none where it is all noise or clicks. */
export function strongestHz(sound: Sound, fromSec: number): number | undefined {
  const from = Math.round(fromSec * RATE_HZ)
  return tonesIn(render(sound, RATE_HZ).subarray(from, from + 16_384), RATE_HZ)[0]?.hz
}
