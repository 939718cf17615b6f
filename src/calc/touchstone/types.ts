/** Network parameters over frequency, as a Touchstone file holds them. Ohms, siemens and pure numbers; nothing normalised. */
export type Parameter = 'S' | 'Y' | 'Z' | 'H' | 'G'
export type NumberFormat = 'MA' | 'DB' | 'RI'
export type TouchstoneUnit = 'Hz' | 'kHz' | 'MHz' | 'GHz'

/** What a row and column of a mixed-mode matrix stands for: a single port, or the common or differential mode of two. */
export type ModePort =
  | { readonly is: 'single'; readonly port: number }
  | { readonly is: 'common' | 'differential'; readonly ports: readonly [number, number] }

export type Network = {
  readonly parameter: Parameter
  readonly portCount: number
  readonly hz: Float64Array
  /** row by row, frequency after frequency: place (k·n + row)·n + column */
  readonly re: Float64Array
  readonly im: Float64Array
  /** reference resistance of each port */
  readonly referenceOhm: readonly number[]
  /** absent: row n is port n */
  readonly modes?: readonly ModePort[]
}

export type TouchstoneReading =
  | {
      readonly ok: true
      readonly network: Network
      readonly version: '1' | '2'
      readonly unit: TouchstoneUnit
      readonly format: NumberFormat
      /** what stands in the comments before the data, the first of it */
      readonly comments: readonly string[]
      /** what was left out or taken for granted, in sentences */
      readonly remarks: readonly string[]
    }
  | { readonly ok: false; readonly line?: number; readonly column?: number; readonly message: string }

export type TouchstoneRefused = Extract<TouchstoneReading, { ok: false }>

export function refusedAt(message: string, line?: number, column?: number): TouchstoneRefused {
  return {
    ok: false,
    message,
    ...(line === undefined ? {} : { line }),
    ...(column === undefined ? {} : { column }),
  }
}

export const MOST_PORTS = 16
export const HZ_PER: Readonly<Record<TouchstoneUnit, number>> = { Hz: 1, kHz: 1e3, MHz: 1e6, GHz: 1e9 }
