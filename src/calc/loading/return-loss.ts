/** Return loss of a shunt capacitance (with a series inductance before it, if any) in a terminated line, against a mask. */
import type { LoadingRule, MaskSegment } from '../../reference/line-kinds.ts'

/** `loadOhm`: what the line is terminated in; `referenceOhm`: what the reflection is measured against. */
export type Port = {
  readonly farads: number
  readonly henries?: number
  readonly loadOhm: number
  readonly referenceOhm: number
}

/**
 * Return loss in dB at `hz`: −20·log10|Γ| with Z = jωL + 1/(1/R + jωC), Γ = (Z − Z0)/(Z + Z0).
 * Infinity where nothing is reflected. For L = 0 and R = Z0 this is x/√(4 + x²) with x = ω·C·Z0 (textbook).
 */
export function returnLossDb(port: Port, hz: number): number {
  const omega = 2 * Math.PI * hz
  const conductance = 1 / port.loadOhm
  const susceptance = omega * port.farads
  const square = conductance ** 2 + susceptance ** 2
  const re = conductance / square
  const im = omega * (port.henries ?? 0) - susceptance / square
  const reflected = (re - port.referenceOhm) ** 2 + im ** 2
  return reflected === 0 ? Infinity : 10 * Math.log10(((re + port.referenceOhm) ** 2 + im ** 2) / reflected)
}

/** Least return loss in dB a mask segment asks for at `hz`. */
export const maskDb = (segment: MaskSegment, hz: number): number =>
  segment.atDb - segment.slopeDbPerDecade * Math.log10(hz / segment.refHz)

/** Every impedance in Ω a mask is measured against: its own, and the ends of the cable range its document names. */
export const maskReferences = (rule: Extract<LoadingRule, { rule: 'return-loss' }>): readonly [number, ...number[]] => [
  rule.referenceOhm,
  ...(rule.overOhm ?? []),
]

const STEPS_PER_SEGMENT = 32

/** Frequencies in Hz at which a mask is judged: both ends of each segment and a log grid between them. */
export function maskGrid(segment: MaskSegment): readonly number[] {
  const ratio = segment.toHz / segment.fromHz
  return Array.from({ length: STEPS_PER_SEGMENT + 1 }, (_, i) =>
    i === STEPS_PER_SEGMENT ? segment.toHz : segment.fromHz * ratio ** (i / STEPS_PER_SEGMENT),
  )
}

export type MaskPoint = { readonly hz: number; readonly returnLossDb: number; readonly maskDb: number }

/** Where the mask is missed by most, or met by least. */
export function leastMaskMargin(port: Port, mask: readonly [MaskSegment, ...MaskSegment[]]): MaskPoint {
  const points = mask.flatMap((segment) =>
    maskGrid(segment).map((hz) => ({ hz, returnLossDb: returnLossDb(port, hz), maskDb: maskDb(segment, hz) })),
  )
  const margin = (point: MaskPoint) => point.returnLossDb - point.maskDb
  // Equal margins (no reflection anywhere) are settled by the highest frequency, where reflection would come first.
  return points.reduce((worst, point) => (margin(point) <= margin(worst) ? point : worst), firstOf(mask, port))
}

function firstOf(mask: readonly [MaskSegment, ...MaskSegment[]], port: Port): MaskPoint {
  const hz = mask[0].fromHz
  return { hz, returnLossDb: returnLossDb(port, hz), maskDb: maskDb(mask[0], hz) }
}

/**
 * Most shunt capacitance in F for a return loss of `db` at `hz`:
 * B² = (g²·(G0 + G)² − (G0 − G)²) / (1 − g²), C = B/ω, g = 10^(−RL/20). For G = G0 this is 2g/(ω·Z0·√(1 − g²)).
 * 0 when the termination alone misses the figure. db > 0, hz > 0.
 */
export function faradsForReturnLoss(need: { db: number; hz: number; loadOhm: number; referenceOhm: number }): number {
  const gSquare = 10 ** (-need.db / 10)
  const load = 1 / need.loadOhm
  const reference = 1 / need.referenceOhm
  const square = (gSquare * (reference + load) ** 2 - (reference - load) ** 2) / (1 - gSquare)
  return square <= 0 ? 0 : Math.sqrt(square) / (2 * Math.PI * need.hz)
}

/** Most shunt capacitance in F inside a whole mask, and the frequency in Hz that decides it. */
export function faradsForMask(
  mask: readonly [MaskSegment, ...MaskSegment[]],
  port: { loadOhm: number; referenceOhm: number },
): { readonly farads: number; readonly hz: number; readonly db: number } {
  const rooms = mask.flatMap((segment) =>
    maskGrid(segment).map((hz) => {
      const db = maskDb(segment, hz)
      return { farads: faradsForReturnLoss({ db, hz, ...port }), hz, db }
    }),
  )
  return rooms.reduce((least, room) => (room.farads < least.farads ? room : least), {
    farads: Infinity,
    hz: mask[0].fromHz,
    db: mask[0].atDb,
  })
}
