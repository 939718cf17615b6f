/** The bond of a connector as it was typed; what is not is taken from practice, and said. */
import type { Express } from '../../line/fields.ts'
import type { Complex } from '../complex.ts'
import type { SharedTexts } from '../types.ts'
import { typedNumber } from '../whole/given.ts'

/** The bond of the plate: Rb + jωLb. Ω and H, ≥ 0. */
export type BondParts = { readonly bondOhm: number; readonly bondH: number }

export type TypedBond = BondParts & {
  /** what of the bond was typed; the rest is taken from practice */
  readonly typed: { readonly ohm: boolean; readonly henries: boolean }
  readonly refused: readonly string[]
}

/** What stands for a bond nobody entered: a metal face all round, as the contrary of a perfect one. */
export const USUAL_BOND = { ohm: 2.5e-3, henries: 0.5e-9 } as const

export function typedBond(shared: SharedTexts, express?: Express): TypedBond {
  const ohm = typedNumber(shared.bondOhm, { quantity: 'resistance', what: 'bond resistance', example: '2.5m' }, express)
  const henries = typedNumber(
    shared.bondH,
    { quantity: 'inductance', what: 'bond inductance', example: '0.5n' },
    express,
  )
  return {
    bondOhm: ohm.si ?? USUAL_BOND.ohm,
    bondH: henries.si ?? USUAL_BOND.henries,
    typed: { ohm: ohm.si !== undefined, henries: henries.si !== undefined },
    refused: [ohm.refused, henries.refused].filter((one): one is string => one !== undefined),
  }
}

export const bondAt = ({ bondOhm, bondH }: BondParts, hz: number): Complex => [bondOhm, 2 * Math.PI * hz * bondH]
