/** Numbers spread evenly over decades. */
import fc from 'fast-check'

/**
 * Whole thousandths of a decade from `low` to `high`, six significant digits. Doubles as exponents would crowd at zero,
 * where every value is 1.
 */
export function logRange(low: number, high: number): fc.Arbitrary<number> {
  const min = Math.ceil(1000 * Math.log10(low))
  const max = Math.floor(1000 * Math.log10(high))
  return fc
    .noBias(fc.integer({ min, max }))
    .map((e) => Number(Math.min(high, Math.max(low, 10 ** (e / 1000))).toPrecision(6)))
}
