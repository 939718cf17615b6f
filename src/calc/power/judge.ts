/** A capacitor on a power line against the rules chosen for it and against the volts it must hold. Numbers only. */
import { LONGEST_WIRE } from '../../reference/field-figures.ts'
import { type LadderFault, ladderFaults } from '../ladder.ts'
import type { Verdict } from '../terms.ts'
import type { Bound, RungFigure } from '../types.ts'
import { worse } from '../verdict.ts'
import { type InrushPeak, inrushPeak } from './inrush.ts'
import { type NavyLimit, navyBound, navyLimit } from './navy-rule.ts'
import { acrossLinesV, chassisFarads, crestV, PASCHEN_MINIMUM_V, type PowerLine, withstandV } from './supply.ts'

/** What was chosen to be held: absent = not chosen. */
export type PowerRules = {
  readonly navyRule: boolean
  readonly loadW?: number | undefined
  /** A rms to chassis that each line may have */
  readonly chassisLimitA?: number | undefined
}

export type PowerReason =
  /** neither a rule nor a limit was chosen: what the capacitance may be is not known */
  | { readonly is: 'no-limit'; readonly verdict: 'unknown' }
  | { readonly is: 'navy'; readonly verdict: 'ok' | 'fails'; readonly limitF: number }
  | { readonly is: 'navy-lacks'; readonly verdict: 'unknown' }
  | { readonly is: 'chassis-limit'; readonly verdict: 'ok' | 'fails'; readonly limitA: number; readonly limitF: number }
  | { readonly is: 'ladder'; readonly verdict: 'fails'; readonly fault: LadderFault }
  /** the inrush from line to line above what the capacitor there is tested to hold */
  | { readonly is: 'cross-withstand'; readonly verdict: 'fails'; readonly peakV: number; readonly holdsV: number }
  | {
      readonly is: 'thin-air'
      readonly verdict: 'marginal'
      readonly by: 'working-peak' | 'inrush'
      readonly peakV: number
      /** on the capacitor from line to line */
      readonly isAcross: boolean
    }
  /** more inductance was entered than wiring has: the inrush comes out too small */
  | { readonly is: 'wire-long'; readonly verdict: 'marginal'; readonly henries: number }

export type PowerJudgement = {
  readonly verdict: Verdict
  readonly reasons: readonly PowerReason[]
  readonly bounds: readonly Bound[]
  readonly rungs: readonly RungFigure[]
  readonly navy: NavyLimit | undefined
  /** undefined when the wiring is not known, or next to nothing */
  readonly inrush: InrushPeak | undefined
  /** of the capacitor from line to line; undefined where there is none, too */
  readonly crossInrush: InrushPeak | undefined
}

/** A working peak from here on is close to where air can break down. */
const NEAR_PASCHEN = 0.9
const HAIR = 1 + 1e-9

/** There and back. */
const NO_WIRING_H = 2 * LONGEST_WIRE.henries

/** Judges one capacitor to chassis. Volts rms or DC > 0, farads ≥ 0. */
export function judgePower(line: PowerLine, rules: PowerRules): PowerJudgement {
  const inrush = inrushOf(line, { stepV: crestV(line), farads: line.capacitanceF })
  const crossInrush = line.crossF === 0 ? undefined : inrushOf(line, { stepV: acrossCrestV(line), farads: line.crossF })
  const rungs = rungsOf(line, inrush)
  const navy = rules.navyRule ? navyLimit({ supplyHz: line.supplyHz, loadW: rules.loadW }) : undefined
  const chassis = chassisLimit(line, rules)
  const limits = [...navyReasons(line, navy), ...chassis.reasons]
  const reasons: readonly PowerReason[] = [
    ...(limits.length === 0 ? [{ is: 'no-limit', verdict: 'unknown' } as const] : limits),
    ...ladderFaults(rungs).map((fault) => ({ is: 'ladder', verdict: 'fails', fault }) as const),
    ...crossWithstand(line, crossInrush),
    ...thinAir(line, inrush, crossInrush),
    ...wireLong(line),
  ]
  return {
    verdict: reasons.reduce<Verdict>((worst, { verdict }) => worse(worst, verdict), 'ok'),
    reasons,
    bounds: [...(navy?.limitF === undefined ? [] : [navyBound(navy.limitF)]), ...chassis.bounds],
    rungs,
    navy,
    inrush,
    crossInrush,
  }
}

function wireLong({ wiringH = 0 }: PowerLine): readonly PowerReason[] {
  return wiringH > NO_WIRING_H ? [{ is: 'wire-long', verdict: 'marginal', henries: wiringH }] : []
}

function navyReasons({ capacitanceF }: PowerLine, navy: NavyLimit | undefined): readonly PowerReason[] {
  if (navy === undefined) return []
  if (navy.limitF === undefined) return [{ is: 'navy-lacks', verdict: 'unknown' }]
  return [{ is: 'navy', verdict: capacitanceF > navy.limitF * HAIR ? 'fails' : 'ok', limitF: navy.limitF }]
}

/** At DC, or next to it, no steady current flows: a limit on it is always kept, and bounds nothing. */
function chassisLimit(
  line: PowerLine,
  { chassisLimitA: limitA }: PowerRules,
): { readonly reasons: readonly PowerReason[]; readonly bounds: readonly Bound[] } {
  if (limitA === undefined || line.supplyHz === 0) return { reasons: [], bounds: [] }
  const limitF = chassisFarads(line, limitA)
  if (!Number.isFinite(limitF)) return { reasons: [], bounds: [] }
  return {
    reasons: [{ is: 'chassis-limit', verdict: line.capacitanceF > limitF * HAIR ? 'fails' : 'ok', limitA, limitF }],
    bounds: [chassisBound(limitF)],
  }
}

/** A limit on the chassis current as farads of each line to chassis. */
export const chassisBound = (limitF: number): Bound => ({
  id: 'chassis-current',
  by: { is: 'user', fact: 'chassisLimitA' },
  side: 'most',
  nature: 'works',
  farads: limitF,
  per: 'leg',
  topology: 'any',
})

/** Inrush peak; undefined when neither resistance nor inductance of the wiring is known, or they are next to nothing. */
function inrushOf(
  { wiringOhm: ohm = 0, wiringH: henries = 0 }: PowerLine,
  step: { readonly stepV: number; readonly farads: number },
): InrushPeak | undefined {
  if (ohm === 0 && henries === 0) return undefined
  const peak = inrushPeak({ ...step, ohm, henries })
  // Wiring near 1e-300 bounds the current no better than none: the quotient overflows.
  return Number.isFinite(peak.peakA) && Number.isFinite(peak.peakV) ? peak : undefined
}

/** Rungs in rising order of what they are, not of their volts; a missing overshoot has no rung. */
function rungsOf(line: PowerLine, inrush: InrushPeak | undefined): readonly RungFigure[] {
  const rung = (id: string, role: RungFigure['role'], volts: number): RungFigure => ({
    id,
    role,
    minV: volts,
    maxV: volts,
  })
  return [
    rung('power-working-peak', 'working-peak', crestV(line)),
    ...(inrush === undefined ? [] : [rung('power-inrush', 'inrush', inrush.peakV)]),
    rung('power-capacitor-withstand', 'capacitor-withstand', withstandV(line)),
  ]
}

/** Crest of the volts from line to line. */
const acrossCrestV = (line: PowerLine): number => crestV({ workingRmsV: acrossLinesV(line), supplyHz: line.supplyHz })

/** The capacitor from line to line is rated for the volts there and tested by the same rule as one to chassis. */
function crossWithstand(line: PowerLine, crossInrush: InrushPeak | undefined): readonly PowerReason[] {
  const peakV = crossInrush?.peakV ?? 0
  const holdsV = withstandV({ workingRmsV: acrossLinesV(line), supplyHz: line.supplyHz })
  return peakV > holdsV ? [{ is: 'cross-withstand', verdict: 'fails', peakV, holdsV }] : []
}

/** Air at low pressure: the working peak, else the overshoot, against the Paschen minimum; to chassis and from line to line. */
function thinAir(
  line: PowerLine,
  inrush: InrushPeak | undefined,
  crossInrush: InrushPeak | undefined,
): readonly PowerReason[] {
  const told = (
    by: 'working-peak' | 'inrush',
    legV: number,
    acrossV: number,
    fromV: number,
  ): readonly PowerReason[] => {
    const peakV = Math.max(legV, acrossV)
    return peakV >= fromV ? [{ is: 'thin-air', verdict: 'marginal', by, peakV, isAcross: acrossV > legV }] : []
  }
  const working = told(
    'working-peak',
    crestV(line),
    line.crossF === 0 ? 0 : acrossCrestV(line),
    NEAR_PASCHEN * PASCHEN_MINIMUM_V,
  )
  return working.length > 0 ? working : told('inrush', inrush?.peakV ?? 0, crossInrush?.peakV ?? 0, PASCHEN_MINIMUM_V)
}
