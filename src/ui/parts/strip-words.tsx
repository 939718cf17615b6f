import type { LimitSide } from '../../calc/quantity/format.ts'
import type { SaidBound, StripRow } from '../../calc/types.ts'
import { limitText, printed } from './figure.ts'
import { ScrollX } from './scroll-x.tsx'
import { type StripPicture, spokenRow, stateWord } from './strip-shape.ts'

/** The bound of one side that binds: the largest least, or the smallest most that physics sets (or a document permits). */
export function binding(
  bounds: readonly SaidBound[],
  row: StripRow,
  side: SaidBound['side'],
  isPermitted = false,
): SaidBound | undefined {
  const fitting = bounds.filter(
    (bound) =>
      bound.side === side &&
      (bound.nature === 'permitted') === isPermitted &&
      (bound.topology === row.topology || bound.topology === 'any'),
  )
  const sign = side === 'least' ? -1 : 1
  return [...fitting].sort((a, b) => sign * (a.markedF - b.markedF))[0]
}

/** The two bounds of the best row in words, with their reasons. */
export function StripWords({
  picture,
  bounds,
}: {
  readonly picture: StripPicture
  readonly bounds: readonly SaidBound[]
}) {
  const row = spokenRow(picture)
  if (!row) return null
  const least = binding(bounds, row, 'least')
  const most = binding(bounds, row, 'most')
  const permitted = binding(bounds, row, 'most', true)
  return (
    <div class="strip-words">
      <p>
        <strong>{row.label}</strong>: {row.note || stateWord(row)}
      </p>
      {row.leastF !== undefined && (
        <p>
          <strong>{limitText(row.leastF, 'capacitance', 'least')} at least</strong>
          {least ? `: ${least.why}` : ''}
        </p>
      )}
      {row.mostF !== undefined && (
        <p>
          <strong>{limitText(row.mostF, 'capacitance', 'most')} at most</strong>
          {most ? `: ${most.why}` : ''}
        </p>
      )}
      {row.takenToF !== undefined && (
        <p>
          {row.takenWhy ??
            `${printed(row.takenToF, 'capacitance')} without the suppressor: it takes the difference and earns no attenuation.`}
        </p>
      )}
      {row.permittedF !== undefined && (
        <p>
          <strong>{limitText(row.permittedF, 'capacitance', 'most')} allowed by a document</strong>
          {`: ${permitted?.why ?? 'a document’s figure'}; above it: with care, needs approval.`}
        </p>
      )}
    </div>
  )
}

export function StripTable({ picture }: { readonly picture: StripPicture }) {
  const shown = (value: number | undefined, side: LimitSide = 'most') =>
    value === undefined ? '–' : limitText(value, 'capacitance', side)
  return (
    <details class="fold as-table">
      <summary>The strip as a table</summary>
      <ScrollX label={`${picture.title}, as a table`}>
        <table>
          <thead>
            <tr>
              <th scope="col">Topology</th>
              <th scope="col">State</th>
              <th scope="col">At least</th>
              <th scope="col">With care above</th>
              <th scope="col">At most</th>
              <th scope="col">Proposed</th>
            </tr>
          </thead>
          <tbody>
            {picture.rows.map((row) => (
              <tr key={row.topology}>
                <th scope="row">{row.label}</th>
                <td data-label="State">{stateWord(row)}</td>
                <td data-label="At least">{shown(row.leastF, 'least')}</td>
                <td data-label="With care above">{shown(row.permittedF)}</td>
                <td data-label="At most">{shown(row.mostF)}</td>
                <td data-label="Proposed">{shown(row.proposedF)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollX>
    </details>
  )
}

type Given = { readonly picture: StripPicture; readonly bounds: readonly SaidBound[] }

/** What a strip shows, in words and as a table. */
export function StripInWords(given: Given) {
  return (
    <>
      <StripWords {...given} />
      <StripTable picture={given.picture} />
    </>
  )
}
