/**
 * The chain matrix with its denominators cleared: numerator N and denominator D of the loss as polynomials in one size x.
 *
 *   loss = 20·log10 |N/D|,  N = (1 + Zs·Ys)·(A' + B'·YL) + Zs·(C' + D'·YL),  D = (Q + Zb·C)·(1 + Zs·Y0)
 *   A' = A + Zb·C, B' = B + Zb·(A + D − 2Q), C' = C, D' = D + Zb·C
 *   shunt part  [q 0; jb q],  b = ωC, q = 1 − b·ωESL + jb·ESR
 *   series part [d z; 0 d],   X = ωL, d = 1 − X·ωCp + jX/Rp, z = Rdc·d + jX; of a bead R and X by themselves, d = 1
 *   damper      [q 0; jb q],  b = ωC, q = 1 − b·ωESL + jb·R, R a part of its own
 *
 * Q is the product of every q and d, so that N and D stay finite at every resonance. Both are affine in each b and X, in the
 * ωESL of each capacitor and in the reactance of Zb.
 * Ys and YL include capacitance that stands at the two nodes; Y0 is what loads the source without the filter.
 * Valid for finite values ≥ 0 and frequencies ≥ 0. Source: chain matrices, shared bond in series–series (derived).
 */

/** Highest power of the size: the two capacitors of a Pi grow together. */
export const MAX_DEGREE = 2
/** Numbers in one polynomial pair: real and imaginary parts of N by power, then of D. */
export const PAIR_LENGTH = 4 * (MAX_DEGREE + 1)
const D_AT = 2 * (MAX_DEGREE + 1)

/**
 * `of`: a choke has a winding of its own, a capacitor from line to line half the lead of one to chassis; resistance or
 * reactance of a bead stand in ohms; a damper has its resistor, in ohms, as the part `ohmPart`.
 */
export type Stage = {
  readonly isSeries: boolean
  readonly part: number
  readonly of: 'own' | 'choke' | 'cross' | 'ohm' | 'reactance' | 'damper'
  readonly ohmPart: number
  /** the inductance of its lead as a part of its own; −1 = the one that is fixed */
  readonly leadPart: number
}

/** Stages from source to load; `part` and the nodes are places in the list of part values, −1 = none. */
export type Wiring = {
  readonly stages: readonly Stage[]
  readonly sourceNode: number
  readonly loadNode: number
  /** true where that capacitance loads the line without the filter as well */
  readonly sourceNodeInBare: boolean
  readonly loadNodeInBare: boolean
  /** the inductance of the bond as a part of its own; −1 = the one that is fixed */
  readonly bondPart: number
}

/** Everything fixed at one frequency. Ohms and siemens. */
export type Fixed = {
  /** rad/s: what a part in ohms was multiplied by like the others */
  readonly w: number
  readonly zsRe: number
  readonly zsIm: number
  readonly ylRe: number
  readonly ylIm: number
  readonly zbRe: number
  readonly zbIm: number
  readonly esrOhm: number
  /** ω·ESL */
  readonly eslOhm: number
  readonly dcrOhm: number
  /** ω·Cp and 1/Rp of the inductor */
  readonly coilSie: number
  readonly coilLossSie: number
  /** winding and ω·C across each winding of a choke; 0 where there is none */
  readonly chokeOhm: number
  readonly chokeSie: number
}

const ROW = 2 * (MAX_DEGREE + 1)
const A = 0
const B = ROW
const C = 2 * ROW
const D = 3 * ROW
const Q = 4 * ROW
const chain = new Float64Array(5 * ROW)

/** row `to` ← to·(p0 + p1·x) + from·(r0 + r1·x), highest power first so that it can stand in place. */
function blend(
  to: number,
  degree: number,
  p0Re: number,
  p0Im: number,
  p1Re: number,
  p1Im: number,
  from: number,
  r0Re: number,
  r0Im: number,
  r1Re: number,
  r1Im: number,
): void {
  for (let k = degree; k >= 0; k--) {
    const t = to + 2 * k
    const tRe = chain[t] as number
    const tIm = chain[t + 1] as number
    let re = tRe * p0Re - tIm * p0Im
    let im = tRe * p0Im + tIm * p0Re
    if (k > 0) {
      const bRe = chain[t - 2] as number
      const bIm = chain[t - 1] as number
      re += bRe * p1Re - bIm * p1Im
      im += bRe * p1Im + bIm * p1Re
    }
    if (from >= 0) {
      const f = from + 2 * k
      const fRe = chain[f] as number
      const fIm = chain[f + 1] as number
      re += fRe * r0Re - fIm * r0Im
      im += fRe * r0Im + fIm * r0Re
      if (k > 0) {
        const gRe = chain[f - 2] as number
        const gIm = chain[f - 1] as number
        re += gRe * r1Re - gIm * r1Im
        im += gRe * r1Im + gIm * r1Re
      }
    }
    chain[t] = re
    chain[t + 1] = im
  }
}

/**
 * Fills `out` with N and D as polynomials in x, where each part is `base + slope·x` (b or X in siemens or ohms).
 * Returns the degree: how many parts grow with x. Node capacitances must not grow. Allocates nothing.
 */
export function clearedInto(
  wiring: Wiring,
  fixed: Fixed,
  base: Float64Array,
  slope: Float64Array,
  out: Float64Array,
): number {
  chain.fill(0)
  chain[A] = 1
  chain[D] = 1
  chain[Q] = 1
  let degree = 0
  const { stages } = wiring
  for (let s = 0; s < stages.length; s++) {
    const { isSeries, part, of, ohmPart, leadPart } = stages[s] as Stage
    const v0 = base[part] as number
    const v1 = slope[part] as number
    if (v1 !== 0) degree++
    if (of === 'ohm' || of === 'reactance') {
      const ohm = inOhms(v0, fixed.w)
      const zRe = of === 'ohm' ? ohm : 0
      const zIm = of === 'ohm' ? 0 : ohm
      blend(B, degree, 1, 0, 0, 0, A, zRe, zIm, 0, 0)
      blend(D, degree, 1, 0, 0, 0, C, zRe, zIm, 0, 0)
    } else if (isSeries) {
      const isChoke = of === 'choke'
      const dcrOhm = isChoke ? fixed.chokeOhm : fixed.dcrOhm
      const coilSie = isChoke ? fixed.chokeSie : fixed.coilSie
      const coilLossSie = isChoke ? 0 : fixed.coilLossSie
      const d0Re = 1 - v0 * coilSie
      const d0Im = v0 * coilLossSie
      const d1Re = -v1 * coilSie
      const d1Im = v1 * coilLossSie
      const z0Re = dcrOhm * d0Re
      const z0Im = dcrOhm * d0Im + v0
      const z1Re = dcrOhm * d1Re
      const z1Im = dcrOhm * d1Im + v1
      blend(B, degree, d0Re, d0Im, d1Re, d1Im, A, z0Re, z0Im, z1Re, z1Im)
      blend(D, degree, d0Re, d0Im, d1Re, d1Im, C, z0Re, z0Im, z1Re, z1Im)
      blend(A, degree, d0Re, d0Im, d1Re, d1Im, -1, 0, 0, 0, 0)
      blend(C, degree, d0Re, d0Im, d1Re, d1Im, -1, 0, 0, 0, 0)
      blend(Q, degree, d0Re, d0Im, d1Re, d1Im, -1, 0, 0, 0, 0)
    } else {
      const lead = of === 'cross' ? 0.5 : 1
      const esrOhm = of === 'damper' ? inOhms(base[ohmPart] as number, fixed.w) : lead * fixed.esrOhm
      const eslOhm = lead * (leadPart < 0 ? fixed.eslOhm : (base[leadPart] as number))
      const q0Re = 1 - v0 * eslOhm
      const q0Im = v0 * esrOhm
      const q1Re = -v1 * eslOhm
      const q1Im = v1 * esrOhm
      blend(A, degree, q0Re, q0Im, q1Re, q1Im, B, 0, v0, 0, v1)
      blend(C, degree, q0Re, q0Im, q1Re, q1Im, D, 0, v0, 0, v1)
      blend(B, degree, q0Re, q0Im, q1Re, q1Im, -1, 0, 0, 0, 0)
      blend(D, degree, q0Re, q0Im, q1Re, q1Im, -1, 0, 0, 0, 0)
      blend(Q, degree, q0Re, q0Im, q1Re, q1Im, -1, 0, 0, 0, 0)
    }
  }
  terminate(wiring, fixed, base, degree, out)
  return degree
}

const inOhms = (value: number, w: number): number => (w === 0 ? 0 : value / w)

/** Puts bond, source and load around the cascade that stands in `chain`. */
function terminate(wiring: Wiring, fixed: Fixed, base: Float64Array, degree: number, out: Float64Array): void {
  const { zsRe, zsIm, zbRe } = fixed
  const zbIm = wiring.bondPart < 0 ? fixed.zbIm : (base[wiring.bondPart] as number)
  const atSource = wiring.sourceNode < 0 ? 0 : (base[wiring.sourceNode] as number)
  const atLoad = wiring.loadNode < 0 ? 0 : (base[wiring.loadNode] as number)
  const ylRe = fixed.ylRe
  const ylIm = fixed.ylIm + atLoad
  // 1 + Zs·Ys
  const nRe = 1 - zsIm * atSource
  const nIm = zsRe * atSource
  const bareIm = fixed.ylIm + (wiring.sourceNodeInBare ? atSource : 0) + (wiring.loadNodeInBare ? atLoad : 0)
  const fRe = 1 + zsRe * ylRe - zsIm * bareIm
  const fIm = zsRe * bareIm + zsIm * ylRe
  for (let k = 0; k <= MAX_DEGREE; k++) {
    const i = 2 * k
    if (k > degree) {
      out[i] = 0
      out[i + 1] = 0
      out[D_AT + i] = 0
      out[D_AT + i + 1] = 0
      continue
    }
    const cRe = chain[C + i] as number
    const cIm = chain[C + i + 1] as number
    const pRe = zbRe * cRe - zbIm * cIm
    const pIm = zbRe * cIm + zbIm * cRe
    const aRe = (chain[A + i] as number) + pRe
    const aIm = (chain[A + i + 1] as number) + pIm
    const dRe = (chain[D + i] as number) + pRe
    const dIm = (chain[D + i + 1] as number) + pIm
    const qRe = chain[Q + i] as number
    const qIm = chain[Q + i + 1] as number
    const tRe = (chain[A + i] as number) + (chain[D + i] as number) - 2 * qRe
    const tIm = (chain[A + i + 1] as number) + (chain[D + i + 1] as number) - 2 * qIm
    const bRe = (chain[B + i] as number) + zbRe * tRe - zbIm * tIm
    const bIm = (chain[B + i + 1] as number) + zbRe * tIm + zbIm * tRe
    // A' + B'·YL and C' + D'·YL
    const uRe = aRe + bRe * ylRe - bIm * ylIm
    const uIm = aIm + bRe * ylIm + bIm * ylRe
    const vRe = cRe + dRe * ylRe - dIm * ylIm
    const vIm = cIm + dRe * ylIm + dIm * ylRe
    out[i] = nRe * uRe - nIm * uIm + zsRe * vRe - zsIm * vIm
    out[i + 1] = nRe * uIm + nIm * uRe + zsRe * vIm + zsIm * vRe
    const eRe = qRe + pRe
    const eIm = qIm + pIm
    out[D_AT + i] = eRe * fRe - eIm * fIm
    out[D_AT + i + 1] = eRe * fIm + eIm * fRe
  }
}
