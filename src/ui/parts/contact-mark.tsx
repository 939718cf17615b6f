import type { ContactRow } from '../../calc/connector/contact-row.ts'
import type { Contact } from '../../calc/connector/types.ts'
import type { Verdict } from '../../calc/types.ts'
import { VERDICT_WORDS } from '../../calc/verdict.ts'

/** What a contact is at a glance: its verdict, or why it has none. */
export type ContactMark = Verdict | 'barred' | 'bare' | 'ground' | 'spare' | 'feed-through' | 'open'

export const MARK_WORDS: Readonly<Record<ContactMark, string>> = {
  ...VERDICT_WORDS,
  barred: 'never',
  bare: 'bare',
  ground: 'ground',
  spare: 'spare',
  'feed-through': 'feed-through',
  open: 'not decided',
}

/** `row`: of the schedule, where it is worked out. */
export function markOf(contact: Contact, row: ContactRow | undefined): ContactMark {
  if (contact.type !== 'line') return contact.type
  if (row === undefined) return 'open'
  if (row.decided.by === 'barred') return 'barred'
  if (row.decided.by === 'user' && row.decided.part === undefined && row.verdict === undefined) return 'bare'
  return row.verdict ?? 'open'
}

type Glyph = {
  /** the shape, within 0.42 of its middle */
  readonly shape: string
  /** the sign in it */
  readonly sign?: string
  readonly isFilled?: true
}

const ring = (radius: number): string =>
  `M${-radius} 0a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0z`

/** Our own signs: every state has a shape and a sign of its own, so that none needs its colour. */
const GLYPHS: Readonly<Record<ContactMark, Glyph>> = {
  ok: { shape: ring(0.42), sign: 'M-.2 .02L-.05 .18L.22 -.17', isFilled: true },
  marginal: { shape: 'M0 -.44L.46 .36L-.46 .36z', sign: 'M0 -.14L0 .1M0 .22L0 .23' },
  fails: {
    shape: 'M-.17 -.42L.17 -.42L.42 -.17L.42 .17L.17 .42L-.17 .42L-.42 .17L-.42 -.17z',
    sign: 'M-.18 -.18L.18 .18M.18 -.18L-.18 .18',
    isFilled: true,
  },
  unknown: { shape: 'M-.38 -.38L.38 -.38L.38 .38L-.38 .38z', sign: 'M-.13 -.1A.13 .13 0 1 1 .03 .03L0 .1M0 .22L0 .23' },
  barred: { shape: ring(0.42), sign: 'M-.28 .28L.28 -.28' },
  bare: { shape: ring(0.42) },
  ground: { shape: ring(0.42), sign: 'M0 -.26L0 0M-.22 0L.22 0M-.13 .12L.13 .12M-.05 .24L.05 .24' },
  spare: { shape: ring(0.24) },
  'feed-through': { shape: ring(0.42), sign: 'M-.42 0L.42 0M.12 -.14L.27 0L.12 .14' },
  open: { shape: ring(0.42), sign: 'M-.13 0L.13 0' },
}

/** Of an arc, its first two numbers are radii; turn and flags stand before the fifth, behind which its end follows. */
const ARC_RADII = 2
const ARC_END = 5

const rounded = (value: number): number => Math.round(value * 1e4) / 1e4

/**
 * A path of a glyph where it stands, in the units of its drawing. Worked into the numbers: a transform for each of 128 marks
 * is as many pieces that the browser puts together anew in every frame.
 */
export function placedPath(path: string, x: number, y: number, size: number): string {
  return path.replace(/([MLAa])([^MLAaz]*)/g, (_, command: string, numbers: string) => {
    const given = (numbers.match(/-?(?:\d*\.)?\d+/g) ?? []).map(Number)
    const isArc = command === 'A' || command === 'a'
    const placed = given.map((value, at) => {
      if (isArc && at >= ARC_RADII && at < ARC_END) return value
      const isLength = command === 'a' || (isArc && at < ARC_RADII)
      const from = isArc ? at - ARC_END : at
      return rounded(value * size + (isLength ? 0 : from % 2 === 0 ? x : y))
    })
    return `${command}${placed.join(' ')}`
  })
}

const SHAPE_LINE = 0.08
const SIGN_LINE = 0.11

/** The sign of a contact, in a drawing whose unit is the distance of two contacts. */
export function Mark({
  mark,
  x,
  y,
  size,
}: {
  readonly mark: ContactMark
  readonly x: number
  readonly y: number
  readonly size: number
}) {
  const { shape, sign, isFilled } = GLYPHS[mark]
  return (
    <g class={`mark ${mark}`}>
      <path
        class={isFilled ? 'mark-shape filled' : 'mark-shape'}
        d={placedPath(shape, x, y, size)}
        stroke-width={rounded(SHAPE_LINE * size)}
      />
      {sign !== undefined && (
        <path class="mark-sign" d={placedPath(sign, x, y, size)} stroke-width={rounded(SIGN_LINE * size)} />
      )}
    </g>
  )
}

/** The sign beside words; the word always stands beside it. */
export function MarkIcon({ mark }: { readonly mark: ContactMark }) {
  return (
    <svg class="mark-icon" viewBox="-0.5 -0.5 1 1" width="24" height="24" aria-hidden="true" focusable="false">
      <Mark mark={mark} x={0} y={0} size={1} />
    </svg>
  )
}
