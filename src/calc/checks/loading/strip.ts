/** What the signal stands, drawn on the strip: one row, the ceilings and the value asked about. */
import type { Taken } from '../../bounds/room.ts'
import { takenShare } from '../../explain/taken.ts'
import { stripAxis } from '../../strip-axis.ts'
import type { Bound, Picture, SaidBound, Verdict } from '../../types.ts'

/**
 * Strip of the loading bounds in farads of each leg before tolerance; undefined when there is nothing to draw.
 * `askedF` is the capacitance entered.
 */
export function loadingStrip(q: {
  readonly bounds: readonly SaidBound[]
  /** what the line itself stands, nothing taken off */
  readonly works: Bound | undefined
  readonly taken: Taken
  readonly askedF: number | undefined
  readonly verdict: Verdict
}): Picture | undefined {
  const working = q.bounds.filter((b) => b.nature === 'works').map((b) => b.markedF)
  const worksF = working.length === 0 ? undefined : Math.min(...working)
  const permitted = q.bounds.filter((b) => b.nature === 'permitted').map((b) => b.markedF)
  const permittedF = permitted.length === 0 ? undefined : Math.min(...permitted)
  if (worksF === undefined && permittedF === undefined) return undefined
  const share = q.works && takenShare(q.works, q.taken)
  return {
    is: 'strip',
    title: q.taken.isPair ? 'Capacitance of each leg, before tolerance' : 'Capacitance to chassis, before tolerance',
    ...stripAxis([worksF, share?.ownF, permittedF, q.askedF]),
    marks: [],
    ...(q.askedF === undefined || q.askedF <= 0 ? {} : { chosenF: q.askedF }),
    rows: [
      {
        topology: 'C',
        label: q.taken.isPair ? 'leg' : 'line',
        best: true,
        state: worksF === undefined ? 'none' : 'half',
        ...(worksF === undefined ? {} : { mostF: worksF }),
        ...(share === undefined ? {} : { takenToF: share.ownF, takenWhy: share.sentence }),
        ...(permittedF === undefined ? {} : { permittedF }),
        holes: [],
        verdict: q.verdict,
        note: worksF === undefined ? 'no ceiling known' : 'what the signal stands',
      },
    ],
  }
}
