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
