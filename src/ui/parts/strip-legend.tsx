import type { StripMark, StripRow } from '../../calc/types.ts'
import { rowPieces, type StripPicture, stripSpan, type Zone } from './strip-shape.ts'

type Kind = Zone | StripMark['kind'] | 'permitted' | 'proposed'

/** What the zones and marks of the strip mean: only those that are on it. `fillOf` is the hatching of a zone. */
export function StripLegend({
  picture,
  fillOf,
}: {
  readonly picture: StripPicture
  readonly fillOf: (zone: Zone) => string | undefined
}) {
  const span = stripSpan(picture)
  const zones = new Set(picture.rows.flatMap((row) => rowPieces(row, span)).map((piece) => piece.is))
  const kinds = new Set(picture.marks.map((mark) => mark.kind))
  const has = (part: keyof StripRow) => picture.rows.some((row) => row[part] !== undefined)
  const entries: readonly (readonly [Kind, string, boolean])[] = [
    ['small', 'too small for the need', zones.has('small')],
    ['allowed', 'allowed', zones.has('allowed')],
    ['half', 'not known: no ceiling', zones.has('half')],
    ['care', has('isWithCare') ? 'with care: its row says why' : 'with care: needs approval', zones.has('care')],
    ['excluded', 'excluded', zones.has('excluded')],
    ['shut', 'no room: too small and excluded at once', zones.has('shut')],
    ['hole', 'need lost again (resonance)', zones.has('hole')],
    ['taken', 'taken by suppressor and line', zones.has('taken')],
    ['permitted', 'allowed by a document', has('permittedF')],
    ['proposed', 'proposed value', has('proposedF')],
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
              <Sample kind={kind} fillOf={fillOf} />
            </svg>
            {word}
          </li>
        ))}
    </ul>
  )
}

type SampleGiven = { readonly kind: Kind; readonly fillOf: (zone: Zone) => string | undefined }

function Sample({ kind, fillOf }: SampleGiven) {
  if (kind === 'permitted') return <path class="limit permitted" d="M10 0v14" />
  if (kind === 'proposed') return <circle class="proposed" cx="10" cy="7" r="4" />
  if (kind === 'failed' || kind === 'cleared') return <circle class={kind} cx="10" cy="7" r="5" />
  if (kind === 'harmed') return <path class="harmed" d="M5 2l10 10m0-10L5 12" />
  return <ZoneMark zone={kind} fillOf={fillOf} xPx={1} yPx={1} widthPx={18} heightPx={12} />
}

/** A zone: its ground by class, its hatching over it. */
export function ZoneMark(given: {
  readonly zone: Zone
  readonly fillOf: (zone: Zone) => string | undefined
  readonly xPx: number
  readonly yPx: number
  readonly widthPx: number
  readonly heightPx: number
}) {
  const { zone, fillOf, xPx, yPx, widthPx, heightPx } = given
  const box = { x: xPx, y: yPx, width: widthPx, height: heightPx }
  const hatching = fillOf(zone)
  return (
    <>
      <rect class={zone} {...box} />
      {hatching !== undefined && <rect class="hatching" fill={hatching} {...box} />}
    </>
  )
}
