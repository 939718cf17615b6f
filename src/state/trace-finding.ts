/** The stored traces of a line held against its limit, on this thread in slices. */
import { proveTrace, type TraceFinding } from '../calc/trace/proof.ts'
import type { Line } from '../calc/types.ts'
import type { KeptTrace } from '../store/traces.ts'
import { inSlices } from './in-slices.ts'
import { spectrumOf } from './unpacked-spectrum.ts'

const DAMAGED = 'What is stored of the trace cannot be read any more: open its file again.'

/** Never fails: what cannot be read is what is missing. */
export async function findingOf(line: Line, traces: readonly KeptTrace[]): Promise<TraceFinding> {
  const ofRole = (role: KeptTrace['role']) => traces.find((trace) => trace.role === role && trace.kind === 'spectrum')
  const [after, before] = [ofRole('after'), ofRole('before')]
  if (after === undefined) return { holds: false, missing: DAMAGED }
  try {
    const pair = {
      line,
      after: (await spectrumOf(after)).spectrum,
      ...(before === undefined ? {} : { before: (await spectrumOf(before)).spectrum }),
    }
    return await inSlices(proveTrace(pair), () => {}, new AbortController().signal)
  } catch {
    return { holds: false, missing: DAMAGED }
  }
}
