/** What the signal stands, drawn on the strip: one row, the ceilings and the value asked about. */
import { stripAxis } from '../../strip-axis.ts'
import type { Picture, SaidBound, Verdict } from '../../types.ts'

/**
 * Strip of the loading bounds in farads of each leg before tolerance; undefined when there is nothing to draw.
 * `askedF` is the capacitance entered.
 */
export function loadingStrip(q: {
  readonly bounds: readonly SaidBound[]
  readonly askedF: number | undefined
  readonly isPair: boolean
  /** per leg, at 0 V */
  readonly suppressorF: number
  readonly verdict: Verdict
}): Picture | undefined {
  const worksF = q.bounds.find((b) => b.nature === 'works')?.markedF
  const permitted = q.bounds.filter((b) => b.nature === 'permitted').map((b) => b.markedF)
  const permittedF = permitted.length === 0 ? undefined : Math.min(...permitted)
  if (worksF === undefined && permittedF === undefined) return undefined
  const takenToF = worksF !== undefined && q.suppressorF > 0 ? worksF + q.suppressorF : undefined
  return {
    is: 'strip',
    title: q.isPair ? 'Capacitance of each leg, before tolerance' : 'Capacitance to chassis, before tolerance',
    ...stripAxis([worksF, takenToF, permittedF, q.askedF]),
    marks: [],
    ...(q.askedF === undefined || q.askedF <= 0 ? {} : { chosenF: q.askedF }),
    rows: [
      {
        topology: 'C',
        label: q.isPair ? 'leg' : 'line',
        best: true,
        state: worksF === undefined ? 'none' : 'half',
        ...(worksF === undefined ? {} : { mostF: worksF }),
        ...(takenToF === undefined ? {} : { takenToF }),
        ...(permittedF === undefined ? {} : { permittedF }),
        holes: [],
        verdict: q.verdict,
        note: worksF === undefined ? 'no ceiling known' : 'what the signal stands',
      },
    ],
  }
}
