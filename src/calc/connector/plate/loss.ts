/** Loss of volts against the bare ones; dB, 400 either way: beyond it nothing is left, or nothing is certain. */
export const FLOOR_DB = -400

export function lossDb(at: number, bare: number): number {
  const db = 20 * Math.log10(bare / at)
  // also where it is no number: nothing is certain of that
  return db > FLOOR_DB ? Math.min(db, -FLOOR_DB) : FLOOR_DB
}
