import type { StripRow } from '../../calc/types.ts'
import type { StripPicture } from './strip-shape.ts'

/** What the marks of the strip mean: only those that are on it. */
export function StripLegend({ picture, hatch }: { readonly picture: StripPicture; readonly hatch: string }) {
  const has = (state: StripRow['state']) => picture.rows.some((row) => row.state === state)
  const kinds = new Set(picture.marks.map((mark) => mark.kind))
  const entries: readonly (readonly [string, string, boolean])[] = [
    ['open', 'open', has('open')],
    ['half', 'only one side known', has('half')],
    ['hatched', 'excluded', picture.rows.some((row) => row.state !== 'none')],
    ['shut', 'shut: the bounds cross', has('shut')],
    ['hole', 'need lost again (resonance)', picture.rows.some((row) => row.holes.length > 0)],
    ['taken', 'taken by suppressor and line', picture.rows.some((row) => row.takenToF !== undefined)],
    ['permitted', 'permitted by a document', picture.rows.some((row) => row.permittedF !== undefined)],
    ['proposed', 'proposed value', picture.rows.some((row) => row.proposedF !== undefined)],
    ['failed', 'tried, did not clear', kinds.has('failed')],
    ['cleared', 'tried, cleared', kinds.has('cleared')],
    ['harmed', 'tried, harmed the signal', kinds.has('harmed')],
  ]
  return (
    <ul class="legend">
      {entries
        .filter(([, , shown]) => shown)
        .map(([kind, word]) => (
          <li key={kind}>
            <svg viewBox="0 0 20 14" width="20" height="14" aria-hidden="true">
              <Sample kind={kind} hatch={hatch} />
            </svg>
            {word}
          </li>
        ))}
    </ul>
  )
}

function Sample({ kind, hatch }: { readonly kind: string; readonly hatch: string }) {
  if (kind === 'permitted') return <path class="permitted" d="M10 0v14" />
  if (kind === 'proposed') return <circle class="proposed" cx="10" cy="7" r="4" />
  if (kind === 'failed' || kind === 'cleared') return <circle class={kind} cx="10" cy="7" r="5" />
  if (kind === 'harmed') return <path class="harmed" d="M5 2l10 10m0-10L5 12" />
  if (kind === 'hatched' || kind === 'hole') {
    return (
      <>
        <rect class={kind === 'hole' ? 'hole' : 'ground'} x="1" y="1" width="18" height="12" />
        <rect fill={hatch} x="1" y="1" width="18" height="12" />
      </>
    )
  }
  return <rect class={kind} x="1" y="1" width="18" height="12" />
}
