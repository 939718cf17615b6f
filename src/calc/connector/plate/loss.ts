/** Loss of volts against the bare ones; dB, 400 either way: beyond it nothing is left, or nothing is certain. */
export const FLOOR_DB = -400

export const lossDb = (at: number, bare: number): number =>
  at > 0 ? Math.max(FLOOR_DB, 20 * Math.log10(bare / at)) : -FLOOR_DB
