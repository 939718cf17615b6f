/** Random surges as the app's fields, and the same surge as a circuit of one's own at any place of its tolerances. */

import { burstPulse, combinationPulse, type PulseFormula, pinPulse } from './pulses.ts'
import type { Circuit, Element, Plan } from './stepped.ts'

export type Texts = Readonly<Record<string, string>>
type Range = readonly [low: number, high: number]

export type RandomSurge = {
  readonly texts: Texts
  readonly pulse: PulseFormula
  readonly topology: string
  readonly placement: string
  /** every part between its least and its most; nominal where both are the same */
  readonly c1: Range
  readonly c2: Range
  readonly l1: Range
  readonly l2: Range
  readonly partF: Range
  readonly ringHz: Range
  readonly breakdownV: Range
  readonly restV: readonly number[]
  readonly signs: readonly (1 | -1)[]
  readonly dcrOhm: number
  readonly lineOhm: number
  readonly lineH: number
  readonly leadH: number
  readonly loadOhm: number
  readonly loadF: number
  readonly partOhm: number
  readonly bidirectional: boolean
  readonly ratedW: number
  readonly withstandV: number
  readonly capacitorWithstandV: number
  /** what the line does by itself, its long surges included */
  readonly lineV: Range
}

export type Drawn = {
  readonly c1: number
  readonly c2: number
  readonly l1: number
  readonly l2: number
  readonly partF: number
  readonly ringHz: number
  readonly breakdownV: number
  readonly restV: number
  readonly sign: 1 | -1
}

/** A small generator of its own, so that a seed means the same everywhere: xorshift, 0 … < 1. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0 || 1
  return () => {
    state ^= state << 13
    state >>>= 0
    state ^= state >>> 17
    state ^= state << 5
    state >>>= 0
    return state / 4294967296
  }
}

const LINES: readonly {
  readonly texts: Texts
  readonly low: number
  readonly high: number
  readonly rest: readonly number[]
}[] = [
  { texts: {}, low: 0, high: 0, rest: [0] },
  { texts: {}, low: 0, high: 0, rest: [0] },
  { texts: { lineKind: 'power-28-vdc', supplyCategory: 'do160-a' }, low: 0, high: 46.3, rest: [32.2, 0] },
  { texts: { lineKind: 'power-28-vdc', supplyCategory: 'do160-z' }, low: 0, high: 80, rest: [32.2, 0] },
  {
    texts: { lineKind: 'power-115-vac-400', supplyCategory: 'do160-b' },
    low: -254.6,
    high: 254.6,
    rest: [178.2, -178.2],
  },
  { texts: { lineKind: 'power-270-vdc', supplyCategory: 'std704' }, low: 0, high: 350, rest: [286, 0] },
]

const STEPS_V = [15, 18, 24, 28, 33, 40, 45, 51, 58, 64, 75, 85, 100, 120, 150, 180, 250, 300, 350, 400]

export function randomSurge(random: () => number): RandomSurge {
  const between = (low: number, high: number) => low * (high / low) ** random()
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T
  const pulse = pick([
    () => pinPulse('wf3', 1 + Math.floor(random() * 4)),
    () => pinPulse('wf3', 1 + Math.floor(random() * 3)),
    () => pinPulse('wf4', 1 + Math.floor(random() * 4)),
    () => pinPulse('wf5a', 1 + Math.floor(random() * 2)),
    () => burstPulse(1 + Math.floor(random() * 3)),
    () => combinationPulse(1 + Math.floor(random() * 3), pick([12, 42])),
  ])()
  const line = pick(LINES)
  // most parts suit their line; some stand too low, or conduct forward on a line that goes below chassis
  const bidirectional = line.low < 0 ? random() < 0.85 : random() < 0.5
  const steps = STEPS_V.filter((v) => v >= Math.max(12, line.high * (random() < 0.8 ? 1 : 0.5)))
  const standoffV = pick(steps.slice(0, 5))
  const isTyped = line.texts['lineKind'] === undefined
  const lineHighV = isTyped ? standoffV * between(0.4, 1.3) : line.high
  const lineLowV = isTyped ? (random() < 0.8 ? 0 : -between(0.1, 5)) : line.low
  const fromClass = random() < 0.5
  const leastV = standoffV * 1.11
  const breakdownV: Range = fromClass ? [leastV, leastV * 1.11] : [leastV * 1.05, leastV * 1.05]
  const ratedW = pick([600, 1500, 5000, 15000, 30000])
  const clampRatio = 45.4 / 34.4
  const classOhm = ((clampRatio - 1) * breakdownV[1] * clampRatio * breakdownV[1]) / ratedW
  const partOhm = fromClass ? classOhm : classOhm * between(0.3, 1)
  const topology = pick(['none', 'C', 'L', 'LC', 'CL', 'PI', 'T', 'LC', 'PI'])
  const placement = random() < 0.75 ? 'connector' : 'behind'
  const spread = pick([
    { texts: {}, low: 0.8 * 0.85 * 0.88 * 0.975 ** 2, high: 1.2 * 1.15, l: 1.2 / 0.8 },
    {
      texts: { toleranceFrac: '5 %', temperatureFrac: '0', biasFrac: '0', ageingDecades: '0' },
      low: 0.95,
      high: 1.05,
      l: 1.05 / 0.95,
    },
    {
      texts: { toleranceFrac: '10 %', temperatureFrac: '15 %', biasFrac: '30 %', ageingDecades: '2' },
      low: 0.9 * 0.85 * 0.7 * 0.975 ** 2,
      high: 1.1 * 1.15,
      l: 1.1 / 0.9,
    },
  ])
  // reactive parts whose resonance is of the order of the pulse: there the tolerances decide
  const scaleSec = pulse.ring ? 1 / (2 * Math.PI * pulse.ring.hz) : pulse.peakSec / 3
  const z = between(0.5, 60)
  const resonance = scaleSec * between(0.25, 3)
  const [henries, farads] = [resonance * z, resonance / z]
  const hasL = !['none', 'C'].includes(topology)
  const hasC = !['none', 'L'].includes(topology)
  const capacitance2F = farads * between(0.5, 2)
  const inductance2H = henries * between(0.5, 2)
  const partF = random() < 0.6 ? between(20e-12, 3e-9) : 0
  const leadH = random() < 0.4 ? between(0.5e-9, 20e-9) : 0
  const loadF = random() < 0.2 ? farads * between(0.01, 0.3) : 0
  const loadOhm = random() < 0.7 ? 10e3 : between(50, 3000)
  const dcrOhm = hasL ? between(0.01, 0.5) : 0
  const lineOhm = random() < 0.2 ? between(0.1, 5) : 0
  const lineH = random() < 0.15 ? henries * between(0.05, 0.5) : 0
  const amps = Math.max(0, (pulse.openV - breakdownV[1]) / (pulse.ohm + partOhm))
  const clampV = Math.min(pulse.openV + Math.max(...line.rest), breakdownV[1] + partOhm * amps)
  const rings = hasL && hasC ? between(1, 3) : 1
  const withstandV = clampV * rings * between(1, 1.25)
  const capacitorWithstandV = clampV * rings * between(1, 2.5)
  const print = (value: number) => String(Number(value.toPrecision(9)))
  return {
    texts: {
      waveform: pulse.waveform,
      ...(pulse.level === undefined ? {} : { level: String(pulse.level) }),
      ...(pulse.waveform === 'iec-1.2-50' ? { sourceOhm: print(pulse.ohm) } : {}),
      ...(fromClass
        ? { standoffV: print(standoffV) }
        : { breakdownV: print(breakdownV[0]), dynamicOhm: print(partOhm) }),
      ratedPulseW: print(ratedW),
      bidirectional: String(bidirectional),
      topology,
      placement,
      ...(hasC ? { capacitanceF: print(farads) } : {}),
      ...(topology === 'PI' ? { capacitance2F: print(capacitance2F) } : {}),
      ...(hasL ? { inductanceH: print(henries), dcrOhm: print(dcrOhm) } : {}),
      ...(topology === 'T' ? { inductance2H: print(inductance2H) } : {}),
      ...(partF > 0 ? { suppressorF: print(partF) } : {}),
      suppressorLeadH: print(leadH),
      ambientC: '25',
      loadOhm: print(loadOhm),
      ...(loadF > 0 ? { loadF: print(loadF) } : {}),
      lineOhm: print(lineOhm),
      lineH: print(lineH),
      withstandV: print(withstandV),
      capacitorWithstandV: print(capacitorWithstandV),
      ...line.texts,
      ...(isTyped ? { busMaxV: print(lineHighV), busMinV: print(lineLowV) } : {}),
      ...spread.texts,
    },
    pulse,
    topology,
    placement,
    c1: hasC ? [farads * spread.low, farads * spread.high] : [0, 0],
    c2: topology === 'PI' ? [capacitance2F * spread.low, capacitance2F * spread.high] : [0, 0],
    l1: hasL ? [henries, henries * spread.l] : [0, 0],
    l2: topology === 'T' ? [inductance2H, inductance2H * spread.l] : [0, 0],
    partF: [0.3 * partF, partF],
    ringHz: pulse.ring
      ? [pulse.ring.hz * (1 - pulse.ring.spreadFrac), pulse.ring.hz * (1 + pulse.ring.spreadFrac)]
      : [0, 0],
    breakdownV,
    restV: line.rest,
    signs: [1, -1],
    dcrOhm,
    lineOhm,
    lineH,
    leadH,
    loadOhm,
    loadF,
    partOhm,
    bidirectional,
    ratedW,
    withstandV: Number(print(withstandV)),
    capacitorWithstandV: Number(print(capacitorWithstandV)),
    lineV: [lineLowV, lineHighV],
  }
}

const KEYS = ['c1', 'c2', 'l1', 'l2', 'partF', 'ringHz', 'breakdownV'] as const
type Key = (typeof KEYS)[number]

/** A place inside the box, each part by itself, at either sign and any of the volts the line rests at. */
export function drawFrom(surge: RandomSurge, random: () => number): Drawn {
  const inside = ([low, high]: Range) => (high > low ? low + (high - low) * random() : low)
  const values = Object.fromEntries(KEYS.map((key) => [key, inside(surge[key])])) as Record<Key, number>
  return {
    ...values,
    restV: surge.restV[Math.floor(random() * surge.restV.length)] ?? 0,
    sign: random() < 0.5 ? 1 : -1,
  }
}

/** Every corner of the box with each way the pulse can come. */
export function cornersOf(surge: RandomSurge): readonly Drawn[] {
  const ends = (range: Range) => (range[1] > range[0] ? [...range] : [range[0]])
  let places: Partial<Record<Key, number>>[] = [{}]
  for (const key of KEYS)
    places = places.flatMap((place) => ends(surge[key]).map((value) => ({ ...place, [key]: value })))
  const signs = surge.bidirectional && surge.restV.every((v) => v === 0) ? ([1] as const) : surge.signs
  return places.flatMap((place) =>
    signs.flatMap((sign) => surge.restV.map((restV) => ({ ...(place as Record<Key, number>), restV, sign }))),
  )
}

export type Wired = {
  readonly circuit: Circuit
  readonly restFeedV: number
  readonly plan: Plan
  readonly load: number
  /** node of each filter capacitor */
  readonly capacitors: readonly number[]
}

/** The circuit at a place, connector first, from the elements alone. */
export function wire(surge: RandomSurge, at: Drawn): Wired {
  const elements: Element[] = []
  let nodes = 1
  const add = () => ++nodes
  const shunt = (node: number, farads: number) => {
    if (farads > 0) elements.push({ is: 'C', a: node, b: 0, farads })
  }
  const coil = (a: number, b: number, henries: number, ohm: number) =>
    elements.push({ is: 'L', a, b, henries, ohm: Math.max(ohm, 1e-9) })
  const capacitors: number[] = []
  const capacitor = (node: number, farads: number) => {
    shunt(node, farads)
    capacitors.push(node)
  }
  let feed = 1
  if (surge.lineH > 0) {
    feed = add()
    coil(feed, 1, surge.lineH, 0)
  }
  const { topology } = surge
  if (topology === 'C' || topology === 'CL' || topology === 'PI') capacitor(1, at.c1)
  let load = 1
  if (topology !== 'none' && topology !== 'C') {
    load = add()
    coil(1, load, at.l1, surge.dcrOhm)
    if (topology === 'LC') capacitor(load, at.c1)
    if (topology === 'PI') capacitor(load, at.c2)
    if (topology === 'T') {
      capacitor(load, at.c1)
      const end = add()
      coil(load, end, at.l2, surge.dcrOhm)
      load = end
    }
  }
  elements.push({ is: 'R', a: load, b: 0, ohm: surge.loadOhm })
  shunt(load, surge.loadF)
  let clamp = surge.placement === 'behind' ? load : 1
  if (surge.leadH > 0) {
    const junction = add()
    coil(clamp, junction, surge.leadH, 0)
    clamp = junction
    shunt(clamp, Math.max(1e-12, at.partF))
  } else shunt(clamp, at.partF)
  const feedOhm = surge.pulse.ohm + surge.lineOhm
  const { pulse } = surge
  const ohmToLoad = feedOhm + (topology === 'T' ? 2 : topology === 'none' || topology === 'C' ? 0 : 1) * surge.dcrOhm
  const wave = (t: number) => at.sign * pulse.openV * pulse.shape(t, at.ringHz)
  return {
    circuit: {
      nodes,
      elements,
      clamp: { node: clamp, breakdownV: at.breakdownV, ohm: surge.partOhm, bidirectional: surge.bidirectional },
      feed: { node: feed, ohm: feedOhm, volts: wave },
    },
    restFeedV: at.restV * (1 + ohmToLoad / surge.loadOhm),
    plan: planOf(surge, at),
    load,
    capacitors,
  }
}

/** Steps that resolve the pulse and every resonance of the filter; long enough for a ring to build up. */
function planOf(surge: RandomSurge, at: Drawn): Plan {
  const henries = [at.l1, at.l2, surge.lineH].filter((h) => h > 0)
  const farads = [at.c1, at.c2].filter((f) => f > 0)
  const periods = henries.flatMap((h) => farads.map((f) => 2 * Math.PI * Math.sqrt(h * f)))
  const fastest = Math.min(...periods, Number.POSITIVE_INFINITY)
  const slowest = Math.max(...periods, 0)
  const period = surge.pulse.ring ? 1 / at.ringHz : Number.POSITIVE_INFINITY
  const rise = surge.pulse.ring ? period / 4 : surge.pulse.peakSec
  const mostSec = Math.min(period / 60, fastest / 40, rise / 16)
  const endSec = surge.pulse.ring ? 18 * period + 2 * slowest : 3 * surge.pulse.peakSec + 6 * slowest
  return { firstSec: Math.min(mostSec / 16, rise / 400), mostSec, endSec: Math.min(endSec, 9000 * mostSec) }
}
