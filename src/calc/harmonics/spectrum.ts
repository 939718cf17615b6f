/**
 * Harmonics of clocks, converters, transmitters and strobes, and their products of the third order, against channels and
 * bands. Frequencies in hertz; a tolerance is a share of the fundamental and counts n times at its n-th harmonic.
 */

export const WAVEFORMS = ['square', 'pulse', 'sine', 'transmitter'] as const
export type Waveform = (typeof WAVEFORMS)[number]

export type Fundamental = {
  readonly hz: number
  readonly offFrac: number
  readonly waveform: Waveform
  /** 10 to 90 %; undefined = its edges are not known, and no corner is counted */
  readonly riseSec: number | undefined
}

/** Second corner of the envelope of a trapezoid: 1/(π·tr), above which it falls by 40 dB a decade. Seconds > 0. */
export const cornerHz = (riseSec: number): number => 1 / (Math.PI * riseSec)

/** A square wave of equal halves has no even harmonics. */
export const hasHarmonic = (waveform: Waveform, n: number): boolean => n === 1 || waveform !== 'square' || n % 2 === 1

/**
 * Level of the n-th harmonic below the fundamental in dB, 0 or negative: 1/n for a square wave and, as the envelope of
 * any, for a pulse; another 20 dB a decade above 1/(π·tr). Undefined for a sine and a transmitter, whose harmonics only a
 * measurement knows. Spectrum of a trapezoid, textbook.
 */
export function levelDb({ hz, waveform, riseSec }: Fundamental, n: number): number | undefined {
  if (waveform === 'sine' || waveform === 'transmitter') return n === 1 ? 0 : undefined
  const corner = riseSec === undefined ? Number.POSITIVE_INFINITY : cornerHz(riseSec)
  const beyond = (f: number) => 20 * Math.log10(Math.max(1, f / corner))
  return -20 * Math.log10(n) - beyond(n * hz) + beyond(hz)
}

/** A stretch of frequencies somebody listens in; `channelHz`: its one channel, where it has one. */
export type Listening = {
  readonly id: string
  readonly fromHz: number
  readonly toHz: number
  readonly channelHz?: number
}

export type Landing = {
  readonly listening: string
  /** which fundamentals, and how many times each: 13 × the first, or 2 × the first − 1 × the second */
  readonly terms: readonly { readonly of: number; readonly times: number }[]
  readonly hz: number
  /** how far it may lie to either side */
  readonly offHz: number
  /** from the channel to the product, signed, where there is one channel */
  readonly fromChannelHz: number | undefined
  readonly levelDb: number | undefined
  /** harmonics of this fundamental in this stretch altogether */
  readonly count: number
}

/** Below this nothing is listed: leakage and noise govern there. */
export const LEAST_LEVEL_DB = -100
/** A harmonic without a known level is followed up to here. */
export const MOST_UNKNOWN = 40

/** The harmonics of one fundamental that may lie in a stretch, the one nearest its channel (or the lowest) first in line. */
export function landingOf(fundamental: Fundamental, of: number, listening: Listening): Landing | undefined {
  const { hz, offFrac, waveform } = fundamental
  const { channelHz } = listening
  const { first, last } = orders(fundamental, listening)
  const isListed = (n: number) => {
    const level = levelDb(fundamental, n)
    return hasHarmonic(waveform, n) && (level === undefined ? n <= MOST_UNKNOWN : level >= LEAST_LEVEL_DB)
  }
  // levels only fall: from the first that is too low there is none
  const numbers = new Set<number>()
  const near = channelHz === undefined ? first : Math.round(channelHz / hz)
  for (const n of [near, near - 1, near + 1, first, first + 1, last, last - 1])
    if (n >= first && n <= last && isListed(n)) numbers.add(n)
  const [best] = [...numbers].sort((a, b) => distance(a, hz, channelHz) - distance(b, hz, channelHz) || a - b)
  if (best === undefined) return undefined
  return {
    listening: listening.id,
    terms: [{ of, times: best }],
    hz: best * hz,
    offHz: best * hz * offFrac,
    fromChannelHz: channelHz === undefined ? undefined : best * hz - channelHz,
    levelDb: levelDb(fundamental, best),
    count: countOf(first, last, waveform),
  }
}

/** Why a harmonic that lies in a stretch is not listed: so weak, of unknown level and so far up, or even and of a square. */
export type Unlisted = { readonly of: number; readonly times: number; readonly why: 'weak' | 'far' | 'even' }

/**
 * The harmonic nearest to the channel (or the lowest) that may lie in a stretch where none is listed; undefined where none
 * lies there at all. A square has no even harmonics only while both its halves are equally long, which no real one is to
 * the last part.
 */
export function unlistedIn(fundamental: Fundamental, of: number, listening: Listening): Unlisted | undefined {
  const { first, last } = orders(fundamental, listening)
  if (last < first || landingOf(fundamental, of, listening) !== undefined) return undefined
  const { channelHz } = listening
  const times =
    channelHz === undefined ? first : Math.min(last, Math.max(first, Math.round(channelHz / fundamental.hz)))
  const level = levelDb(fundamental, times)
  return { of, times, why: level === undefined ? 'far' : level < LEAST_LEVEL_DB ? 'weak' : 'even' }
}

/** The lowest and the highest order that may lie in a stretch; the lowest above the highest where none may. */
function orders({ hz, offFrac }: Fundamental, { fromHz, toHz }: Listening): { first: number; last: number } {
  return {
    first: Math.max(1, Math.ceil(fromHz / (hz * (1 + offFrac)))),
    last: Math.floor(toHz / (hz * (1 - offFrac))),
  }
}

const distance = (n: number, hz: number, channelHz: number | undefined): number =>
  channelHz === undefined ? 0 : Math.abs(n * hz - channelHz)

function countOf(first: number, last: number, waveform: Waveform): number {
  if (waveform !== 'square') return Math.max(0, last - first + 1)
  const odd = (upTo: number) => Math.floor((upTo + 1) / 2)
  const evenFirst = first === 1 ? 0 : odd(first - 1)
  return Math.max(0, odd(last) - evenFirst)
}

/** 2·a ± b and a ± b ± c of every choice of fundamentals that falls in the stretch. */
export function thirdOrder(all: readonly Fundamental[], listening: Listening): readonly Landing[] {
  const found: Landing[] = []
  const add = (signed: Landing['terms']) => {
    const sumHz = signed.reduce((sum, { of, times }) => sum + times * (all[of]?.hz ?? 0), 0)
    // a difference below zero is heard as far above it: b − 2·a, a − b − c
    const hz = Math.abs(sumHz)
    const terms = sumHz < 0 ? signed.map(({ of, times }) => ({ of, times: -times })) : signed
    const offHz = terms.reduce(
      (sum, { of, times }) => sum + Math.abs(times) * (all[of]?.hz ?? 0) * (all[of]?.offFrac ?? 0),
      0,
    )
    // exactly none is no tone; one that is none only as typed may lie as far up as the fundamentals may be off
    const isNone = hz + offHz === 0
    if (isNone || hz + offHz < listening.fromHz || hz - offHz > listening.toHz) return
    const { channelHz } = listening
    found.push({
      listening: listening.id,
      terms,
      hz,
      offHz,
      fromChannelHz: channelHz === undefined ? undefined : hz - channelHz,
      levelDb: undefined,
      count: 1,
    })
  }
  const SIGNS = [1, -1] as const
  for (let a = 0; a < all.length; a++)
    for (let b = 0; b < all.length; b++) {
      if (a === b) continue
      for (const sign of SIGNS)
        add([
          { of: a, times: 2 },
          { of: b, times: sign },
        ])
      for (let c = b + 1; c < all.length; c++) {
        if (a === c) continue
        // a + b + c and its turns are the same product: only the first of them is taken
        if (a < b)
          add([
            { of: a, times: 1 },
            { of: b, times: 1 },
            { of: c, times: 1 },
          ])
        add([
          { of: a, times: -1 },
          { of: b, times: 1 },
          { of: c, times: 1 },
        ])
      }
    }
  return found
}

/**
 * The smallest shift of a fundamental after which none of its harmonics, over its tolerance, lies within `halfHz` of the
 * channel; undefined where its comb is too dense for any. Hertz, signed; 0 where none lies there now.
 */
export function avoidingShift(fundamental: Fundamental, channelHz: number, halfHz: number): number | undefined {
  const { hz, offFrac } = fundamental
  const hits = (f: number): readonly number[] => {
    const first = Math.max(1, Math.ceil((channelHz - halfHz) / (f * (1 + offFrac)) - 1e-12))
    const last = Math.floor((channelHz + halfHz) / (f * (1 - offFrac)) + 1e-12)
    return Array.from({ length: Math.max(0, Math.min(4, last - first + 1)) }, (_, i) => first + i).filter((n) =>
      hasHarmonic(fundamental.waveform, n),
    )
  }
  if (hits(hz).length === 0) return 0
  const near = Math.max(1, Math.round(channelHz / hz))
  const STEP = 1 + 1e-9
  const candidates = [near - 2, near - 1, near, near + 1, near + 2]
    .filter((n) => n >= 1)
    .flatMap((n) => [
      ((channelHz + halfHz) / (n * (1 - offFrac))) * STEP,
      (channelHz - halfHz) / (n * (1 + offFrac)) / STEP,
    ])
    .filter((f) => f > 0 && hits(f).length === 0)
    .sort((a, b) => Math.abs(a - hz) - Math.abs(b - hz))
  const [best] = candidates
  return best === undefined ? undefined : best - hz
}
