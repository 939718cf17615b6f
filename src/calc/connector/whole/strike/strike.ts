/**
 * What the strike of a whole connector is worked out from: plain numbers, so that it can be done elsewhere. Two cases: the
 * pin level on every contact at once (harsher than any test), and the level of the bundle, whose current the shield
 * shares and the contacts that clamp take in equal parts.
 */
import type { Struck } from './together.ts'

export const STRIKE_CASES = ['pins', 'bundle'] as const
export type StrikeCase = (typeof STRIKE_CASES)[number]

/** What is judged of one contact. Undefined = not known. */
export type StrikeContact = {
  readonly id: string
  readonly withstandV: number | undefined
  /** entered between the legs of its pair: each leg is struck against the reference, so that nothing is held against it */
  readonly pairWithstandV: number | undefined
  /** of the insulation in front of a transformer, held against the connector's volts instead */
  readonly insulationV: number | undefined
  /** neither the kind of line nor its highest peak is named: what it holds by itself is in no run */
  readonly isRestOpen: boolean
  readonly isInsulated: boolean
  readonly capacitorWithstandV: number | undefined
  readonly hasCapacitor: boolean
  readonly hasPart: boolean
  /** what the lead of its suppressor adds is in no run */
  readonly isLeadOpen: boolean
  readonly rating: StrikeRating | undefined
  readonly group: number | undefined
}

export type StrikeRating = {
  readonly ratedW: number
  readonly ambientC: number
  readonly derateZeroC: number
  readonly type: 'avalanche' | 'varistor' | 'crowbar'
}

export type StrikeGroup = {
  readonly id: string
  readonly contacts: readonly string[]
  readonly rating: StrikeRating | undefined
}

export type StrikeRun = {
  readonly of: StrikeCase
  readonly struck: Struck
  /** contacts of each line that is struck */
  readonly contacts: readonly (readonly string[])[]
}

export type StrikeQuestion = {
  readonly waveform: string
  readonly name: string
  /** levels as they were chosen, by case */
  readonly level: { readonly [K in StrikeCase]?: number }
  readonly isSteep: boolean
  readonly isRing: boolean
  /** the wire ahead of a contact with a capacitor was not entered: of a bundle test its inductance is in no run */
  readonly isWayOpen: boolean
  readonly runs: readonly StrikeRun[]
  readonly contacts: readonly StrikeContact[]
  /** the two contacts of every pair that is struck */
  readonly pairs: readonly (readonly [string, string])[]
  readonly groups: readonly StrikeGroup[]
  /** contacts of no run, with the reason */
  readonly left: readonly { readonly id: string; readonly why: string }[]
  /** what nobody entered of a suppressor, taken the stricter way: "temperature 85 °C" */
  readonly taken: readonly string[]
  readonly share: number | undefined
  readonly bond: { readonly ohm: number; readonly henries: number; readonly isTyped: boolean }
}
