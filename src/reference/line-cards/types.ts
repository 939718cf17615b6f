/**
 * What the field book tells of a kind of line beside its row in line-kinds/: how it looks when it is good, what a meter
 * reads, how its shield is run, what usually fails, what nobody does. Figures in SI units; no text carries one.
 */
import type { Citation } from '../line-kinds/types.ts'
import type { Wave } from './wave.ts'

/** One sentence or two, and how we know them. */
export type Told = { readonly text: string; readonly source: Citation }

/** What nobody can say of every line of a kind: what it is, and how it is found out on the one at hand. */
export type NotKnown = { readonly is: 'not-known'; readonly what: string; readonly measure: string }

/** What a meter reads with the power off. `at`: between what, and what is connected there. */
export type MeterOhms =
  | {
      readonly is: 'span'
      readonly at: string
      readonly leastOhm?: number
      readonly mostOhm?: number
      readonly source: Citation
    }
  /** so many ends carry the line's own impedance (`z0Ohm` of the kind), in parallel */
  | { readonly is: 'terminations'; readonly at: string; readonly ends: 1 | 2; readonly source: Citation }
  /** the resistance the kind's row gives for the signal */
  | { readonly is: 'signal-ohm'; readonly at: string }
  | NotKnown

/** What a suppressor of one leg may have at most, by common practice; `rateHz`: at this bit rate, else at every one. */
export type SuppressorCap = {
  readonly farads: number
  readonly rateHz?: number
  /** of the two legs together, where the practice counts the pair */
  readonly ofPair?: true
  readonly source: Citation
}

export type LineCard = {
  readonly carries: Told
  /** how it looks when it is good */
  readonly wave: Wave | NotKnown
  /** the box alone, its connector apart */
  readonly box: readonly [MeterOhms, ...MeterOhms[]]
  /** the harness from the connector on, with everything at its far ends */
  readonly line: readonly [MeterOhms, ...MeterOhms[]]
  readonly measure: Told
  readonly shield: Told
  /** rates the physics is worked out at, where the kind has no single one */
  readonly ratesHz?: readonly [number, ...number[]]
  /** pull-ups the physics is worked out at, where it asks for one */
  readonly pullUpsOhm?: readonly [number, ...number[]]
  readonly suppressor?: readonly SuppressorCap[]
  readonly faults: readonly [Told, ...Told[]]
  readonly never: readonly [Told, ...Told[]]
}

/** What differs of one kind from what its family has in common. */
export type CardRow = Partial<LineCard> & Pick<LineCard, 'carries' | 'wave'>

/** A kind nobody measures or treats: what it carries, and what to look at instead. */
export type BarredCard = {
  readonly carries: Told
  readonly faults: readonly [Told, ...Told[]]
  readonly never: readonly [Told, ...Told[]]
}
