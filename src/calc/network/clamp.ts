/** What a clamp ferrite of known impedance does to the current in a loop. */

/**
 * Fall of the loop current in decibels: 20·log10(1 + Zb/Zloop), both taken as real. A reactive loop can differ either
 * way and can even show a gain. Zb and Zloop in ohms, above 0. Elementary circuit theory.
 */
export function clampFallDb({ clampOhm, loopOhm }: { readonly clampOhm: number; readonly loopOhm: number }): number {
  return 20 * Math.log10(1 + clampOhm / loopOhm)
}

/**
 * Impedance of the loop from the fall of its current: Zb / (10^(dB/20) − 1), real parts only. Infinite for a fall of
 * 0 dB: no effect says high impedance, another cable, or a clamp outside its band.
 */
export function loopOhmFrom({ clampOhm, fallDb }: { readonly clampOhm: number; readonly fallDb: number }): number {
  return clampOhm / (10 ** (fallDb / 20) - 1)
}

/** Least and most, in ohms; `most` is infinite where the reading leaves it open. */
export type OhmSpan = { readonly least: number; readonly most: number }

/**
 * Where |Zloop| lies whatever its phase against the clamp: |1 + Zb/Zloop| = a leaves |Zb/Zloop| between |a − 1| and
 * a + 1, with a = 10^(dB/20). Over every clamp impedance named and every fall within ±`offDb`. A gain (a fall below 0) is
 * taken as well. Triangle inequality.
 */
export function loopSpan(given: {
  readonly clampOhms: readonly number[]
  readonly fallDb: number
  readonly offDb: number
}): OhmSpan {
  const [low, high] = [10 ** ((given.fallDb - given.offDb) / 20), 10 ** ((given.fallDb + given.offDb) / 20)]
  const nearest = low > 1 ? low - 1 : high < 1 ? 1 - high : 0
  return { least: Math.min(...given.clampOhms) / (high + 1), most: Math.max(...given.clampOhms) / nearest }
}

/** Where one end lies, whatever the phases, when the loop and the other end are known: ||S| − |Z|| to |S| + |Z|. */
export function otherEnd(loop: OhmSpan, end: OhmSpan): OhmSpan {
  return { least: Math.max(0, loop.least - end.most, end.least - loop.most), most: loop.most + end.most }
}

/** |Z| that a current and a voltage of the same place mean: 10^((dBµV − dBµA)/20), in ohms. */
export function ohmFromLevels({ dbMicrovolt, dbMicroampere }: { dbMicrovolt: number; dbMicroampere: number }): number {
  return 10 ** ((dbMicrovolt - dbMicroampere) / 20)
}

/**
 * Source and load impedance from the two figures a clamp and a capacitor give: their sum S (clamp) and their parallel
 * value P (capacitor): (S ± √(S² − 4·S·P))/2, the larger first. Undefined when 4·P is above S, which no two real
 * impedances can give.
 */
export function pairFromSumAndParallel({
  sumOhm,
  parallelOhm,
}: {
  readonly sumOhm: number
  readonly parallelOhm: number
}): readonly [number, number] | undefined {
  const square = sumOhm * sumOhm - 4 * sumOhm * parallelOhm
  if (square < 0) return undefined
  const root = Math.sqrt(square)
  return [(sumOhm + root) / 2, (sumOhm - root) / 2]
}
