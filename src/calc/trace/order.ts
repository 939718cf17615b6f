/** Brings a sweep into rising frequency. */

/** Longer lists are sweeps; one that goes up and down is several of them. */
const MOST_SORTED = 20_000

/**
 * Rising as it is, turned round where it falls, sorted where it is a short list in any order. undefined: a long one that
 * does neither. Equal frequencies stay side by side.
 */
export function inOrder(
  hz: Float64Array,
  db: Float64Array,
): { readonly hz: Float64Array; readonly db: Float64Array } | undefined {
  let rises = true
  let falls = true
  for (let i = 1; i < hz.length && (rises || falls); i++) {
    const step = (hz[i] as number) - (hz[i - 1] as number)
    if (step < 0) rises = false
    if (step > 0) falls = false
  }
  if (rises) return { hz, db }
  if (falls) return { hz: hz.reverse(), db: db.reverse() }
  if (hz.length > MOST_SORTED) return undefined
  const order = Array.from(hz.keys()).sort((a, b) => (hz[a] as number) - (hz[b] as number) || a - b)
  return {
    hz: Float64Array.from(order, (at) => hz[at] as number),
    db: Float64Array.from(order, (at) => db[at] as number),
  }
}
