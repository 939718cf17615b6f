/**
 * A second integrator for surges, sharing nothing with the app's: nodal equations, second-order backward differences with
 * steps that double as the pulse slows down, the suppressor's straight pieces settled by trying. Real parts only: every
 * element is a resistor, a capacitor, a coil or the suppressor, between two nodes; node 0 is chassis.
 */

export type Element =
  | { readonly is: 'R'; readonly a: number; readonly b: number; readonly ohm: number }
  | { readonly is: 'C'; readonly a: number; readonly b: number; readonly farads: number }
  | { readonly is: 'L'; readonly a: number; readonly b: number; readonly henries: number; readonly ohm: number }

export type Clamp = {
  readonly node: number
  readonly breakdownV: number
  readonly ohm: number
  readonly bidirectional: boolean
}

export type Circuit = {
  readonly nodes: number
  readonly elements: readonly Element[]
  readonly clamp: Clamp | undefined
  /** the generator: volts behind a resistance into a node, or amperes into it */
  readonly feed: { readonly node: number; readonly ohm: number; readonly volts: (sec: number) => number }
}

export type Plan = {
  /** first step, and how many steps of one length before it may double */
  readonly firstSec: number
  readonly mostSec: number
  readonly endSec: number
}

const LEAK_SIE = 1e-7
const FORWARD = { dropV: 1, ohm: 0.02 }
/** Steps of one length before the next doubling. */
const EACH = 24

type Piece = { readonly sie: number; readonly amps: number; readonly holds: (volts: number) => boolean }

function piecesOf(clamp: Clamp): readonly Piece[] {
  const lowV = clamp.bidirectional ? clamp.breakdownV : FORWARD.dropV
  const lowOhm = clamp.bidirectional ? clamp.ohm : FORWARD.ohm
  return [
    { sie: LEAK_SIE, amps: 0, holds: (v) => v <= clamp.breakdownV && v >= -lowV },
    { sie: LEAK_SIE + 1 / clamp.ohm, amps: -clamp.breakdownV / clamp.ohm, holds: (v) => v > clamp.breakdownV },
    { sie: LEAK_SIE + 1 / lowOhm, amps: lowV / lowOhm, holds: (v) => v < -lowV },
  ]
}

/** G·x + E·x' = b over node volts and coil amperes. */
type System = { readonly size: number; readonly g: number[][]; readonly e: number[][] }

function systemOf({ nodes, elements, feed }: Circuit): System {
  const coils = elements.filter((each) => each.is === 'L')
  const size = nodes + coils.length
  const zeros = () => Array.from({ length: size }, () => Array.from({ length: size }, () => 0))
  const [g, e] = [zeros(), zeros()]
  const stamp = (m: number[][], a: number, b: number, value: number) => {
    const put = (r: number, c: number, by: number) => {
      const row = m[r - 1]
      if (r > 0 && c > 0 && row) row[c - 1] = (row[c - 1] ?? 0) + by
    }
    put(a, a, value)
    put(b, b, value)
    put(a, b, -value)
    put(b, a, -value)
  }
  let coil = nodes
  for (const each of elements) {
    if (each.is === 'R') stamp(g, each.a, each.b, 1 / each.ohm)
    else if (each.is === 'C') stamp(e, each.a, each.b, each.farads)
    else {
      // volts(a) − volts(b) = R·i + L·i'
      for (const [node, sign] of [[each.a, 1] as const, [each.b, -1] as const]) {
        const [row, own] = [g[node - 1], g[coil]]
        if (node > 0 && row) row[coil] = sign
        if (node > 0 && own) own[node - 1] = -sign
      }
      const [own, store] = [g[coil], e[coil]]
      if (own) own[coil] = each.ohm
      if (store) store[coil] = each.henries
      coil += 1
    }
  }
  const row = g[feed.node - 1]
  if (row && Number.isFinite(feed.ohm)) row[feed.node - 1] = (row[feed.node - 1] ?? 0) + 1 / feed.ohm
  return { size, g, e }
}

function inverse(m: readonly (readonly number[])[]): number[][] {
  const n = m.length
  const a = m.map((row, r) => [...row, ...Array.from({ length: n }, (_, c) => (c === r ? 1 : 0))])
  for (let p = 0; p < n; p++) {
    let best = p
    for (let r = p; r < n; r++) if (Math.abs(a[r]?.[p] ?? 0) > Math.abs(a[best]?.[p] ?? 0)) best = r
    const held = a[p]
    a[p] = a[best] ?? []
    a[best] = held ?? []
    const top = a[p]?.[p] ?? 0
    if (top === 0) throw new RangeError('a node is tied to nothing')
    a[p] = (a[p] ?? []).map((x) => x / top)
    for (let r = 0; r < n; r++) {
      const share = a[r]?.[p] ?? 0
      if (r === p || share === 0) continue
      a[r] = (a[r] ?? []).map((x, c) => x - share * (a[p]?.[c] ?? 0))
    }
  }
  return a.map((row) => row.slice(n))
}

export type Seen = {
  /** largest magnitude of each node, node 1 first */
  readonly peakV: readonly number[]
  /** time and power of the suppressor */
  readonly sec: readonly number[]
  readonly watts: readonly number[]
}

/** Runs the pulse from the steady state in which every node rests under the feed's volts at time 0 with no drive. */
export function stepThrough(circuit: Circuit, restFeedV: number, plan: Plan): Seen {
  const { size, g, e } = systemOf(circuit)
  const pieces = circuit.clamp ? piecesOf(circuit.clamp) : [{ sie: 0, amps: 0, holds: () => true }]
  const at = (circuit.clamp?.node ?? 1) - 1
  const feedRow = circuit.feed.node - 1
  const perFeed = Number.isFinite(circuit.feed.ohm) ? 1 / circuit.feed.ohm : 1
  const withPiece = (m: number[][], piece: Piece) =>
    m.map((row, r) => row.map((x, c) => x + (r === at && c === at ? piece.sie : 0)))
  const rest = inverse(withPiece(g, pieces[0] ?? { sie: 0, amps: 0, holds: () => true }))
  let now = rest.map((row) => (row[feedRow] ?? 0) * restFeedV * perFeed)
  let before = now
  const solved = new Map<string, number[][]>()
  const solverOf = (piece: number, h: number, weight: number): number[][] => {
    const key = `${piece} ${h} ${weight}`
    const known = solved.get(key)
    if (known) return known
    const m = withPiece(g, pieces[piece] ?? { sie: 0, amps: 0, holds: () => true }).map((row, r) =>
      row.map((x, c) => x + ((e[r]?.[c] ?? 0) * weight) / h),
    )
    const made = inverse(m)
    solved.set(key, made)
    return made
  }
  const peakV = Array.from({ length: circuit.nodes }, (_, i) => Math.abs(now[i] ?? 0))
  const [secs, watts]: [number[], number[]] = [[0], [0]]
  let [t, h, taken, piece, last] = [0, plan.firstSec, 0, 0, plan.firstSec]
  while (t < plan.endSec) {
    const ratio = h / last
    const isFirst = t === 0
    // second order: (1+2r)/(1+r)·x₁ − (1+r)·x₀ + r²/(1+r)·x₋₁
    const weight = isFirst ? 1 : (1 + 2 * ratio) / (1 + ratio)
    const [w0, w1] = isFirst ? [1, 0] : [1 + ratio, (ratio * ratio) / (1 + ratio)]
    const held = now.map((x, i) => w0 * x - w1 * (before[i] ?? 0))
    const drive = (restFeedV + circuit.feed.volts(t + h)) * perFeed
    const right = e.map((row, r) => {
      let sum = r === feedRow ? drive : 0
      for (let c = 0; c < size; c++) sum += ((row[c] ?? 0) * (held[c] ?? 0)) / h
      return sum
    })
    let next = now
    let settled = piece
    for (let tries = 0; tries < 4; tries++) {
      const law = pieces[settled]
      if (!law) break
      const inv = solverOf(settled, h, weight)
      next = inv.map((row) => {
        let sum = 0
        for (let c = 0; c < size; c++) sum += (row[c] ?? 0) * ((right[c] ?? 0) - (c === at ? law.amps : 0))
        return sum
      })
      const volts = next[at] ?? 0
      if (law.holds(volts)) break
      settled = pieces.findIndex((other) => other.holds(volts))
    }
    piece = settled
    before = now
    now = next
    last = h
    t += h
    const law = pieces[piece]
    for (let i = 0; i < circuit.nodes; i++) peakV[i] = Math.max(peakV[i] ?? 0, Math.abs(now[i] ?? 0))
    if (circuit.clamp && law) {
      const volts = now[at] ?? 0
      secs.push(t)
      watts.push(Math.abs(volts * (law.sie * volts + law.amps)))
    }
    taken += 1
    if (taken >= EACH && 2 * h <= plan.mostSec) {
      h *= 2
      taken = 0
    }
  }
  return { peakV, sec: secs, watts }
}
