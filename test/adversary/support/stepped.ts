/**
 * A second integrator for surges, sharing nothing with the app's: nodal equations, each step a trapezoid and a second-order
 * backward difference in one (stiff parts die out, a ring loses a hundred-thousandth a turn), steps that double as the
 * pulse slows down, the suppressor's straight pieces settled by trying. Every element is a resistor, a capacitor, a coil
 * or the suppressor, between two nodes; node 0 is chassis.
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

/** 2 − √2: both halves of a step then share one matrix. */
const GAMMA = 2 - Math.SQRT2

/** Runs the pulse from the steady state in which every node rests under the feed's volts with no drive. */
export function stepThrough(circuit: Circuit, restFeedV: number, plan: Plan): Seen {
  const { size, g, e } = systemOf(circuit)
  const open: Piece = { sie: 0, amps: 0, holds: () => true }
  const pieces = circuit.clamp ? piecesOf(circuit.clamp) : [open]
  const at = (circuit.clamp?.node ?? 1) - 1
  const feedRow = circuit.feed.node - 1
  const perFeed = Number.isFinite(circuit.feed.ohm) ? 1 / circuit.feed.ohm : 1
  const pieceOf = (index: number): Piece => pieces[index] ?? open
  const withPiece = (index: number) =>
    g.map((row, r) => row.map((x, c) => x + (r === at && c === at ? pieceOf(index).sie : 0)))
  const laws = pieces.map((_, index) => withPiece(index))
  const times = (m: readonly (readonly number[])[], x: readonly number[]) =>
    m.map((row) => {
      let sum = 0
      for (let c = 0; c < size; c++) sum += (row[c] ?? 0) * (x[c] ?? 0)
      return sum
    })
  const solved = new Map<string, number[][]>()
  const solverOf = (piece: number, h: number): number[][] => {
    const key = `${piece} ${h}`
    const known = solved.get(key)
    if (known) return known
    const m = (laws[piece] ?? g).map((row, r) => row.map((x, c) => (e[r]?.[c] ?? 0) + (GAMMA / 2) * h * x))
    const made = inverse(m)
    solved.set(key, made)
    return made
  }
  const driveAt = (sec: number) => (restFeedV + circuit.feed.volts(sec)) * perFeed
  /** b − G·x with the junction in a piece: what charges the parts that store */
  const flowOf = (x: readonly number[], piece: number, drive: number) =>
    times(laws[piece] ?? g, x).map((sum, r) => (r === feedRow ? drive : 0) - sum - (r === at ? pieceOf(piece).amps : 0))
  /** (E + γh/2·G)·x = stored + γh/2·b, the piece settled by trying */
  const settle = (
    stored: readonly number[],
    drive: number,
    h: number,
    from: number,
  ): { x: number[]; piece: number } => {
    let [x, piece] = [[] as number[], from]
    for (let tries = 0; tries < 4; tries++) {
      const right = stored.map(
        (sum, r) => sum + (GAMMA / 2) * h * ((r === feedRow ? drive : 0) - (r === at ? pieceOf(piece).amps : 0)),
      )
      x = times(solverOf(piece, h), right)
      const volts = x[at] ?? 0
      if (pieceOf(piece).holds(volts)) break
      piece = pieces.findIndex((other) => other.holds(volts))
    }
    return { x, piece }
  }
  let now = inverse(laws[0] ?? g).map((row) => (row[feedRow] ?? 0) * restFeedV * perFeed)
  let [t, h, taken, piece] = [0, plan.firstSec, 0, 0]
  const peakV = Array.from({ length: circuit.nodes }, (_, i) => Math.abs(now[i] ?? 0))
  const [secs, watts]: [number[], number[]] = [[0], [0]]
  const see = (x: readonly number[]) => {
    for (let i = 0; i < circuit.nodes; i++) peakV[i] = Math.max(peakV[i] ?? 0, Math.abs(x[i] ?? 0))
  }
  while (t < plan.endSec) {
    const [stored, flow] = [times(e, now), flowOf(now, piece, driveAt(t))]
    const middle = settle(
      stored.map((sum, r) => sum + (GAMMA / 2) * h * (flow[r] ?? 0)),
      driveAt(t + GAMMA * h),
      h,
      piece,
    )
    const share = 1 / (GAMMA * (2 - GAMMA))
    const between = times(e, middle.x).map((sum, r) => share * (sum - (1 - GAMMA) ** 2 * (stored[r] ?? 0)))
    const end = settle(between, driveAt(t + h), h, middle.piece)
    now = end.x
    piece = end.piece
    t += h
    see(middle.x)
    see(now)
    if (circuit.clamp) {
      const volts = now[at] ?? 0
      secs.push(t)
      watts.push(Math.abs(volts * (pieceOf(piece).sie * volts + pieceOf(piece).amps)))
    }
    taken += 1
    if (taken >= EACH && 2 * h <= plan.mostSec) {
      h *= 2
      taken = 0
    }
  }
  return { peakV, sec: secs, watts }
}
