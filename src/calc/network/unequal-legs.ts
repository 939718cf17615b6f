/**
 * A pair whose legs are not alike, driven alike: how much of the common mode appears between its wires.
 *
 * Each leg has the source and the load of a leg, its own ladder of parts, the plate and its bond shared with the other, and
 * where there is one a line-to-line capacitor beside the last capacitor and the coupled windings of a choke. Unknown are
 * the volts of both loads and of the plate; every other quantity is linear in them. From the load to the source:
 *   W = Vo + Zc·YL·Vo (choke on the load side), U = W + z·J, J = YL·Vo, J' = J + Yx·(U − U of the other)
 *   V = Vp + A·(U − Vp) + B·J', I = C·(U − Vp) + D·J', E = V + (Zs + Zc)·I, Vp = Zb·Σ(I − J')
 * Valid for finite values ≥ 0, frequencies > 0. Source: derived; checked against node admittances of the whole pair.
 */
import type { CoupledChoke } from './choke.ts'
import {
  type FilterCircuit,
  type NoiseLoad,
  type NoiseSource,
  type SeriesPart,
  type ShuntPart,
  sourceImpedance,
} from './circuit.ts'

export type UnequalLegs = {
  /** parts of each leg; the bond is the physical one, of the first, and so is the line-to-line capacitor, halved as one leg meets it */
  readonly first: FilterCircuit
  readonly second: FilterCircuit
  readonly choke?: { readonly windings: CoupledChoke; readonly side: 'source' | 'load' } | undefined
  /** of one leg */
  readonly source: NoiseSource
  readonly load: NoiseLoad
}

type Z = readonly [re: number, im: number]
type Stage = 'shunt1' | 'shunt2' | 'series1' | 'series2'

const BEFORE: Readonly<Record<FilterCircuit['topology'], readonly Stage[]>> = {
  C: ['shunt1'],
  L: ['series1'],
  LC: ['series1', 'shunt1'],
  CL: ['shunt1'],
  PI: ['shunt1', 'series1', 'shunt2'],
  T: ['series1', 'shunt1'],
}
/** What stands behind the last capacitor: always in series. */
const BEHIND: Readonly<Partial<Record<FilterCircuit['topology'], 'series1' | 'series2'>>> = {
  CL: 'series1',
  T: 'series2',
}

/** A lossless part exactly at resonance must not divide by nothing. */
const FLOOR = 1e-15
const floored = (x: number): number => (Math.abs(x) < FLOOR ? FLOOR : x)

const ONE: Z = [1, 0]
/** Most of a row is this very one: what nothing is made of is not multiplied out. */
const NONE: Z = [0, 0]
const times = (p: Z, q: Z): Z =>
  p === NONE || q === NONE ? NONE : [p[0] * q[0] - p[1] * q[1], p[0] * q[1] + p[1] * q[0]]
const plus = (p: Z, q: Z): Z => (p === NONE ? q : q === NONE ? p : [p[0] + q[0], p[1] + q[1]])
const over = ([re, im]: Z): Z => {
  const square = re * re + im * im
  return [re / square, -im / square]
}

function seriesOhm({ inductanceH, dcrOhm, parallelOhm, parallelF }: SeriesPart, w: number): Z {
  const x = w * inductanceH
  const [re, im] = over([floored(1 - w * x * parallelF), x / parallelOhm])
  return [dcrOhm - x * im, x * re]
}

function shuntSie({ capacitanceF, esrOhm, eslH }: ShuntPart, w: number): Z {
  const y = w * capacitanceF
  const [re, im] = over([floored(1 - w * y * eslH), y * esrOhm])
  return [-y * im, y * re]
}

type Chain = { readonly a: Z; readonly b: Z; readonly c: Z; readonly d: Z }

function chainOf(circuit: FilterCircuit, w: number): Chain {
  let chain: Chain = { a: ONE, b: NONE, c: NONE, d: ONE }
  for (const stage of BEFORE[circuit.topology]) {
    const { a, b, c, d } = chain
    if (stage === 'series1' || stage === 'series2') {
      const z = seriesOhm(circuit[stage], w)
      chain = { a, b: plus(b, times(a, z)), c, d: plus(d, times(c, z)) }
    } else {
      const y = shuntSie(circuit[stage], w)
      chain = { a: plus(a, times(b, y)), b, c: plus(c, times(d, y)), d }
    }
  }
  return chain
}

/** What a quantity is of the volts of the first load, of the second, and of the plate. */
type Row = readonly [Z, Z, Z]
const sum = (p: Row, q: Row): Row => [plus(p[0], q[0]), plus(p[1], q[1]), plus(p[2], q[2])]
const scaled = (by: Z, row: Row): Row => [times(by, row[0]), times(by, row[1]), times(by, row[2])]
const MINUS: Z = [-1, 0]
const minus = (p: Row, q: Row): Row => sum(p, scaled(MINUS, q))
const PLATE: Row = [NONE, NONE, ONE]

/** Impedances of the coupled windings: own of the first, of the second, mutual. Each coil its capacitance across, its resistance before. */
function chokeOhms({ firstH, secondH, mutualH, ohm, acrossF }: CoupledChoke, w: number): readonly [Z, Z, Z] {
  const b = w * w * acrossF
  const det = firstH * secondH - mutualH * mutualH
  // (Zcoil⁻¹ + jωC)⁻¹ = jω·(L − ω²C·det)/Δ
  const delta = floored((1 - b * firstH) * (1 - b * secondH) - (b * mutualH) ** 2)
  const own = (henries: number): Z => [ohm, (w * (henries - b * det)) / delta]
  return [own(firstH), own(secondH), [0, (w * mutualH) / delta]]
}

/** |V between the wires at the load / common mode at the load without the filter|; 0 for legs alike. */
export function legConversionRatio({ first, second, choke, source, load }: UnequalLegs, hz: number): number {
  const w = 2 * Math.PI * hz
  const inductive = w * load.parallelH
  const yl: Z = [1 / load.ohm, w * load.parallelF - (inductive > 0 ? 1 / inductive : 0)]
  const zs = sourceImpedance(source, w)
  const [z11, z22, z12] = choke ? chokeOhms(choke.windings, w) : [NONE, NONE, NONE]
  const isBehind = choke?.side === 'load'
  const yx: Z = first.cross ? scaledHalf(shuntSie(first.cross, w)) : NONE

  const volts: readonly [Row, Row] = [
    [ONE, NONE, NONE],
    [NONE, ONE, NONE],
  ]
  const out = volts.map((v) => scaled(yl, v)) as [Row, Row]
  const through = (rows: readonly [Row, Row]): [Row, Row] => [
    sum(scaled(z11, rows[0]), scaled(z12, rows[1])),
    sum(scaled(z12, rows[0]), scaled(z22, rows[1])),
  ]
  const dropped = isBehind ? through(out) : undefined
  const legs = [first, second] as const
  const at = legs.map((leg, i) => {
    const behind = BEHIND[leg.topology]
    const base = dropped ? sum(volts[i] as Row, dropped[i] as Row) : (volts[i] as Row)
    return behind === undefined ? base : sum(base, scaled(seriesOhm(leg[behind], w), out[i] as Row))
  }) as [Row, Row]
  const across = scaled(yx, minus(at[0], at[1]))
  const into: [Row, Row] = [sum(out[0], across), minus(out[1], across)]
  const front = legs.map((leg, i) => {
    const { a, b, c, d } = chainOf(leg, w)
    const above = minus(at[i] as Row, PLATE)
    const current = sum(scaled(c, above), scaled(d, into[i] as Row))
    return { volts: sum(PLATE, sum(scaled(a, above), scaled(b, into[i] as Row))), current }
  })
  const currents = front.map(({ current }) => current) as [Row, Row]
  const before = isBehind || !choke ? undefined : through(currents)
  const driven = front.map((one, i) => {
    const row = sum(one.volts, scaled(zs, one.current))
    return before ? sum(row, before[i] as Row) : row
  }) as [Row, Row]
  const zb: Z = [first.bondOhm, w * first.bondH]
  const leaving = sum(minus(currents[0], into[0]), minus(currents[1], into[1]))
  const plate = minus(PLATE, scaled(zb, leaving))
  const [v1, v2] = solved(driven[0], driven[1], plate)
  // 1 V drives both; without the filter a load has 1/(1 + Zs·YL).
  const bare = plus(ONE, times(zs, yl))
  return Math.hypot(v1[0] - v2[0], v1[1] - v2[1]) * Math.hypot(...bare)
}

/** Half of a line-to-line capacitor has twice its admittance: between the wires stands half of that. */
const scaledHalf = ([re, im]: Z): Z => [re / 2, im / 2]

/** First two unknowns of driven·x = 1, driven'·x = 1, plate·x = 0, by Cramer's rule. */
function solved(p: Row, q: Row, r: Row): readonly [Z, Z] {
  const cross = (i: 0 | 1 | 2, k: 0 | 1 | 2, m: Row, n: Row): Z =>
    plus(times(m[i], n[k]), times(MINUS, times(m[k], n[i])))
  const det = plus(
    times(p[0], cross(1, 2, q, r)),
    plus(times(MINUS, times(p[1], cross(0, 2, q, r))), times(p[2], cross(0, 1, q, r))),
  )
  const one = over(det)
  // right-hand side (1, 1, 0)
  const x = plus(cross(1, 2, q, r), times(MINUS, cross(1, 2, p, r)))
  const y = plus(times(MINUS, cross(0, 2, q, r)), cross(0, 2, p, r))
  return [times(one, x), times(one, y)]
}
