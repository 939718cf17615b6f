/** A long trace brought to the few points that carry its need, away from the screen. */
import { type SettleInput, settle } from '../calc/trace/settle.ts'
import type { Spectrum } from '../calc/trace/types.ts'
import { spectrumIn } from './rows.ts'

/** `rows`: the spectrum as it was kept in one run, so that no copy of it is made on the screen's thread. */
export type SettleJob = Pick<SettleInput, 'line'> & Pick<Spectrum, 'unit'> & { readonly rows: Blob }

export const run = async ({ line, unit, rows }: SettleJob) =>
  settle({ line, spectrum: { ...spectrumIn(await rows.arrayBuffer()), unit } })
