import type { Face } from '../../calc/connector/face.ts'
import { type ContactMark, Mark } from './contact-mark.tsx'

export type ContactsGiven = {
  readonly places: Face['places']
  readonly markAt: (id: string) => ContactMark
  /** whether the names are drawn too: where neighbours are far enough apart to read them */
  readonly isNamed: boolean
  readonly chosen?: ReadonlySet<string> | undefined
  readonly current?: string | undefined
  /** on the screen each contact is an option of a list; on paper it is a mark */
  readonly option?: { readonly idOf: (id: string) => string; readonly wordsOf: (id: string) => string } | undefined
}

/** Half of the step of the rectangular shells' sides. */
const SLANT = 0.35

/** The outline of the shell: a trapezoid round rows, a ring round rings. */
function outlineOf({ shape, halfWidth, halfHeight }: Face): string {
  if (shape === 'ring') {
    const radius = Math.max(halfWidth, halfHeight) - 0.1
    return `M${-radius} 0a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`
  }
  const [w, h] = [halfWidth - 0.1, halfHeight - 0.1]
  return `M${-w} ${-h}L${w} ${-h}L${w - SLANT} ${h}L${-w + SLANT} ${h}z`
}

/** What stands behind the contacts of a face. */
export const FaceOutline = ({ face }: { readonly face: Face }) => <path class="face-shell" d={outlineOf(face)} />

/** Contacts of a face, in units of the distance of two contacts; no interaction, for screen and paper. */
export function FaceContacts({ places, markAt, isNamed, chosen, current, option }: ContactsGiven) {
  return (
    <>
      {places.map(({ id, x, y }) => (
        <g
          key={id}
          {...(option && {
            id: option.idOf(id),
            role: 'option',
            'aria-label': option.wordsOf(id),
            'aria-selected': chosen?.has(id) ?? false,
          })}
        >
          {(chosen?.has(id) || current === id) && (
            <rect
              class={chosen?.has(id) ? 'face-chosen' : 'face-current'}
              x={x - 0.47}
              y={y - 0.47}
              width={0.94}
              height={0.94}
              rx={0.12}
            />
          )}
          <Mark mark={markAt(id)} x={x} y={isNamed ? y - 0.17 : y} size={isNamed ? 0.62 : 0.95} />
          {isNamed && (
            <text class="face-name" x={x} y={y + 0.4} style={{ fontSize: `${sizeOf(id)}px` }}>
              {id}
            </text>
          )}
        </g>
      ))}
    </>
  )
}

/** Letters of a name, so that longer ones stay within their place. */
const sizeOf = (id: string): number => Math.min(0.34, 1.3 / Math.max(1, id.length))
