/** The log capacitance axis every strip shares: 10 pF to 1 µF, grown by whole decades to hold every value. */

const FROM_F = 10e-12
const TO_F = 1e-6

/** Ends in farads, never beyond 1 fF and 1 F. Values that are not positive and finite are passed over. */
export function stripAxis(valuesF: readonly (number | undefined)[]): { readonly minF: number; readonly maxF: number } {
  const all = valuesF.filter((v): v is number => v !== undefined && v > 0 && Number.isFinite(v))
  const low = Math.min(FROM_F, ...all.map((v) => 10 ** Math.floor(Math.log10(v) - 0.05)))
  const high = Math.max(TO_F, ...all.map((v) => 10 ** Math.ceil(Math.log10(v) + 0.05)))
  return { minF: Math.max(1e-15, low), maxF: Math.min(1, high) }
}
