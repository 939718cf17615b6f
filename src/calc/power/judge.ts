/** A capacitor on a power line against the rules chosen for it and against the volts it must hold. Numbers only. */
import { type LadderFault, ladderFaults } from '../ladder.ts'
import type { Verdict } from '../terms.ts'
import type { Bound, RungFigure } from '../types.ts'
import { worse } from '../verdict.ts'
import { type InrushPeak, inrushPeak } from './inrush.ts'
import { type NavyLimit, navyBound, navyLimit } from './navy-rule.ts'
import { chassisFarads, crestV, PASCHEN_MINIMUM_V, type PowerLine, withstandV } from './supply.ts'

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
  | {
      readonly is: 'thin-air'
      readonly verdict: 'marginal'
      readonly by: 'working-peak' | 'inrush'
      readonly peakV: number
    }

export type PowerJudgement = {
  readonly verdict: Verdict
  readonly reasons: readonly PowerReason[]
  readonly bounds: readonly Bound[]
  readonly rungs: readonly RungFigure[]
  readonly navy: NavyLimit | undefined
  /** undefined when the wiring is not known, or next to nothing */
  readonly inrush: InrushPeak | undefined
}

/** A working peak from here on is close to where air can break down. */
const NEAR_PASCHEN = 0.9
const HAIR = 1 + 1e-9

/** Judges one capacitor to chassis. Volts rms or DC > 0, farads ≥ 0. */
export function judgePower(line: PowerLine, rules: PowerRules): PowerJudgement {
  const inrush = inrushOf(line)
  const rungs = rungsOf(line, inrush)
  const navy = rules.navyRule ? navyLimit({ supplyHz: line.supplyHz, loadW: rules.loadW }) : undefined
  const chassis = chassisLimit(line, rules)
  const limits = [...navyReasons(line, navy), ...chassis.reasons]
  const reasons: readonly PowerReason[] = [
    ...(limits.length === 0 ? [{ is: 'no-limit', verdict: 'unknown' } as const] : limits),
    ...ladderFaults(rungs).map((fault) => ({ is: 'ladder', verdict: 'fails', fault }) as const),
    ...thinAir(line, inrush),
  ]
  return {
    verdict: reasons.reduce<Verdict>((worst, { verdict }) => worse(worst, verdict), 'ok'),
    reasons,
    bounds: [...(navy?.limitF === undefined ? [] : [navyBound(navy.limitF)]), ...chassis.bounds],
    rungs,
    navy,
    inrush,
  }
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
function inrushOf(line: PowerLine): InrushPeak | undefined {
  const { wiringOhm: ohm = 0, wiringH: henries = 0, capacitanceF: farads } = line
  if (ohm === 0 && henries === 0) return undefined
  const peak = inrushPeak({ stepV: crestV(line), farads, ohm, henries })
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

/** Air at low pressure: the working peak, else the overshoot, against the Paschen minimum. */
function thinAir(line: PowerLine, inrush: InrushPeak | undefined): readonly PowerReason[] {
  const peakV = crestV(line)
  if (peakV >= NEAR_PASCHEN * PASCHEN_MINIMUM_V)
    return [{ is: 'thin-air', verdict: 'marginal', by: 'working-peak', peakV }]
  return inrush !== undefined && inrush.peakV >= PASCHEN_MINIMUM_V
    ? [{ is: 'thin-air', verdict: 'marginal', by: 'inrush', peakV: inrush.peakV }]
    : []
}
