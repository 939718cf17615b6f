/**
 * Share of a 10/1000 µs rating that a power over time uses, by its own sum: the rise ∫p(τ)/√(t − τ)dτ of a thick slab
 * against that of the rated pulse, both on cells of constant power.
 */

const RATED = (t: number) => 1.019 * (1 - Math.exp(-t / 3.827e-6)) * Math.exp(-t / 1404e-6)

function risePeak(edges: readonly number[], watts: readonly number[]): number {
  let most = 0
  for (let j = 1; j < edges.length; j++) {
    const now = edges[j] ?? 0
    let rise = 0
    for (let i = 0; i < j; i++)
      rise += (watts[i] ?? 0) * 2 * (Math.sqrt(now - (edges[i] ?? 0)) - Math.sqrt(now - (edges[i + 1] ?? 0)))
    most = Math.max(most, rise)
  }
  return most
}

function ratedRise(): number {
  const edges = Array.from({ length: 401 }, (_, i) => 3e-3 * (i / 400) ** 2)
  return risePeak(
    edges,
    edges.slice(1).map((end, i) => RATED(((edges[i] ?? 0) + end) / 2)),
  )
}
const RATED_RISE = ratedRise()

/** Share of the rating, single pulse at 25 °C. */
export function ratingUsed(sec: readonly number[], watts: readonly number[], ratedW: number): number {
  const last = watts.reduce((at, w, i) => (w > 1e-6 ? i : at), 0)
  const each = Math.max(1, Math.ceil(last / 260))
  const [edges, mean]: [number[], number[]] = [[sec[0] ?? 0], []]
  for (let from = 0; from < last; from += each) {
    const to = Math.min(last, from + each)
    let energy = 0
    for (let i = from; i < to; i++)
      energy += ((sec[i + 1] ?? 0) - (sec[i] ?? 0)) * (((watts[i] ?? 0) + (watts[i + 1] ?? 0)) / 2)
    const width = (sec[to] ?? 0) - (sec[from] ?? 0)
    edges.push(sec[to] ?? 0)
    mean.push(width > 0 ? energy / width : 0)
  }
  return risePeak(edges, mean) / (ratedW * RATED_RISE)
}
