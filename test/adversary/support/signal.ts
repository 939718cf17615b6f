/**
 * What the signal says to what was fitted, from the definitions: edges of one pole, least impedance, reflections, loss and
 * phase by the nodes, damping. A pair is halved at its middle: half of each end, what lies between the wires twice.
 * Every margin in dB of the quantity, negative = over the limit.
 */
import { type Fitted, placesOf } from './box.ts'
import { CAPACITORS, COILS, capacitorShare, hasChoke, lineOf, type WindowFacts } from './facts.ts'
import type { Limit, LineFacts } from './lines.ts'
import { admittance, begin, CHASSIS, impedance, voltsAt } from './nodes.ts'
import { beadBetween, coil, partsOf, winding } from './noise.ts'
import { dampingLike, overshootOf } from './step.ts'

export type Margin = { readonly db: number; readonly what: string }

const LN_9 = Math.log(9)
const NONE: Margin = { db: Number.POSITIVE_INFINITY, what: 'nothing' }

const room = (limit: number, value: number): number => 20 * Math.log10(limit / value)
export const worst = (margins: readonly Margin[]): Margin => margins.reduce((a, b) => (b.db < a.db ? b : a), NONE)

export const ohmOf = (facts: WindowFacts): number | undefined => facts.signalOhm ?? lineOf(facts).ohm
const bitSecOf = (facts: WindowFacts): number | undefined => {
  const rate = facts.bitRateHz ?? lineOf(facts).bitHz
  return rate === undefined ? undefined : 1 / rate
}

/** Whether the line carries something a coil can hurt. */
export const hasSignal = ({ limit }: LineFacts): boolean => limit.is !== 'supply'

/** A line between its own ends, whose coil works between equal resistances. */
const isMatched = ({ is }: Limit): boolean => is === 'own-edge' || is === 'mask'

/** Highest useful frequency: as entered, as published, else 0.35 over an edge of 0.3 bit. */
export function usefulHzOf(facts: WindowFacts): number | undefined {
  const line = lineOf(facts)
  const said = facts.usefulHz ?? line.usefulHz
  if (said !== undefined) return said
  const bitSec = bitSecOf(facts)
  return line.limit.is === 'own-edge' && bitSec !== undefined ? 0.35 / (0.3 * bitSec) : undefined
}

/** Noise that shares the signal's way inside its band: no low-pass filter tells the two apart. */
export function isInBand(facts: WindowFacts): boolean {
  const line = lineOf(facts)
  const useful = usefulHzOf(facts)
  const isApart = (line.isPair || hasChoke(facts)) && facts.mode === 'common'
  if (!hasSignal(line) || useful === undefined || isApart) return false
  return facts.needs.some(({ hz, db }) => hz <= useful && db > 0)
}

/** Of a damping branch, at its most; it needs a capacitor to damp. */
const dampedF = ({ damper, ...facts }: WindowFacts, { topology }: Pick<Fitted, 'topology'>): number =>
  damper === undefined || CAPACITORS[topology] === 0 ? 0 : damper.farads * capacitorShare({ ...facts, damper }).most

/** Inductance a signal meets in a coil, or in what a bead measures at its first frequency as R beside L. */
function henriesOf({ bead }: WindowFacts, fitted: Fitted): readonly [number, number] {
  if (bead === undefined) return [fitted.l1H, fitted.l2H]
  const [hz = 1, r = 0, x = 1] = [bead.hz[0], bead.ohm[0], bead.reactanceOhm[0]]
  const each = (r * r + x * x) / (2 * Math.PI * hz * x)
  const coils = COILS[fitted.topology]
  return [coils > 0 ? fitted.x1Share * each : 0, coils > 1 ? fitted.x2Share * each : 0]
}

/** Farads of each leg that the filter adds at its most. */
export const mostLegF = (facts: WindowFacts, fitted: Pick<Fitted, 'topology'>, markedF: number): number =>
  CAPACITORS[fitted.topology] * markedF * capacitorShare(facts).most + dampedF(facts, fitted)

/** All the signal sees: between the wires of a pair, to chassis on a single line; a line-to-line capacitor at a share of its mark. */
function seenF(facts: WindowFacts, legF: number, suppressorF: number, crossShare = capacitorShare(facts).most): number {
  return lineOf(facts).isPair
    ? facts.crossF * crossShare + facts.existingF + (legF + suppressorF) / 2
    : facts.existingF + legF + suppressorF
}

/** The user's own limits on what the signal sees; `lacks` where a figure for one of them is missing. */
export function ownMargin(facts: WindowFacts, legF: number): Margin & { readonly lacks?: string } {
  const farads = seenF(facts, legF, facts.suppressorF)
  const ohm = ohmOf(facts)
  const hz = usefulHzOf(facts)
  const said: Margin[] = []
  if (facts.ownCeilingF !== undefined) said.push({ what: 'own-ceiling', db: room(facts.ownCeilingF, farads) })
  if (facts.ownLossDb === undefined && facts.ownPhaseDeg === undefined) return worst(said)
  if (ohm === undefined || hz === undefined) return { ...worst(said), lacks: 'a figure for the limit entered' }
  if (facts.ownLossDb !== undefined) said.push({ what: 'own-loss', db: facts.ownLossDb - poleLossDb(hz, ohm, farads) })
  if (facts.ownPhaseDeg !== undefined)
    said.push({ what: 'own-phase', db: room(facts.ownPhaseDeg, polePhaseDeg(hz, ohm, farads)) })
  return worst(said)
}

const poleLossDb = (hz: number, ohm: number, farads: number): number =>
  10 * Math.log10(1 + (2 * Math.PI * hz * ohm * farads) ** 2)
const polePhaseDeg = (hz: number, ohm: number, farads: number): number =>
  (Math.atan(2 * Math.PI * hz * ohm * farads) * 180) / Math.PI

/** The capacitance alone against what the signal stands; undefined where a criterion or a figure for it is missing. */
export function capacitanceMargin(facts: WindowFacts, legF: number): Margin | undefined {
  const { limit } = lineOf(facts)
  const ohm = ohmOf(facts)
  const bitSec = bitSecOf(facts)
  const farads = seenF(facts, legF, facts.suppressorF)
  const hz = usefulHzOf(facts) ?? 0
  switch (limit.is) {
    case 'unknown':
    case 'supply':
      return undefined
    case 'terminal':
      return { what: 'terminal', db: room(1 / (2 * Math.PI * limit.toHz * farads), limit.leastOhm) }
    case 'crossing':
      if (bitSec === undefined) return undefined
      return { what: 'crossing', db: room(Math.min(limit.share * bitSec, limit.mostSec), (6 * farads) / limit.amps) }
    default:
  }
  if (ohm === undefined) return undefined
  switch (limit.is) {
    case 'edge': {
      const edgeSec = Math.hypot(facts.driverEdgeSec ?? limit.driverSec, LN_9 * ohm * farads)
      return { what: 'edge', db: room(limit.slowestSec, edgeSec) }
    }
    case 'own-edge':
      if (bitSec === undefined) return undefined
      return { what: 'own-edge', db: room(limit.share * bitSec, LN_9 * ohm * farads) }
    case 'recessive':
      if (bitSec === undefined) return undefined
      return { what: 'recessive', db: room(limit.share * bitSec, Math.log(4) * ohm * farads) }
    case 'rise':
      return { what: 'rise', db: room(limit.mostSec, Math.log(0.7 / 0.3) * ohm * farads) }
    case 'slow-edge':
      return { what: 'slow-edge', db: room(limit.mostSec, LN_9 * ohm * farads) }
    case 'loss':
      return { what: 'loss', db: limit.mostDb - poleLossDb(hz, ohm, farads) }
    case 'phase':
      return { what: 'phase', db: room(limit.mostDeg, polePhaseDeg(hz, ohm, farads)) }
    case 'mask':
      return bareMask(facts, limit, legF)
  }
}

/** A mask with nothing but capacitance in the port. */
function bareMask(facts: WindowFacts, limit: Extract<Limit, { is: 'mask' }>, legF: number): Margin {
  const ohm = ohmOf(facts)
  const farads = seenF(facts, legF, facts.suppressorF)
  if (ohm === undefined) return NONE
  return maskMargin(limit, 1, (at) => {
    begin(1)
    admittance(0, CHASSIS, 1 / (2 * ohm), 2 * Math.PI * at * farads)
  })
}

/** Against the figures of documents; without one there is no end to it. */
export function permittedMargin(facts: WindowFacts, legF: number): Margin {
  const { isPair, permittedBetweenF, permittedLegF, limit } = lineOf(facts)
  const onLegF = legF + facts.suppressorF + (isPair ? 0 : facts.existingF)
  return worst([
    limit.is === 'mask' && limit.cornerOhm !== undefined
      ? { ...bareMask(facts, { ...limit, againstOhm: limit.cornerOhm }, legF), what: 'permitted-corner' }
      : NONE,
    permittedBetweenF === undefined
      ? NONE
      : { what: 'permitted', db: room(permittedBetweenF, seenF(facts, legF, facts.suppressorF)) },
    permittedLegF === undefined ? NONE : { what: 'permitted-leg', db: room(permittedLegF, onLegF) },
  ])
}

/**
 * Return loss against the mask from every impedance the document names, halved with the port; `build` stands the port,
 * node 0 its front.
 */
function maskMargin(limit: Extract<Limit, { is: 'mask' }>, half: number, build: (hz: number) => void): Margin {
  let least = Number.POSITIVE_INFINITY
  for (const { fromHz, toHz, db } of limit.parts)
    for (let step = 0; step <= MASK_STEPS; step++) {
      const hz = step === MASK_STEPS ? toHz : fromHz * (toHz / fromHz) ** (step / MASK_STEPS)
      for (const namedOhm of limit.againstOhm) {
        build(hz)
        const [re, im] = voltsAt(0, 0, half * namedOhm, 0)
        const returned = -10 * Math.log10((2 * re - 1) ** 2 + (2 * im) ** 2)
        least = Math.min(least, returned - db(hz))
      }
    }
  return { what: 'mask', db: least }
}
const MASK_STEPS = 8

/** Where a signal meets what was fitted, each way round, and what stands at either end of it. */
export const signalPlaces = (facts: WindowFacts) =>
  placesOf(facts).filter(
    ({ existingAt, suppressorAt }) =>
      (existingAt !== 'nowhere' || facts.existingF === 0) && (suppressorAt !== 'nowhere' || facts.suppressorF === 0),
  )

/** Whether anything stands in series with the signal. */
export const isSeries = (facts: WindowFacts, { topology }: Pick<Fitted, 'topology'>): boolean =>
  COILS[topology] > 0 || hasChoke(facts)

/** Stands the half of a pair (or a single line) from the signal's source on, without its source; the last node's number. */
function build(facts: WindowFacts, fitted: Fitted, isReversed: boolean, loadOhm: number, hz: number): number {
  const w = 2 * Math.PI * hz
  const isPair = lineOf(facts).isPair
  const between = isPair ? 2 : 1
  const order = partsOf(facts, fitted)
  const last = COILS[fitted.topology] + (hasChoke(facts) ? 1 : 0)
  begin(last + 1)
  const step = isReversed ? -1 : 1
  let node = isReversed ? last : 0
  for (const part of order) {
    if (part === 'l1' || part === 'l2') {
      const share = part === 'l1' ? fitted.x1Share : fitted.x2Share
      if (facts.bead) beadBetween(node, node + step, facts.bead, w, [share, share])
      else coil(node, node + step, part === 'l1' ? fitted.l1H : fitted.l2H, facts, w)
      node += step
    } else if (part === 'damper') {
      impedance(node, CHASSIS, fitted.dampOhm, -1 / (w * fitted.dampF))
    } else if (part === 'choke') {
      // The half of a pair meets half the leakage; a single line both windings, in a row with its return.
      winding(node, node + step, fitted.leakageH / (isPair ? 2 : 1), facts, w, isPair ? 1 : 2)
      node += step
    } else if (part === 'cross') {
      const crossF = isPair ? 2 * facts.crossF * fitted.crossShare : 0
      if (crossF > 0) impedance(node, CHASSIS, facts.esrOhm / 2, (w * facts.eslH) / 2 - 1 / (w * crossF))
    } else {
      const farads = part === 'c1' ? fitted.c1F : fitted.c2F
      if (farads > 0) impedance(node, CHASSIS, facts.esrOhm, w * facts.eslH - 1 / (w * farads))
    }
  }
  const end = (place: Fitted['existingAt']) => ((place === 'load') === isReversed ? 0 : last)
  if (facts.suppressorF > 0)
    admittance(end(fitted.suppressorAt), CHASSIS, 0, w * facts.suppressorF * fitted.suppressorShare)
  if (facts.existingF > 0) admittance(end(fitted.existingAt), CHASSIS, 0, w * between * facts.existingF)
  admittance(last, CHASSIS, 1 / loadOhm, 0)
  return last
}

/** Everything a coil can do to the signal that is a failure; undefined where the resistance it works against is not known. */
export function coilMargin(facts: WindowFacts, fitted: Fitted, isReversed: boolean): Margin | undefined {
  const line = lineOf(facts)
  const { limit } = line
  if (!isSeries(facts, fitted) || !hasSignal(line)) return NONE
  const said: Margin[] = limit.is === 'terminal' ? [terminalMargin(facts, fitted, isReversed, limit)] : []
  const ohm = ohmOf(facts)
  if (ohm === undefined) return limit.is === 'terminal' ? worst(said) : undefined
  const half = line.isPair ? 0.5 : 1
  const sourceOhm = half * (isMatched(limit) ? 2 * ohm : ohm)
  const loadOhm = isMatched(limit) ? sourceOhm : Number.POSITIVE_INFINITY
  if (limit.is === 'own-edge') {
    const bitSec = bitSecOf(facts)
    if (bitSec === undefined) return undefined
    const [l1H, l2H] = henriesOf(facts, fitted)
    const ownSec = (LN_9 * (l1H + l2H + half * fitted.leakageH)) / (sourceOhm + loadOhm)
    said.push({ what: 'coil-edge', db: room(limit.share * bitSec, ownSec) })
  }
  if (limit.is === 'mask') {
    const stand = (hz: number): void => {
      build(facts, fitted, isReversed, loadOhm, hz)
    }
    said.push({ ...maskMargin(limit, half, stand), what: 'coil-mask' })
  }
  const hz = usefulHzOf(facts)
  const mostDb = Math.min(facts.ownLossDb ?? Number.POSITIVE_INFINITY, limit.is === 'loss' ? limit.mostDb : Infinity)
  const mostDeg = Math.min(
    facts.ownPhaseDeg ?? Number.POSITIVE_INFINITY,
    limit.is === 'phase' ? limit.mostDeg : Infinity,
  )
  if (hz !== undefined && Math.min(mostDb, mostDeg) < Number.POSITIVE_INFINITY) {
    const last = build(facts, fitted, isReversed, loadOhm, hz)
    const [re, im] = voltsAt(last, 0, sourceOhm, 0)
    const bare = isMatched(limit) ? 0.5 : 1
    said.push({ what: 'coil-loss', db: mostDb + 20 * Math.log10(Math.hypot(re, im) / bare) })
    said.push({ what: 'coil-phase', db: room(mostDeg, Math.abs((Math.atan2(im, re) * 180) / Math.PI)) })
  }
  return worst(said)
}

function terminalMargin(
  facts: WindowFacts,
  fitted: Fitted,
  isReversed: boolean,
  { leastOhm, fromHz, toHz }: Extract<Limit, { is: 'terminal' }>,
): Margin {
  let least = Number.POSITIVE_INFINITY
  const between = lineOf(facts).isPair ? 2 : 1
  for (let step = 0; step <= MASK_STEPS; step++) {
    build(facts, fitted, isReversed, Number.POSITIVE_INFINITY, fromHz * (toHz / fromHz) ** (step / MASK_STEPS))
    // Behind a known resistance the volts of the port tell its impedance: Z = R·V/(1 − V).
    const [re, im] = voltsAt(0, 0, leastOhm, 0)
    least = Math.min(least, (between * leastOhm * Math.hypot(re, im)) / Math.hypot(1 - re, im))
  }
  return { what: 'coil-terminal', db: room(least, leastOhm) }
}

export const LEAST_DAMPING = 0.7

/** Damping of the section all coils and everything the signal sees make; undefined where there is none to ring. */
export function dampingOf(facts: WindowFacts, fitted: Fitted): number | undefined {
  const line = lineOf(facts)
  const ohm = ohmOf(facts)
  const legs = line.isPair ? 2 : 1
  const [l1H, l2H] = henriesOf(facts, fitted)
  const henries = legs * (l1H + l2H) + fitted.leakageH
  const farads = seenF(facts, fitted.c1F + fitted.c2F, facts.suppressorF * fitted.suppressorShare, fitted.crossShare)
  if (ohm === undefined || henries === 0 || farads === 0 || !hasSignal(line)) return undefined
  // |1 + s·(L/(Rs + Rl) + C·Rs·Rl/(Rs + Rl)) + s²·L·C·Rl/(Rs + Rl)|
  const rs = isMatched(line.limit) ? 2 * ohm : ohm
  if (fitted.dampF > 0 || (isMatched(line.limit) && l2H > 0)) {
    const behindH = isMatched(line.limit) ? legs * l2H : 0
    const overshoot = overshootOf({
      sourceOhm: rs,
      loadOhm: isMatched(line.limit) ? rs : Number.POSITIVE_INFINITY,
      source1H: henries - behindH,
      load2H: behindH,
      farads,
      dampF: fitted.dampF / legs,
      dampOhm: legs * fitted.dampOhm,
    })
    // what steps of a sixtieth of a ring may be off by
    return dampingLike(overshoot) + 0.01
  }
  const [linear, square] = isMatched(line.limit)
    ? [henries / (2 * rs) + (farads * rs) / 2, (henries * farads) / 2]
    : [farads * rs, henries * farads]
  return linear / (2 * Math.sqrt(square))
}
