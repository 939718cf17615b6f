/** What is known about the signal of a line: as entered, else as its kind has it. Numbers only. */
import type { LineKind } from '../../reference/line-kinds.ts'

/** What the user entered about the signal; absent = the kind's own figure. */
export type SignalFacts = {
  readonly kind: LineKind
  readonly bitRateHz?: number | undefined
  readonly driverEdgeSec?: number | undefined
  readonly signalOhm?: number | undefined
  readonly own?: OwnCeiling | undefined
}

/** What the user's own specification says the signal stands; each absent = it says nothing. */
export type OwnCeiling = {
  /** most the signal may see in all: between the wires of a pair, to chassis otherwise */
  readonly ceilingF?: number | undefined
  /** highest useful frequency, instead of the kind's */
  readonly usefulHz?: number | undefined
  /** most it may lose there */
  readonly mostLossDb?: number | undefined
  /** most its phase may turn there */
  readonly mostPhaseDeg?: number | undefined
}

/** Resistance the signal sees in Ω: as entered, else the kind's own; undefined when neither is known. */
export const signalOhmOf = ({ kind, signalOhm }: SignalFacts): number | undefined => signalOhm ?? kind.signalOhm?.ohm

/** Bit time in s: of the rate entered, else of the kind's only rate; undefined when neither is known. */
export function bitSecOf({ kind, bitRateHz }: SignalFacts): number | undefined {
  const rate = bitRateHz ?? kind.bitRateHz
  return rate === undefined ? undefined : 1 / rate
}

/** What the line is terminated in, in Ω: twice the signal resistance of a matched line. */
export const lineOhmOf = (facts: SignalFacts): number | undefined => {
  const ohm = signalOhmOf(facts)
  return ohm === undefined ? undefined : 2 * ohm
}

/** Edges within this share of a bit set the band of a line whose fastest edge no standard fixes. */
const FASTEST_EDGE_SHARE = 0.3
const BAND_PER_EDGE = 0.35

/** Highest useful frequency in Hz: the user's, else the kind's, else 0.35 over an edge of 0.3 bit; undefined when neither is known. */
export function usefulHzOf(facts: SignalFacts): number | undefined {
  const { kind, own } = facts
  if (own?.usefulHz !== undefined) return own.usefulHz
  if (kind.usefulHz !== undefined) return kind.usefulHz.hz
  const bitSec = kind.loading.rule === 'own-edge' ? bitSecOf(facts) : undefined
  return bitSec === undefined ? undefined : BAND_PER_EDGE / (FASTEST_EDGE_SHARE * bitSec)
}

/** Up to where a coil is judged, Hz: the highest useful frequency, the end of a mask, where a terminal is measured; 0 when unknown. */
export function bandTopHz(facts: SignalFacts): number {
  const rule = facts.kind.loading
  const maskHz = rule.rule === 'return-loss' ? Math.max(...rule.mask.map(({ toHz }) => toHz)) : 0
  const terminalHz = rule.rule === 'terminal-impedance' ? rule.atHz : 0
  return Math.max(usefulHzOf(facts) ?? 0, maskHz, terminalHz)
}
