/** Scales and ticks for the pictures. Pure: numbers in, pixels and words out. */
import { PREFIX_POWER } from '../../calc/quantity/quantity.ts'

export type Span = { readonly min: number; readonly max: number }
export type Scale = (value: number) => number

/** Maps a positive value to pixels by its logarithm; values outside the span stay on its edge. */
export function logScale(values: Span, pixels: readonly [number, number]): Scale {
  const low = Math.log10(values.min)
  const width = Math.log10(values.max) - low || 1
  return (value) => {
    const share = value <= values.min ? 0 : Math.min(1, (Math.log10(value) - low) / width)
    return pixels[0] + share * (pixels[1] - pixels[0])
  }
}

/** Maps a value to pixels in proportion; values outside the span go outside, so that a clip can cut them. */
export function linearScale(values: Span, pixels: readonly [number, number]): Scale {
  const width = values.max - values.min || 1
  return (value) => pixels[0] + ((value - values.min) / width) * (pixels[1] - pixels[0])
}

/** Powers of ten inside the span, thinned evenly to at most `most`. */
export function decades(values: Span, most: number): readonly number[] {
  const first = Math.ceil(Math.log10(values.min) - 1e-9)
  const last = Math.floor(Math.log10(values.max) + 1e-9)
  const stride = Math.max(1, Math.ceil((last - first + 1) / Math.max(1, most)))
  const ticks: number[] = []
  for (let power = first; power <= last; power += stride) ticks.push(Number(`1e${power}`))
  return ticks
}

/** Ticks 1, 2 or 5 times a power of ten apart, at least two, about `most` of them. */
export function linearTicks(values: Span, most: number): readonly number[] {
  const rough = (values.max - values.min) / Math.max(1, most)
  if (!(rough > 0)) return [values.min]
  const power = 10 ** Math.floor(Math.log10(rough))
  const factor = [1, 2, 5, 10].find((step) => step * power >= rough * 0.999) ?? 10
  const step = factor * power
  const ticks: number[] = []
  for (let index = Math.ceil(values.min / step - 1e-9); index * step <= values.max + step * 1e-9; index += 1) {
    ticks.push(Number((index * step).toPrecision(12)))
  }
  return ticks
}

/** Grows a span to whole ticks, so that curves never touch the frame. */
export function roundedSpan(values: Span, most: number): Span {
  const ticks = linearTicks(values, most)
  const step = ticks.length > 1 ? (ticks[1] ?? 0) - (ticks[0] ?? 0) : 1
  return { min: Math.floor(values.min / step + 1e-9) * step, max: Math.ceil(values.max / step - 1e-9) * step }
}

/** `4.7e-9` → `4.7n`: a number short enough for an axis. */
export function shortSi(exact: number): string {
  const value = Number(exact.toPrecision(3))
  if (value === 0) return '0'
  const power = Math.floor(Math.log10(Math.abs(value)) + 1e-9)
  const third = Math.min(12, Math.max(-15, Math.floor(power / 3) * 3))
  const prefix = Object.entries(PREFIX_POWER).find(([, exponent]) => exponent === third)?.[0] ?? ''
  const digits = Number((value / 10 ** third).toPrecision(3))
  return `${digits < 0 ? '−' : ''}${Math.abs(digits)}${prefix}`
}

/** Width of a text in pixels, on the safe side for the wide letters of our face. */
export function textWidth(text: string, sizePx: number): number {
  return text.length * sizePx * 0.62
}
