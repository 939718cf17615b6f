/**
 * Overshoot of a step through coils and capacitance of third and fourth order, where one damping ratio does not say it:
 * a coil on either side of the capacitance, or a resistor and a capacitor in series across it.
 *
 *   H = (1 + sτ)·(Rs + Rl)/D,  D = (1 + sτ)·(Z1 + Z2) + Z1·Z2·(sC·(1 + sτ) + sCd)
 *   Z1 = Rs + sL1, Z2 = Rl + sL2, τ = R·Cd; into a high impedance H = (1 + sτ)/((1 + sτ) + Z1·(sC·(1 + sτ) + sCd))
 *   y(t) = 1 + Σ r·e^(pt) over the roots p of D, r = N(p)/(p·D'(p))
 * Valid for positive resistances and parts ≥ 0. Source: derived; checked against published step responses and a simulator.
 */
import type { Span } from './inductor.ts'

export type StepNetwork = {
  readonly sourceOhm: number
  readonly loadOhm: number
  readonly source1H: number
  readonly load2H: number
  readonly farads: number
  readonly damperF: number
  readonly damperOhm: number
}

/** Overshoot of a second-order section of that damping: e^(−πζ/√(1 − ζ²)). */
export const overshootOf = (damping: number): number =>
  Math.exp((-Math.PI * damping) / Math.sqrt(1 - damping * damping))

type Poly = readonly number[]

const times = (a: Poly, b: Poly): number[] => {
  const out = new Array<number>(a.length + b.length - 1).fill(0)
  a.forEach((x, i) => {
    b.forEach((y, j) => {
      out[i + j] = (out[i + j] as number) + x * y
    })
  })
  return out
}
const plus = (a: Poly, b: Poly): number[] =>
  Array.from({ length: Math.max(a.length, b.length) }, (_, i) => (a[i] ?? 0) + (b[i] ?? 0))

function denominator({ sourceOhm, loadOhm, source1H, load2H, farads, damperF, damperOhm }: StepNetwork): Poly {
  const lag = [1, damperOhm * damperF]
  const shunt = plus(times([0, farads], lag), [0, damperF])
  const z1 = [sourceOhm, source1H]
  if (!Number.isFinite(loadOhm)) return plus(lag, times(z1, shunt))
  const z2 = [loadOhm, load2H]
  const all = plus(times(lag, plus(z1, z2)), times(times(z1, z2), shunt))
  return all.map((x) => x / (sourceOhm + loadOhm))
}

const MOST_ROUNDS = 60
const SETTLED = 1e-13
/** A root this near the real axis is on it: rounding leaves 1e-12 at most, two roots a hair apart are 3e-4 off it. */
const REAL_WITHIN = 1e-9

type Root = { re: number; im: number }

/** Roots of a polynomial of leading coefficient 1, lowest power first: closed below the fourth order, which is the usual case. */
function rootsOf(poly: Poly): Root[] {
  const [c0 = 0, c1 = 0, c2 = 0] = poly
  if (poly.length === 3) return pairOf(c1, c0)
  if (poly.length > 4) return simultaneously(poly)
  const real = realRoot(poly)
  // p³ + c2·p² + c1·p + c0 = (p − r)·(p² + (c2 + r)·p + (c1 + r·(c2 + r)))
  return [{ re: real, im: 0 }, ...pairOf(c2 + real, c1 + real * (c2 + real))]
}

function pairOf(linear: number, constant: number): Root[] {
  const inside = (linear * linear) / 4 - constant
  const middle = -linear / 2
  if (inside < 0) return [1, -1].map((sign) => ({ re: middle, im: sign * Math.sqrt(-inside) }))
  const far = middle - Math.sqrt(inside)
  return [
    { re: far, im: 0 },
    { re: far === 0 ? 0 : constant / far, im: 0 },
  ]
}

/** A negative root of a cubic with positive coefficients: between −(1 + the largest) and 0, by halving and Newton's step. */
function realRoot([c0 = 0, c1 = 0, c2 = 0]: Poly): number {
  let low = -1 - Math.max(c0, c1, c2)
  let high = 0
  let x = -Math.cbrt(c0)
  for (let k = 0; k < MOST_ROUNDS; k++) {
    const value = c0 + x * (c1 + x * (c2 + x))
    if (value < 0) low = x
    else high = x
    const next = x - value / (c1 + x * (2 * c2 + 3 * x))
    const moved = next > low && next < high ? next : (low + high) / 2
    if (Math.abs(moved - x) <= SETTLED * Math.abs(x)) return moved
    x = moved
  }
  return x
}

function simultaneously(poly: Poly): Root[] {
  const n = poly.length - 1
  const roots: Root[] = Array.from({ length: n }, (_, k) => ({
    re: Math.cos(0.4 + (2 * Math.PI * k) / n),
    im: Math.sin(0.4 + (2 * Math.PI * k) / n),
  }))
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let moved = 0
    for (const [k, root] of roots.entries()) {
      let [re, im] = polyAt(poly, root.re, root.im)
      for (const [j, other] of roots.entries()) {
        if (j === k) continue
        const [dRe, dIm] = [root.re - other.re, root.im - other.im]
        const square = dRe * dRe + dIm * dIm || Number.MIN_VALUE
        const quotient = (re * dRe + im * dIm) / square
        im = (im * dRe - re * dIm) / square
        re = quotient
      }
      root.re -= re
      root.im -= im
      moved = Math.max(moved, Math.hypot(re, im) / Math.hypot(root.re, root.im))
    }
    if (moved < SETTLED) break
  }
  // off the axis by rounding alone a decay would be taken for one half of a ring: counted twice, or not at all
  return roots.map(({ re, im }) => ({ re, im: Math.abs(im) <= REAL_WITHIN * Math.abs(re) ? 0 : im }))
}

function polyAt(poly: Poly, re: number, im: number): readonly [number, number] {
  let vRe = 0
  let vIm = 0
  for (let i = poly.length - 1; i >= 0; i--) {
    const next = vRe * re - vIm * im + (poly[i] as number)
    vIm = vRe * im + vIm * re
    vRe = next
  }
  return [vRe, vIm]
}

type Mode = { readonly re: number; readonly im: number; readonly rRe: number; readonly rIm: number }

/** Largest share by which a step goes over its end; 0 where it never does. */
export function stepOvershoot(network: StepNetwork): number {
  const full = denominator(network)
  const degree = full.findLastIndex((x) => x > 0)
  if (degree < 2) return 0
  const lead = full[degree] as number
  // s = ω0·p, so that the roots lie near the unit circle.
  const w0 = lead ** (-1 / degree)
  const poly = full.slice(0, degree + 1).map((x, i) => x * w0 ** i)
  const lag = network.damperOhm * network.damperF * w0
  // Two equal roots have no residues of their own: a hair apart they add up to the same response.
  const apart = poly.map((x, i) => (i === 1 ? x * (1 + 1e-7) : x))
  const slope = apart.slice(1).map((x, i) => x * (i + 1))
  const modes = rootsOf(apart).map(({ re, im }): Mode => {
    const [sRe, sIm] = polyAt(slope, re, im)
    const [bRe, bIm] = [re * sRe - im * sIm, re * sIm + im * sRe]
    const square = bRe * bRe + bIm * bIm
    const [nRe, nIm] = [1 + lag * re, lag * im]
    return { re, im, rRe: (nRe * bRe + nIm * bIm) / square, rIm: (nIm * bRe - nRe * bIm) / square }
  })
  // Decays alone, and nothing in the numerator: the step only rises.
  if (lag === 0 && modes.every(({ im }) => im === 0)) return 0
  const over = (t: number): number => {
    let sum = 0
    for (const { re, im, rRe, rIm } of modes) {
      // a ring and its mirror image together
      if (im === 0) sum += rRe * Math.exp(re * t)
      else if (im > 0) sum += 2 * Math.exp(re * t) * (rRe * Math.cos(im * t) - rIm * Math.sin(im * t))
    }
    return sum
  }
  return Math.max(0, highest(over, timesOf(modes)))
}

const POINTS = 16
/** Half turns of a ring that are always looked at, further ones where it may come out late, and how closely those. */
const TURNS = 3
const MOST_LATE_TURNS = 24
const PER_LATE_TURN = 4
/** What a ring does that has less than this share left is no concern. */
const LATE_SHARE = 0.01

/**
 * Times worth a look: three half turns of every ring, and around the time constant of every decay. A ring that a slower
 * decay holds down at first goes over when that has died away: there its later turns count.
 */
function timesOf(modes: readonly Mode[]): readonly number[] {
  let slowest = Number.POSITIVE_INFINITY
  for (const { re, im } of modes) if (im === 0) slowest = Math.min(slowest, Math.abs(re))
  return modes
    .flatMap(({ re, im }) =>
      im > 1e-6 * Math.abs(re)
        ? ringTimes(im, slowest < im ? lateTimes(re, im) : 0)
        : im >= 0 || Math.abs(im) < 1e-6 * Math.abs(re)
          ? Array.from({ length: POINTS }, (_, i) => (0.1 * 1.4 ** i) / Math.abs(re))
          : [],
    )
    .toSorted((a, b) => a - b)
}

const ringTimes = (im: number, late: number): number[] =>
  Array.from(
    { length: POINTS + late },
    (_, i) => ((i < POINTS ? 0.2 + (2.8 * i) / POINTS : TURNS + (i - POINTS) / PER_LATE_TURN) * Math.PI) / im,
  )

/** How many times after the first three half turns, until hardly anything of the ring is left. */
function lateTimes(re: number, im: number): number {
  const turns = Math.min(TURNS + MOST_LATE_TURNS, (Math.log(LATE_SHARE) * im) / (re * Math.PI))
  return Math.max(0, Math.ceil(PER_LATE_TURN * (turns - TURNS)))
}

const GOLDEN = (Math.sqrt(5) - 1) / 2
const REFINE = 9

function highest(over: (t: number) => number, at: readonly number[]): number {
  const values = at.map(over)
  const top = values.reduce((best, value, i) => (value > (values[best] as number) ? i : best), 0)
  let [low, high] = [at[top - 1] ?? 0, at[top + 1] ?? (at[top] as number)]
  let best = values[top] as number
  for (let k = 0; k < REFINE; k++) {
    const [p, q] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
    const [yp, yq] = [over(p), over(q)]
    best = Math.max(best, yp, yq)
    if (yp > yq) high = q
    else low = p
  }
  return best
}

/** Coil before the capacitance, coil behind it, capacitance, and the two parts of a damper, each over its span. */
export type StepBox = {
  readonly sourceOhm: number
  readonly loadOhm: number
  readonly source1H: Span
  readonly load2H: Span
  readonly farads: Span
  readonly damperF: Span
  readonly damperOhm: Span
}

const AXES = ['source1H', 'load2H', 'farads', 'damperF', 'damperOhm'] as const
const SWEEPS = 2
const LINE_STEPS = 6

/** The largest overshoot in the box: its corners and its middle, then on from the worst along one part after the other. */
export function worstOvershoot(box: StepBox): number {
  const open = AXES.filter((key) => box[key].most > box[key].least)
  const share = (key: (typeof AXES)[number], at: number): number => {
    const { least, most } = box[key]
    return most <= least ? least : least <= 0 ? at * most : least * (most / least) ** at
  }
  const valueAt = (at: readonly number[]): number => {
    const one = (key: (typeof AXES)[number]) => share(key, at[open.indexOf(key)] ?? 0)
    return stepOvershoot({
      sourceOhm: box.sourceOhm,
      loadOhm: box.loadOhm,
      source1H: one('source1H'),
      load2H: one('load2H'),
      farads: one('farads'),
      damperF: one('damperF'),
      damperOhm: one('damperOhm'),
    })
  }
  const starts = Array.from({ length: 1 << open.length }, (_, k) => open.map((_key, i) => (k >> i) & 1))
  let best = { at: open.map(() => 0.5), value: valueAt(open.map(() => 0.5)) }
  for (const at of starts) {
    const value = valueAt(at)
    if (value > best.value) best = { at, value }
  }
  for (let sweep = 0; sweep < SWEEPS; sweep++)
    for (const axis of open.keys())
      for (let step = 0; step <= LINE_STEPS; step++) {
        const at = best.at.map((x, i) => (i === axis ? step / LINE_STEPS : x))
        const value = valueAt(at)
        if (value > best.value) best = { at, value }
      }
  return best.value
}
