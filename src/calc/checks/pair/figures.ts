/** The numbers of the pair check: how much common mode two unequal capacitors turn into signal. */
import {
  conversionRatio,
  type PairCircuit,
  pairCommonF,
  pairDifferentialF,
  ratioDb,
  worstConversionHz,
  worstConversionRatio,
} from '../../pair.ts'
import type { Figures, Verdict } from '../../types.ts'
import type { PairGiven } from './inputs.ts'

/** The frequency of those given where most is converted, as a ratio of volts. */
export type Hardest = { readonly hz: number; readonly ratio: number }

export type PairFigures = Figures & {
  /** absent = something must still be entered */
  readonly circuit?: PairCircuit
  readonly hardest?: Hardest
}

export function pairFigures({ capacitanceF: legF, capacitance2F: leg2F, legOhm, frequencyHz }: PairGiven): PairFigures {
  const none = { bounds: [], rungs: [] }
  if (legF === undefined || leg2F === undefined || legOhm === undefined) return { ...none, values: {} }
  const circuit: PairCircuit = { legF, leg2F, legOhm }
  const hardest = hardestOf(circuit, frequencyHz ?? [])
  const worst = worstConversionRatio(circuit)
  const worstHz = legF === leg2F ? undefined : worstConversionHz(circuit)
  const verdict = verdictOf(circuit)
  return {
    ...none,
    ...(verdict === undefined ? {} : { verdict }),
    values: {
      ...(hardest !== undefined && hardest.ratio > 0 ? { conversionDb: ratioDb(hardest.ratio) } : {}),
      ...(worst > 0 ? { worstConversionDb: ratioDb(worst) } : {}),
      ...(worstHz === undefined ? {} : { worstHz }),
      differentialF: pairDifferentialF(circuit),
      commonF: pairCommonF(circuit),
    },
    circuit,
    ...(hardest === undefined ? {} : { hardest }),
  }
}

function hardestOf(circuit: PairCircuit, frequenciesHz: readonly number[]): Hardest | undefined {
  return frequenciesHz
    .map((hz) => ({ hz, ratio: conversionRatio(circuit, hz) }))
    .reduce<Hardest | undefined>((worst, at) => (worst === undefined || at.ratio > worst.ratio ? at : worst), undefined)
}

/** What may be converted is not known here, so only a leg without its capacitor can be judged. */
export const hasDeadLeg = ({ legF, leg2F }: PairCircuit): boolean => legF !== leg2F && (legF === 0 || leg2F === 0)

const verdictOf = (circuit: PairCircuit): Verdict | undefined => (hasDeadLeg(circuit) ? 'marginal' : undefined)
