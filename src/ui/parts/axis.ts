/** Scales and ticks for the pictures. Pure: numbers in, pixels and words out. */
import { PREFIX_POWER, QUANTITIES, type Quantity } from '../../calc/quantity/quantity.ts'

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

/** The unit all ticks of a linear axis share: one prefix for the axis, percent for a share. */
export type AxisUnit = { readonly unit: string; readonly perSi: number }

/** The unit in which the largest tick of a span reads between 1 and 1000, as far as the quantity has a prefix for it. */
export function axisUnit({ min, max }: Span, quantity: Quantity): AxisUnit {
  const { prefixes, symbol } = QUANTITIES[quantity]
  if (quantity === 'fraction') return { unit: symbol, perSi: 100 }
  const largest = Math.max(Math.abs(min), Math.abs(max)) * (1 + 1e-9)
  const fitting = prefixes.filter((prefix) => largest >= 10 ** powerOf(prefix))
  const prefix = fitting.at(-1) ?? prefixes[0] ?? ''
  return { unit: `${prefix}${symbol}`, perSi: 10 ** -powerOf(prefix) }
}

const powerOf = (prefix: string): number => PREFIX_POWER[prefix] ?? 0

/** A tick in the unit of its axis, without the unit. */
export function tickText(si: number, { perSi }: AxisUnit): string {
  const value = Number((si * perSi).toPrecision(4))
  return `${value < 0 ? '−' : ''}${Math.abs(value)}`
}

/** What stands at an axis: its name and the unit of its ticks; once where the name is the unit. */
export function axisName(label: string, { unit }: AxisUnit): string {
  return unit === '' || unit === label ? label : `${label}, ${unit}`
}

/** Width of a text in pixels, on the safe side for the wide letters of our face. */
export function textWidth(text: string, sizePx: number): number {
  return text.length * sizePx * 0.62
}
