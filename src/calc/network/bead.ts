/**
 * A ferrite bead by its impedance at three frequencies or more, as a part in series.
 *
 * Between two of them the resistance lies on a straight line of log R over log f, the reactance on one of X over log f
 * (it may change its sign). Below the first the bead is the resistance and inductance side by side that measure so there,
 *   L = (R² + X²)/(2π·f·X), Rp = (R² + X²)/R,
 * which is what a ferrite is far below its resonance; it serves the signal alone. Above the last nothing is known.
 * Hz > 0 rising, R > 0, the first X > 0. Source: derived; checked against the R ∥ L ∥ C model of a bead.
 */
import type { SeriesPart } from './circuit.ts'
import { NO_SERIES } from './circuit.ts'

export type Span = { readonly least: number; readonly most: number }

export type BeadPoint = {
  readonly hz: number
  readonly ohm: number
  /** one figure, or both signs where only the magnitude of the impedance is known */
  readonly reactanceOhm: Span
}

/** Its points and the shares of them it can have: tolerance, and what the current of the line takes. */
export type Bead = { readonly points: readonly BeadPoint[]; readonly share: Span }

/** Resistance and reactance, each from its least to its most: they need not move together. */
export type BeadOhms = { readonly ohm: Span; readonly reactanceOhm: Span }

/** Both at a frequency as entered; undefined outside the frequencies that are known. */
function between(points: readonly BeadPoint[], hz: number): Omit<BeadPoint, 'hz'> | undefined {
  const above = points.findIndex((point) => point.hz >= hz)
  const high = points[above]
  if (high === undefined) return undefined
  if (high.hz === hz) return high
  const low = points[above - 1]
  if (low === undefined) return undefined
  const share = Math.log(hz / low.hz) / Math.log(high.hz / low.hz)
  const onLine = (from: number, to: number) => from + share * (to - from)
  return {
    ohm: Math.exp(onLine(Math.log(low.ohm), Math.log(high.ohm))),
    reactanceOhm: {
      least: onLine(low.reactanceOhm.least, high.reactanceOhm.least),
      most: onLine(low.reactanceOhm.most, high.reactanceOhm.most),
    },
  }
}

/** What the bead may be at a frequency; undefined outside the frequencies that are known. */
export function beadOhms({ points, share }: Bead, hz: number): BeadOhms | undefined {
  const found = between(points, hz)
  if (found === undefined) return undefined
  const { least, most } = found.reactanceOhm
  return {
    ohm: { least: share.least * found.ohm, most: share.most * found.ohm },
    reactanceOhm: {
      least: Math.min(share.least * least, share.most * least),
      most: Math.max(share.least * most, share.most * most),
    },
  }
}

/** What it is below its first frequency, at a share of what was entered: H and Ω side by side. */
export function beadBelow({ points }: Bead, share: number): { readonly henries: number; readonly parallelOhm: number } {
  const { hz, ohm, reactanceOhm } = points[0] as BeadPoint
  const square = ohm ** 2 + reactanceOhm.most ** 2
  return { henries: (share * square) / (2 * Math.PI * hz * reactanceOhm.most), parallelOhm: (share * square) / ohm }
}

/**
 * Z = R + jX in Ω at a share of what was entered, for a curve over frequency: as entered between the first and the last,
 * R ∥ L below, nothing above.
 */
export function beadImpedance(bead: Bead, share: number, hz: number): readonly [re: number, im: number] {
  const { points } = bead
  const found = between(points, hz)
  if (found !== undefined)
    return [share * found.ohm, (share * (found.reactanceOhm.least + found.reactanceOhm.most)) / 2]
  if (hz > (points[0] as BeadPoint).hz) return [0, 0]
  const { henries, parallelOhm } = beadBelow(bead, share)
  const x = 2 * Math.PI * hz * henries
  const square = parallelOhm ** 2 + x ** 2
  return [(parallelOhm * x ** 2) / square, (parallelOhm ** 2 * x) / square]
}

/** Inductance in H the signal meets: from the reactance at the first frequency to what R ∥ L makes of it, over its shares. */
export function beadSpanH({ points, share }: Bead): Span {
  const { hz, reactanceOhm } = points[0] as BeadPoint
  const least = (share.least * reactanceOhm.least) / (2 * Math.PI * hz)
  return { least, most: beadBelow({ points, share }, share.most).henries }
}

/** First and last frequency that are known, Hz. */
export const beadRangeHz = ({ points }: Bead): Span => ({
  least: points[0]?.hz ?? Number.POSITIVE_INFINITY,
  most: points.at(-1)?.hz ?? 0,
})

/** As the signal meets it: the inductance that stands for it says at which share of what was entered it is. */
export function beadCoil(bead: Bead) {
  const { henries } = beadBelow(bead, 1)
  return {
    dcrOhm: 0,
    parallelF: 0,
    parallelOhm: Number.POSITIVE_INFINITY,
    bead: (ofH: number, hz: number) => beadImpedance(bead, ofH / henries, hz),
  }
}

/** A bead as a part of a circuit. */
export const beadPart = (bead: Bead, share: number): SeriesPart => ({
  ...NO_SERIES,
  impedance: (hz) => beadImpedance(bead, share, hz),
})
