/**
 * Insertion loss of a filter between arbitrary complex terminations, by chain matrices.
 *
 *   IL = 20·log10 |V_load without / V_load with|, positive = attenuation
 *      = 20·log10 |[(A+ZbC) + (B+Zb(A+D−2))·YL + C·Zs + (D+ZbC)·Zs·YL] / [(1+ZbC)(1+Zs·YL)]|
 *
 * A, B, C, D: cascade of series Z (B+=A·Z, D+=C·Z) and shunt Y (A+=B·Y, C+=D·Y), source side first.
 * Zb = Rb + jωLb is the bond every shunt part shares. It is connected series–series with the filter, so it adds to
 * each entry of the filter's Z-matrix; with AD − BC = 1 that gives the form above without dividing by C.
 * Source: general form from any network text (Paul, from memory); bond form derived; both checked against ngspice.
 */
import { type FilterCircuit, type NoiseLoad, type NoiseSource, sourceImpedance } from './circuit.ts'

const STEPS: Readonly<Record<FilterCircuit['topology'], Uint8Array>> = {
  C: Uint8Array.of(1),
  L: Uint8Array.of(2),
  LC: Uint8Array.of(2, 1),
  CL: Uint8Array.of(1, 2),
  PI: Uint8Array.of(1, 2, 3),
  T: Uint8Array.of(2, 1, 4),
}
const CHOKE_STEP = 5
const CROSS_STEP = 6
const DAMPER_STEP = 7

/** Beside the last capacitor, or before the load where there is none. */
function withBeside(steps: readonly number[], beside: readonly number[]): readonly number[] {
  const shunt = steps.findLastIndex((step) => step === 1 || step === 3)
  const at = shunt < 0 ? steps.length : shunt + 1
  return [...steps.slice(0, at), ...beside, ...steps.slice(at)]
}

/** Without a capacitor there is nothing to damp. */
function withDamper(steps: readonly number[], beside: readonly number[]): readonly number[] {
  const isDamped = steps.includes(1)
  return withBeside(steps, isDamped ? [DAMPER_STEP, ...beside] : beside)
}

type StepsByTopology = Partial<Record<FilterCircuit['topology'], Uint8Array>>
/** By what stands beside the filter: made when they are first asked for. */
const BESIDE: readonly StepsByTopology[] = Array.from({ length: 12 }, () => ({}))

function stepsOf(circuit: FilterCircuit): Uint8Array {
  const { topology, choke, cross, damper } = circuit
  if (choke === undefined && cross === undefined && damper === undefined) return STEPS[topology]
  const chokeAt = choke === undefined ? 0 : choke.side === 'source' ? 1 : 2
  const beside = (damper === undefined ? 0 : 1) + (cross === undefined ? 0 : 2) + 4 * chokeAt
  const made = BESIDE[beside] as StepsByTopology
  const steps = made[topology] ?? Uint8Array.from(stepsBeside(circuit))
  made[topology] = steps
  return steps
}

function stepsBeside({ topology, choke, cross, damper }: FilterCircuit): readonly number[] {
  const steps = [...STEPS[topology]]
  const crossed = cross === undefined ? [] : [CROSS_STEP]
  const inner = damper === undefined ? withBeside(steps, crossed) : withDamper(steps, crossed)
  if (choke === undefined) return inner
  return choke.side === 'source' ? [CHOKE_STEP, ...inner] : [...inner, CHOKE_STEP]
}

/** A lossless part exactly at resonance would divide by zero; the floor keeps the figure finite (over 280 dB). */
const FLOOR = 1e-15
const DB_PER_NEPER_HALF = 10 / Math.LN10

/** Complex terminations at each frequency: source impedance and load admittance. */
export type Terminations = {
  readonly sourceReOhm: Float64Array
  readonly sourceImOhm: Float64Array
  readonly loadReSie: Float64Array
  readonly loadImSie: Float64Array
}

/** A, B, C, D of the cascade at one frequency, real and imaginary part of each: allocated once. */
const abcd = new Float64Array(8)

/** The cascade without the bond at frequency number i, source side first, left in `abcd`. A number handed over would be allocated. */
function cascade(circuit: FilterCircuit, steps: Uint8Array, hz: Float64Array, i: number): void {
  const { shunt1, shunt2, series1, series2, choke, cross, damper = shunt1 } = circuit
  const chokePart = choke?.part ?? series1
  const crossPart = cross ?? shunt1
  const w = 2 * Math.PI * (hz[i] as number)
  let aRe = 1
  let aIm = 0
  let bRe = 0
  let bIm = 0
  let cRe = 0
  let cIm = 0
  let dRe = 1
  let dIm = 0
  for (let s = 0; s < steps.length; s++) {
    const step = steps[s]
    if (step === 2 || step === 4 || step === CHOKE_STEP) {
      const part = step === 2 ? series1 : step === 4 ? series2 : chokePart
      // Z = Rdc + jωL / (1 − ω²LCp + jωL/Rp)
      const x = w * part.inductanceH
      const nRe = floored(1 - w * x * part.parallelF)
      const nIm = x / part.parallelOhm
      const n2 = nRe * nRe + nIm * nIm
      let zRe = part.dcrOhm + (x * nIm) / n2
      let zIm = (x * nRe) / n2
      if (part.impedance !== undefined) [zRe, zIm] = part.impedance(hz[i] as number) as [number, number]
      bRe += aRe * zRe - aIm * zIm
      bIm += aRe * zIm + aIm * zRe
      dRe += cRe * zRe - cIm * zIm
      dIm += cRe * zIm + cIm * zRe
    } else {
      const part = step === 1 ? shunt1 : step === CROSS_STEP ? crossPart : step === DAMPER_STEP ? damper : shunt2
      // Y = jωC / (1 − ω²C·ESL + jωC·ESR)
      const y = w * part.capacitanceF
      const nRe = floored(1 - w * y * part.eslH)
      const nIm = y * part.esrOhm
      const n2 = nRe * nRe + nIm * nIm
      const yRe = (y * nIm) / n2
      const yIm = (y * nRe) / n2
      aRe += bRe * yRe - bIm * yIm
      aIm += bRe * yIm + bIm * yRe
      cRe += dRe * yRe - dIm * yIm
      cIm += dRe * yIm + dIm * yRe
    }
  }
  abcd[0] = aRe
  abcd[1] = aIm
  abcd[2] = bRe
  abcd[3] = bIm
  abcd[4] = cRe
  abcd[5] = cIm
  abcd[6] = dRe
  abcd[7] = dIm
}

/**
 * The chain matrix of a filter at a frequency (> 0) with the bond in it, its denominator cleared: A, B, C, D and the
 * denominator, each as real and imaginary part. AD − BC = 1 before it is cleared: every part is reciprocal.
 */
export function chainMatrixAt(circuit: FilterCircuit, hertz: number): readonly (readonly [re: number, im: number])[] {
  one[0] = hertz
  cascade(circuit, stepsOf(circuit), one, 0)
  const [aRe = 0, aIm = 0, bRe = 0, bIm = 0, cRe = 0, cIm = 0, dRe = 0, dIm = 0] = abcd
  const bondIm = 2 * Math.PI * hertz * circuit.bondH
  const { bondOhm } = circuit
  const [pRe, pIm] = [bondOhm * cRe - bondIm * cIm, bondOhm * cIm + bondIm * cRe]
  const [tRe, tIm] = [aRe + dRe - 2, aIm + dIm]
  const [qRe, qIm] = [bondOhm * tRe - bondIm * tIm, bondOhm * tIm + bondIm * tRe]
  return [
    [aRe + pRe, aIm + pIm],
    [bRe + qRe, bIm + qIm],
    [cRe, cIm],
    [dRe + pRe, dIm + pIm],
    [1 + pRe, pIm],
  ]
}

/**
 * Fills `outDb` with the insertion loss at each of `hz`. Allocates nothing.
 * Valid for finite non-negative element values and hz > 0 (0 is allowed when the load has no parallel inductor).
 */
export function chainLossInto(circuit: FilterCircuit, hz: Float64Array, ends: Terminations, outDb: Float64Array): void {
  const { bondOhm, bondH } = circuit
  const steps = stepsOf(circuit)
  for (let i = 0; i < hz.length; i++) {
    cascade(circuit, steps, hz, i)
    const w = 2 * Math.PI * (hz[i] as number)
    const aRe = abcd[0] as number
    const aIm = abcd[1] as number
    const bRe = abcd[2] as number
    const bIm = abcd[3] as number
    const cRe = abcd[4] as number
    const cIm = abcd[5] as number
    const dRe = abcd[6] as number
    const dIm = abcd[7] as number
    const bondIm = w * bondH
    // P = Zb·C, Q = Zb·(A + D − 2)
    const pRe = bondOhm * cRe - bondIm * cIm
    const pIm = bondOhm * cIm + bondIm * cRe
    const tRe = aRe + dRe - 2
    const tIm = aIm + dIm
    const qRe = bondOhm * tRe - bondIm * tIm
    const qIm = bondOhm * tIm + bondIm * tRe
    const zsRe = ends.sourceReOhm[i] as number
    const zsIm = ends.sourceImOhm[i] as number
    const ylRe = ends.loadReSie[i] as number
    const ylIm = ends.loadImSie[i] as number
    // Zs·YL
    const zyRe = zsRe * ylRe - zsIm * ylIm
    const zyIm = zsRe * ylIm + zsIm * ylRe
    const apRe = aRe + pRe
    const apIm = aIm + pIm
    const bqRe = bRe + qRe
    const bqIm = bIm + qIm
    const dpRe = dRe + pRe
    const dpIm = dIm + pIm
    const numRe = apRe + bqRe * ylRe - bqIm * ylIm + cRe * zsRe - cIm * zsIm + dpRe * zyRe - dpIm * zyIm
    const numIm = apIm + bqRe * ylIm + bqIm * ylRe + cRe * zsIm + cIm * zsRe + dpRe * zyIm + dpIm * zyRe
    const eRe = 1 + pRe
    const fRe = 1 + zyRe
    const denRe = eRe * fRe - pIm * zyIm
    const denIm = eRe * zyIm + pIm * fRe
    const num2 = numRe * numRe + numIm * numIm
    const den2 = denRe * denRe + denIm * denIm
    outDb[i] = DB_PER_NEPER_HALF * (Math.log(Math.max(num2, FLOOR * FLOOR)) - Math.log(Math.max(den2, FLOOR * FLOOR)))
  }
}

function floored(value: number): number {
  return Math.abs(value) < FLOOR ? FLOOR : value
}

/** Scratch the size of the last sweep: terminations are filled in place, so a sweep allocates only when it grows. */
let scratch = makeTerminations(0)

function makeTerminations(count: number): Terminations {
  return {
    sourceReOhm: new Float64Array(count),
    sourceImOhm: new Float64Array(count),
    loadReSie: new Float64Array(count),
    loadImSie: new Float64Array(count),
  }
}

/**
 * Insertion loss at each frequency for a source R + jωL and a load R ∥ C ∥ L.
 * `outDb` must be as long as `hz`. No allocation per point (the scratch grows once to the longest sweep).
 */
export function sweepLossInto(
  circuit: FilterCircuit,
  source: NoiseSource,
  load: NoiseLoad,
  hz: Float64Array,
  outDb: Float64Array,
): void {
  if (scratch.sourceReOhm.length < hz.length) scratch = makeTerminations(hz.length)
  const { sourceReOhm, sourceImOhm, loadReSie, loadImSie } = scratch
  for (let i = 0; i < hz.length; i++) {
    const w = 2 * Math.PI * (hz[i] as number)
    sourceReOhm[i] = source.ohm
    sourceImOhm[i] = w * source.seriesH
    if (source.shuntF) [sourceReOhm[i], sourceImOhm[i]] = sourceImpedance(source, w) as [number, number]
    loadReSie[i] = 1 / load.ohm
    const inductive = w * load.parallelH
    loadImSie[i] = w * load.parallelF - (inductive > 0 ? 1 / inductive : 0)
  }
  chainLossInto(circuit, hz, scratch, outDb)
}

const one = new Float64Array(1)
const oneOut = new Float64Array(1)

/** Insertion loss in dB at one frequency; the same solver as the sweep. */
export function lossDb(circuit: FilterCircuit, source: NoiseSource, load: NoiseLoad, frequencyHz: number): number {
  one[0] = frequencyHz
  sweepLossInto(circuit, source, load, one, oneOut)
  return oneOut[0] as number
}

/** `points` frequencies from `fromHz` to `toHz`, evenly spaced in log frequency, ends exact. */
export function logGrid(fromHz: number, toHz: number, points: number): Float64Array {
  const grid = new Float64Array(points)
  const step = Math.log(toHz / fromHz) / (points - 1)
  for (let i = 0; i < points; i++) grid[i] = fromHz * Math.exp(step * i)
  grid[0] = fromHz
  grid[points - 1] = toHz
  return grid
}
