/** Random windows: what is asked as numbers, and the texts that ask it. The same seed and index give the same window. */
import { TOPOLOGIES } from '../../../src/calc/network/circuit.ts'
import type { Topology } from '../../../src/calc/types.ts'
import { hasConversion, worstConversionDb } from './conversion.ts'
import { type BeadFacts, CAPACITORS, hasChoke, type WindowFacts } from './facts.ts'
import { ceilingOf, drawing, lowest, noiseMargin } from './judge.ts'
import { ASKS_OHM, LINES, type LineFacts } from './lines.ts'
import { ohmOf, usefulHzOf } from './signal.ts'

type Texts = Readonly<Record<string, string>>
export type RandomWindow = {
  readonly facts: WindowFacts
  /** fields left empty, `facts` holding what is assumed for them */
  readonly empty: ReadonlySet<Emptiable>
  readonly texts: Texts
  readonly next: () => number
}

/** Kinds that seldom have a ceiling come seldom; supplies, with their rule books, more often. */
const KINDS: readonly string[] = Object.entries(LINES).flatMap(([id, { limit }]) =>
  Array.from({ length: limit.is === 'unknown' ? 1 : limit.is === 'supply' ? 6 : 4 }, () => id),
)

/** What is assumed for a field left empty. */
const ASSUMED = {
  inductanceH: 1e-6,
  suppressorF: 0,
  existingF: 0,
  eslH: 0,
  bondOhm: 0,
  bondH: 0,
  inductorParallelF: 0,
  chokeF: 0,
} as const
export type Emptiable = keyof typeof ASSUMED
const EMPTIABLE = Object.keys(ASSUMED) as readonly Emptiable[]

class Dice {
  readonly next: () => number
  constructor(seed: number) {
    this.next = drawing(seed)
  }
  readonly chance = (share: number): boolean => this.next() < share
  readonly between = (low: number, high: number): number => low + this.next() * (high - low)
  /** three digits, spread evenly over the decades */
  readonly log = (low: number, high: number): number => short(low * (high / low) ** this.next())
  readonly pick = <T>(from: readonly T[]): T => from[Math.floor(this.next() * from.length)] as T
  readonly maybe = <T>(share: number, some: () => T): T | undefined => (this.chance(share) ? some() : undefined)
}

const short = (value: number, digits = 3): number => Number(value.toPrecision(digits))

export function randomWindow(seed: number, index: number): RandomWindow {
  const dice = new Dice(Math.imul(seed, 2_654_435_761) + Math.imul(index + 1, 40_503))
  const lineKind = dice.pick(KINDS)
  const line = LINES[lineKind] as LineFacts
  const bare = surroundings(dice, lineKind, line)
  const drawn = dice.pick(TOPOLOGIES)
  const loaded = withLoad(dice, bare, drawn)
  // A choke that is to do it alone has nothing beside it.
  const topology = loaded.aimF === 0 ? 'C' : drawn
  const needed = withNeeds(dice, loaded.facts, topology, loaded.aimF)
  // The balance of beads and damping is not counted: the window says so.
  const isCounted = needed.bead === undefined && needed.damper === undefined
  const facts = isCounted && dice.chance(0.15) ? withBalance(dice, needed, topology, loaded.aimF) : needed
  const asked: WindowFacts = { ...facts, topology: dice.chance(0.6) ? topology : undefined }
  const empty = new Set(EMPTIABLE.filter(() => dice.chance(0.03)))
  for (const key of dice.chance(0.05) ? EMPTIABLE : []) if (dice.chance(0.3)) empty.add(key)
  const taken = { ...asked, ...Object.fromEntries([...empty].map((key) => [key, ASSUMED[key]])) }
  return { facts: taken, empty, texts: textsOf(taken, empty), next: dice.next }
}

function surroundings(dice: Dice, lineKind: string, line: LineFacts): WindowFacts {
  const [low, high] = line.ratesHz ?? [0, 0]
  const isSupply = line.limit.is === 'supply'
  const isOneSided = dice.chance(0.04)
  const tolLow = isOneSided ? 0 : short(dice.between(0.01, 0.2), 2)
  return {
    lineKind,
    topology: undefined,
    mode: dice.chance(0.65) ? 'common' : 'differential',
    needs: [],
    sourceOhm: Array.from({ length: 1 + Math.floor(dice.next() * 4) }, () =>
      dice.chance(0.03) ? 0 : dice.log(0.5, 1000),
    ),
    sourceH: dice.maybe(0.15, () => dice.log(1e-8, 1e-5)) ?? 0,
    loadOhm: dice.log(3, 20e3),
    loadF: dice.maybe(0.15, () => dice.log(1e-12, 1e-9)) ?? 0,
    loadH: dice.maybe(0.1, () => dice.log(1e-6, 1e-4)) ?? Number.POSITIVE_INFINITY,
    inductanceH: 1e-6,
    suppressorF: 0,
    existingF: 0,
    crossF: 0,
    bitRateHz: dice.maybe(high > 0 ? 0.98 : 0, () => dice.log(low, high)),
    driverEdgeSec:
      line.limit.is === 'edge' && dice.chance(0.3) ? short(line.limit.slowestSec * dice.between(0.3, 0.95)) : undefined,
    signalOhm: ASKS_OHM.has(lineKind)
      ? dice.maybe(0.95, () => dice.log(470, 10e3))
      : line.limit.is === 'terminal'
        ? dice.maybe(0.5, () => dice.log(20, 200))
        : dice.maybe(0.12, () => dice.log((line.ohm ?? 50) / 3, (line.ohm ?? 50) * 2)),
    ownCeilingF: undefined,
    usefulHz: dice.maybe(0.06, () => short((line.usefulHz ?? 1e6) * dice.between(0.2, 3))),
    ownLossDb: dice.maybe(line.limit.is === 'unknown' ? 0.4 : 0.06, () => short(dice.between(0.05, 3))),
    ownPhaseDeg: dice.maybe(line.limit.is === 'unknown' ? 0.2 : 0.05, () => short(dice.between(0.5, 30))),
    tolLow,
    tolHigh: isOneSided ? 1 : tolLow,
    temperature: short(dice.pick([0, 0.003, 0.15, dice.between(0, 0.25)]), 2),
    bias: short(dice.pick([0, 0.12, dice.between(0, 0.4)]), 2),
    decades: dice.pick([0, 2, short(dice.between(0, 5), 2)]),
    perDecade: short(dice.pick([0, 0.025, dice.between(0, 0.05)]), 2),
    esrOhm: dice.maybe(0.5, () => dice.log(1e-3, 0.1)) ?? 0,
    eslH: dice.maybe(0.6, () => dice.log(1e-11, dice.chance(0.3) ? 1e-8 : 2e-10)) ?? 0,
    dcrOhm: dice.maybe(0.4, () => dice.log(1e-3, 3)) ?? 0,
    inductorParallelOhm: dice.maybe(0.15, () => dice.log(100, 1e5)) ?? Number.POSITIVE_INFINITY,
    inductorParallelF: dice.maybe(0.6, () => dice.log(2e-13, 1e-11)) ?? 0,
    bondOhm: dice.maybe(0.6, () => dice.log(1e-4, 1e-2)) ?? 0,
    bondH: dice.maybe(0.5, () => dice.log(1e-11, 1e-9)) ?? 0,
    navyRule: isSupply ? dice.chance(0.5) : dice.chance(0.01),
    loadW: isSupply ? dice.maybe(0.85, () => dice.log(50, 2e4)) : undefined,
    chassisLimitA: isSupply ? dice.maybe(0.6, () => dice.log(1e-3, 1)) : undefined,
    maxBuildableF: dice.maybe(isSupply ? 0.5 : 0.05, () => dice.log(1e-9, 1e-6)),
    ...elements(dice, isSupply),
    ...choke(dice, isSupply || line.isPair ? 0.3 : 0.04),
  }
}

type ElementFacts = Pick<WindowFacts, 'lostFrac' | 'bead' | 'damper' | 'dielectric'>

/** What the parts are beside ideal: current in the coil, a bead in its place, damping, a dielectric by name. */
function elements(dice: Dice, isSupply: boolean): ElementFacts {
  return {
    lostFrac: dice.maybe(isSupply ? 0.5 : 0.1, () => short(dice.between(0.02, 0.6), 2)) ?? 0,
    bead: dice.maybe(0.1, () => bead(dice)),
    damper: dice.maybe(0.1, () => ({ ohm: dice.log(1, 1000), farads: dice.log(1e-11, 1e-7) })),
    dielectric: dice.maybe(0.15, () => ({
      id: dice.pick(['c0g', 'x7r', 'x7r'] as const),
      voltageFrac: short(dice.next(), 2),
      caseSize: dice.pick(['filter-part', 'large-chip', 'small-chip'] as const),
    })),
  }
}

/** R, L and C side by side, read at three or four frequencies that hold nearly all the noise. */
function bead(dice: Dice): BeadFacts {
  const [parallelOhm, henries, farads] = [dice.log(50, 2000), dice.log(1e-7, 5e-6), dice.log(3e-13, 4e-12)]
  const count = dice.chance(0.5) ? 3 : 4
  const first = dice.log(1e4, 3e6)
  const last = dice.log(3e8, 2.2e9)
  const hz = Array.from({ length: count }, (_, i) => short(first * (last / first) ** (i / (count - 1))))
  const read = hz.map((one) => {
    const w = 2 * Math.PI * one
    const [g, b] = [1 / parallelOhm, w * farads - 1 / (w * henries)]
    return [g / (g * g + b * b), -b / (g * g + b * b)] as const
  })
  return {
    hz,
    ohm: read.map(([r]) => short(r)),
    reactanceOhm: read.map(([, x]) => short(x)),
    lostFrac: dice.maybe(0.4, () => short(dice.between(0.05, 0.9), 2)) ?? 0,
  }
}

/** A common-mode choke, now and then around one wire. */
function choke(dice: Dice, share: number): ChokeFacts {
  const chokeH = dice.maybe(share, () => dice.log(1e-7, 1e-2)) ?? 0
  return {
    chokeH,
    chokeLeakageH: dice.maybe(chokeH > 0 ? 0.6 : 0, () => short(chokeH * 10 ** -dice.between(1.2, 2.8))),
    chokeOhm: dice.maybe(0.4, () => dice.log(1e-3, 1)) ?? 0,
    chokeF: dice.maybe(0.6, () => dice.log(2e-13, 2e-11)) ?? 0,
    chokeSide: dice.chance(0.3) ? 'load' : 'source',
    isOneWire: chokeH > 0 && dice.chance(0.04),
    chokeMismatch: dice.maybe(0.4, () => short(dice.between(0.001, 0.02), 2)) ?? 0,
    mostConversionDb: undefined,
  }
}
type ChokeFacts = Pick<
  WindowFacts,
  'chokeH' | 'chokeLeakageH' | 'chokeOhm' | 'chokeF' | 'chokeSide' | 'isOneWire' | 'chokeMismatch' | 'mostConversionDb'
>

/** A damping capacitor larger than what fits the contact is refused: none then. */
const thatFits = (facts: WindowFacts): WindowFacts => {
  const { damper, maxBuildableF } = facts
  const isTooLarge = damper !== undefined && maxBuildableF !== undefined && damper.farads > maxBuildableF
  return isTooLarge ? { ...facts, damper: undefined } : facts
}

/** What is on the line, a coil to go with it, and a marked capacitor to aim at somewhere below what the line stands. */
function withLoad(dice: Dice, bare: WindowFacts, topology: Topology): { facts: WindowFacts; aimF: number } {
  const mostF = mostMarkedF(bare, topology)
  const line = LINES[bare.lineKind] as LineFacts
  const part = () => short(mostF * 10 ** -dice.between(0.3, 2.5))
  const suppressorF = dice.maybe(0.45, part) ?? 0
  const existingF = dice.maybe(0.45, part) ?? 0
  const ownCeilingF = dice.maybe(line.limit.is === 'unknown' ? 0.5 : 0.06, () => short(mostF * dice.between(0.3, 2)))
  const crossF = dice.maybe(line.isPair ? 0.15 : line.limit.is === 'supply' ? 0.3 : 0.02, part) ?? 0
  // A choke is aimed at alone as well.
  const aimF = bare.chokeH > 0 && dice.chance(0.4) ? 0 : mostF * 10 ** -dice.between(0.15, 1.5)
  const ohm = ohmOf(bare)
  const fitting = ohm === undefined || aimF === 0 ? undefined : aimF * ohm * ohm * 10 ** dice.between(-1.5, 0.6)
  const inductanceH = short(
    fitting !== undefined && dice.chance(0.6) ? Math.min(1e-2, Math.max(1e-9, fitting)) : dice.log(1e-8, 1e-4),
  )
  return { facts: { ...thatFits(bare), suppressorF, existingF, crossF, ownCeilingF, inductanceH }, aimF }
}

/** Largest mark the line stands with nothing else on it. */
function mostMarkedF(facts: WindowFacts, topology: Topology): number {
  let low = 1e-13
  let high = 1e-5
  for (let step = 0; step < 30; step++) {
    const markedF = Math.sqrt(low * high)
    const { db } = ceilingOf(facts, CAPACITORS[topology] > 0 ? topology : 'C', markedF)
    if (Number.isFinite(db) ? db >= 0 : markedF < 1e-8) low = markedF
    else high = markedF
  }
  return low
}

/** A requirement on the balance near what the mark aimed at has. */
function withBalance(dice: Dice, facts: WindowFacts, topology: Topology, aimF: number): WindowFacts {
  if (!hasConversion(facts)) return facts
  const atAim = worstConversionDb(facts, topology, aimF, { draws: 3, starts: 0 }, dice.next, lowest)
  if (!Number.isFinite(atAim)) return facts
  return { ...facts, mostConversionDb: Math.max(-150, Math.min(0, short(atAim + dice.between(-4, 12)))) }
}

/** Frequencies, and needs near what the mark aimed at gives there: some well below, some beyond. */
function withNeeds(dice: Dice, facts: WindowFacts, topology: Topology, aimF: number): WindowFacts {
  const reachedDb = (hz: number) =>
    noiseMargin({ ...facts, needs: [{ hz, db: 0 }] }, topology, aimF, { draws: 3, starts: 0 }, dice.next)
  const isOneForAll = dice.chance(0.3)
  const share = dice.chance(0.75) ? dice.between(0.15, 1) : 1
  const more = share === 1 ? dice.between(-2, 20) : 0
  if (dice.chance(0.02)) return { ...facts, needs: [{ hz: dice.log(1e6, 1e9), db: 0 }] }
  const reached = frequencies(dice, facts, reachedDb)
  const least = Math.min(...reached.map(({ db }) => db))
  const needs = reached.map(({ hz, db }) => {
    const wanted = share * (isOneForAll ? least : db) + more
    return { hz, db: Math.min(120, Math.max(0.5, short(wanted))) }
  })
  return { ...facts, needs }
}

/** One to three frequencies; most where the mark does something, outside the band of a signal that shares the way. */
function frequencies(
  dice: Dice,
  facts: WindowFacts,
  reachedDb: (hz: number) => number,
): readonly { readonly hz: number; readonly db: number }[] {
  const useful = usefulHzOf(facts) ?? 1e4
  const isShared = (!LINES[facts.lineKind]?.isPair && !hasChoke(facts)) || facts.mode === 'differential'
  const fromHz = isShared && !dice.chance(0.06) ? Math.max(1e4, 1.05 * useful) : 1e4
  return Array.from({ length: 1 + Math.floor(dice.next() * 3) }, () => {
    for (let attempt = 0; ; attempt++) {
      const hz = dice.log(fromHz, Math.max(2e9, 3 * fromHz))
      const db = reachedDb(hz)
      if (db > 1.5 || attempt >= ATTEMPTS) return { hz, db }
    }
  })
}
const ATTEMPTS = 6

export function textsOf(facts: WindowFacts, empty: ReadonlySet<Emptiable>): Texts {
  const shown = (value: number) => (Number.isFinite(value) ? String(value) : '')
  const some = (value: number | undefined) => (value === undefined ? '' : String(value))
  const typed = (key: Emptiable) => (empty.has(key) ? '' : String(facts[key]))
  const needs = facts.needs.map(({ db }) => db)
  return {
    lineKind: facts.lineKind,
    topology: facts.topology ?? '',
    mode: facts.mode,
    frequencyHz: facts.needs.map(({ hz }) => String(hz)).join(';'),
    neededDb: needs.every((db) => db === needs[0]) ? String(needs[0]) : needs.join(';'),
    sourceOhm: facts.sourceOhm.join(';'),
    sourceH: facts.sourceH === 0 ? '' : String(facts.sourceH),
    loadOhm: String(facts.loadOhm),
    loadF: facts.loadF === 0 ? '' : String(facts.loadF),
    loadH: shown(facts.loadH),
    inductanceH: typed('inductanceH'),
    suppressorF: typed('suppressorF'),
    existingF: typed('existingF'),
    crossF: facts.crossF === 0 ? '' : String(facts.crossF),
    bitRateHz: some(facts.bitRateHz),
    driverEdgeSec: some(facts.driverEdgeSec),
    signalOhm: some(facts.signalOhm),
    ownCeilingF: some(facts.ownCeilingF),
    usefulHz: some(facts.usefulHz),
    ownLossDb: some(facts.ownLossDb),
    ownPhaseDeg: some(facts.ownPhaseDeg),
    toleranceFrac:
      facts.tolLow === facts.tolHigh ? String(facts.tolLow) : `+${100 * facts.tolHigh}/-${100 * facts.tolLow} %`,
    temperatureFrac: String(facts.temperature),
    biasFrac: String(facts.bias),
    ageingDecades: String(facts.decades),
    ageingFracPerDecade: String(facts.perDecade),
    esrOhm: String(facts.esrOhm),
    eslH: typed('eslH'),
    dcrOhm: String(facts.dcrOhm),
    inductorParallelOhm: shown(facts.inductorParallelOhm),
    inductorParallelF: typed('inductorParallelF'),
    bondOhm: typed('bondOhm'),
    bondH: typed('bondH'),
    navyRule: String(facts.navyRule),
    loadW: some(facts.loadW),
    chassisLimitA: some(facts.chassisLimitA),
    maxBuildableF: some(facts.maxBuildableF),
    saturationFrac: String(facts.lostFrac),
    beadHz: facts.bead?.hz.join(';') ?? '',
    beadOhm: facts.bead?.ohm.join(';') ?? '',
    beadReactanceOhm: facts.bead?.reactanceOhm.join(';') ?? '',
    beadBiasFrac: facts.bead === undefined ? '' : String(facts.bead.lostFrac),
    dampOhm: some(facts.damper?.ohm),
    dampF: some(facts.damper?.farads),
    dielectric: facts.dielectric?.id ?? '',
    voltageFrac: some(facts.dielectric?.voltageFrac),
    caseSize: facts.dielectric?.caseSize ?? '',
    chokeH: facts.chokeH === 0 ? '' : String(facts.chokeH),
    chokeLeakageH: some(facts.chokeLeakageH),
    chokeOhm: String(facts.chokeOhm),
    chokeF: typed('chokeF'),
    chokeSide: facts.chokeSide,
    chokeMismatchFrac: facts.chokeMismatch === 0 ? '' : String(facts.chokeMismatch),
    mostConversionDb: some(facts.mostConversionDb),
    chokeWires: facts.isOneWire ? 'one' : '',
  }
}
