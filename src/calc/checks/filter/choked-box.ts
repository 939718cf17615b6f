/** The lowest loss of a filter with a common-mode choke over everything both may be in service. */
import { worstInBox } from '../../bounds/box.ts'
import type { Span, Surroundings } from '../../bounds/surroundings.ts'
import { type NoiseLoad, type NoiseSource, type SeriesPart, sourceImpedance } from '../../network/circuit.ts'

export type Choked = {
  readonly part: SeriesPart
  readonly side: 'source' | 'load'
  /** inductance a leg sees, over the tolerance */
  readonly spanH: Span
}

type Lowest = { readonly db: number; readonly hz: number; readonly source: NoiseSource }
type Z = readonly [re: number, im: number]

/** The choke at ω: R + jX/(1 − ωC·X). A lossless resonance is kept from dividing by nothing. */
function impedance({ dcrOhm, parallelF }: SeriesPart, henries: number, w: number): Z {
  const x = w * henries
  const open = 1 - w * parallelF * x
  return [dcrOhm, x / (Math.abs(open) < 1e-15 ? 1e-15 : open)]
}

function loadAdmittance({ ohm, parallelF, parallelH }: NoiseLoad, w: number): Z {
  const inductive = w * parallelH
  return [1 / ohm, w * parallelF - (inductive > 0 ? 1 / inductive : 0)]
}

const over = ([re, im]: Z): Z => {
  const m = re * re + im * im
  return [re / m, -im / m]
}

/**
 * At one frequency a choke is an impedance that stands with the source or with the load; what it takes by itself,
 * 20·log10 |1 + Zc·YL/(1 + Zs·YL)|, is added to the loss of the filter between such ends. Derived.
 */
function lossWith(
  around: Surroundings,
  marked: Span,
  size: number,
  choke: Choked,
  henries: number,
  source: NoiseSource,
): number {
  const hz = around.needs[0]?.hz ?? 0
  const w = 2 * Math.PI * hz
  const [cRe, cIm] = impedance(choke.part, henries, w)
  const [sRe, sIm] = sourceImpedance(source, w)
  const [lRe, lIm] = loadAdmittance(around.load, w)
  const bare: Z = [1 + sRe * lRe - sIm * lIm, sRe * lIm + sIm * lRe]
  const choked: Z = [bare[0] + cRe * lRe - cIm * lIm, bare[1] + cRe * lIm + cIm * lRe]
  const alone = 20 * Math.log10(Math.hypot(...choked) / Math.hypot(...bare))
  if (choke.side === 'source') {
    const ohm = sRe + cRe
    const seriesH = w === 0 ? 0 : (sIm + cIm) / w
    return alone + worstInBox({ ...around, sources: [{ ohm, seriesH }] }, marked, size).lossDb
  }
  const [zRe, zIm] = over([lRe, lIm])
  const [gRe, gIm] = over([zRe + cRe, zIm + cIm])
  const load: NoiseLoad = { ohm: 1 / gRe, parallelF: w === 0 ? 0 : gIm / w, parallelH: Number.POSITIVE_INFINITY }
  return alone + worstInBox({ ...around, sources: [source], load }, marked, size).lossDb
}

const GRID = 32
const REFINE = 24
const GOLDEN = (Math.sqrt(5) - 1) / 2

/** Lowest of a function over a span: a grid on a log scale, then golden section around its lowest point. */
function lowestOver({ least, most }: Span, at: (henries: number) => number): number {
  if (least <= 0 || least === most) return Math.min(at(least), at(most))
  const step = Math.log(most / least) / GRID
  const found = Array.from({ length: GRID + 1 }, (_, i) => at(i === GRID ? most : least * Math.exp(i * step)))
  const lowest = found.reduce((low, db, i) => (db < (found[low] as number) ? i : low), 0)
  let low = Math.max(0, lowest - 1) * step
  let high = Math.min(GRID, lowest + 1) * step
  let best = found[lowest] as number
  for (let k = 0; k < REFINE; k++) {
    const p = high - GOLDEN * (high - low)
    const q = low + GOLDEN * (high - low)
    const [yp, yq] = [at(least * Math.exp(p)), at(least * Math.exp(q))]
    best = Math.min(best, yp, yq)
    if (yp < yq) high = q
    else low = p
  }
  return best
}

/**
 * Worst loss in dB over every part of the filter (`marked` shares of `size`) and the choke over its span, each need and
 * each source. A choke alone, or with one capacitor, is a filter of two elements and proved as one; with more elements
 * the span of the choke is searched.
 */
export function worstWithChoke(around: Surroundings, marked: Span, size: number, choke: Choked): Lowest | undefined {
  const { part, side, spanH } = choke
  if (around.topology === 'C' && spanH.least > 0) {
    const coil = { dcrOhm: part.dcrOhm, inductorParallelF: part.parallelF, inductorParallelOhm: part.parallelOhm }
    const worst =
      size === 0
        ? worstInBox({ ...around, ...coil, topology: 'L' }, { least: 1, most: spanH.most / spanH.least }, spanH.least)
        : worstInBox(
            { ...around, ...coil, topology: side === 'source' ? 'LC' : 'CL', inductancesH: [spanH.least, spanH.most] },
            marked,
            size,
          )
    return { db: worst.lossDb, hz: worst.need.hz, source: worst.source }
  }
  let lowest: Lowest | undefined
  for (const need of around.needs)
    for (const source of around.sources) {
      const here = { ...around, needs: [need] }
      const db = lowestOver(spanH, (henries) => lossWith(here, marked, size, choke, henries, source))
      if (lowest === undefined || db < lowest.db) lowest = { db, hz: need.hz, source }
    }
  return lowest
}
