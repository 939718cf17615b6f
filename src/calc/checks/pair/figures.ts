/** The numbers of the pair check: how much common mode unequal capacitors, or windings, turn into signal. */
import { type Choke, USUAL_LEAKAGE_FRAC } from '../../network/choke.ts'
import {
  type ChokedPair,
  chokedConversionRatio,
  isBalanced,
  type WorstConversion,
  worstChokedConversion,
} from '../../network/choked-pair.ts'
import { pairCommonF, pairDifferentialF, ratioDb } from '../../pair.ts'
import type { Figures, Refused, Verdict } from '../../types.ts'
import { chokeIssues } from '../choke-issues.ts'
import type { PairGiven } from './inputs.ts'

/** The frequency of those given where most is converted, as a ratio of volts. */
export type Hardest = { readonly hz: number; readonly ratio: number }

export type PairFigures = Figures & {
  /** the number stands, is no comfort, or is not known yet */
  readonly verdict: Verdict
  /** absent = something must still be entered */
  readonly circuit?: ChokedPair
  readonly hardest?: Hardest
  readonly worst?: WorstConversion
}

export function pairFigures(given: PairGiven): PairFigures | Refused {
  const { capacitanceF: legF, capacitance2F: leg2F, legOhm, frequencyHz } = given
  const none = { bounds: [], rungs: [] }
  const choke = chokeOf(given)
  const issues = choke === undefined ? [] : chokeIssues(choke)
  if (issues.length > 0) return { ok: false, issues }
  if (legF === undefined || leg2F === undefined || legOhm === undefined)
    return { ...none, verdict: 'unknown', values: {} }
  const circuit: ChokedPair = { legF, leg2F, legOhm, choke }
  const hardest = hardestOf(circuit, frequencyHz ?? [])
  const worst = isBalanced(circuit) ? { ratio: 0, hz: undefined } : worstChokedConversion(circuit)
  const verdict = verdictOf(circuit, worst, isOneWire(given))
  return {
    ...none,
    verdict,
    values: {
      ...(hardest !== undefined && hardest.ratio > 0 ? { conversionDb: ratioDb(hardest.ratio) } : {}),
      ...(worst.ratio > 0 ? { worstConversionDb: ratioDb(worst.ratio) } : {}),
      ...(worst.hz === undefined ? {} : { worstHz: worst.hz }),
      differentialF: pairDifferentialF(circuit),
      commonF: pairCommonF(circuit),
    },
    circuit,
    ...(hardest === undefined ? {} : { hardest }),
    worst,
  }
}

export const isOneWire = ({ chokeH = 0, chokeWires }: PairGiven): boolean => chokeH > 0 && chokeWires === 'one'

/** Around one wire it is no choke, and is not counted. A leakage that is not stated is taken as the most it usually is. */
function chokeOf(given: PairGiven): Choke | undefined {
  const { chokeH: windingH, chokeLeakageH } = given
  if (windingH === undefined || windingH === 0 || isOneWire(given)) return undefined
  return {
    windingH,
    leakageH: chokeLeakageH ?? USUAL_LEAKAGE_FRAC.most * windingH,
    windingOhm: given.chokeOhm,
    acrossF: given.chokeF,
    mismatchFrac: given.chokeMismatchFrac ?? 0,
  }
}

function hardestOf(circuit: ChokedPair, frequenciesHz: readonly number[]): Hardest | undefined {
  return frequenciesHz
    .map((hz) => ({ hz, ratio: isBalanced(circuit) ? 0 : chokedConversionRatio(circuit, hz) }))
    .reduce<Hardest | undefined>((worst, at) => (worst === undefined || at.ratio > worst.ratio ? at : worst), undefined)
}

/** A leg without its capacitor: worse than none on both. */
export const hasDeadLeg = ({ legF, leg2F }: ChokedPair): boolean => legF !== leg2F && (legF === 0 || leg2F === 0)

/** More signal than there is common mode: a resonance of the choke with the capacitors. */
export const isResonant = ({ ratio }: WorstConversion): boolean => ratio > 1 + 1e-9

/** The question is for a number: it stands, but equal legs, a dead one and a resonance are no comfort. */
function verdictOf(circuit: ChokedPair, worst: WorstConversion, hasOneWire: boolean): Verdict {
  if (hasOneWire) return 'unknown'
  return worst.ratio === 0 || hasDeadLeg(circuit) || isResonant(worst) ? 'marginal' : 'ok'
}
