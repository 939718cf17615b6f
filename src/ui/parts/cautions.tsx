import type { Verdict } from '../../calc/types.ts'
import { isSafetyId, SAFETY_TEXTS, type SafetyId } from '../../reference/safety.ts'
import { Icon } from './icon.tsx'

/** Cautions that stand open beside an answer; the rest is one tap away. */
const MOST_OPEN = 3

/** What hurts people comes before what harms the aircraft, and that before paper. The others follow in their own order. */
const FIRST: readonly SafetyId[] = [
  'lethal-voltage',
  'stored-charge',
  'running-engine',
  'key-down',
  'no-trial',
  'power-off',
  'trial-authority',
  'trial-not-for-flight',
]

/**
 * Those that fit the answer, the gravest first. The screening statement is left out: every answer ends with it anyway;
 * what "ok" means is said where something is ok.
 */
export function fittingCautions(ids: readonly string[], verdict?: Verdict): readonly SafetyId[] {
  const known = [...new Set(ids)]
    .filter(isSafetyId)
    .filter((id) => id !== 'screening' && (id !== 'ok-bounds' || verdict === undefined || verdict === 'ok'))
  const rank = (id: SafetyId) => (FIRST.includes(id) ? FIRST.indexOf(id) : FIRST.length)
  return known.sort((a, b) => rank(a) - rank(b))
}

/** Safety texts by id, one line each; the text is one tap away. */
export function Cautions(given: {
  readonly ids: readonly SafetyId[]
  readonly open?: boolean
  readonly label?: string
}) {
  const { ids, open = false, label = 'Cautions' } = given
  if (ids.length === 0) return null
  return (
    <section class="cautions" aria-label={label}>
      {ids.map((id) => (
        <details key={id} class="caution" open={open}>
          <summary>
            <Icon name="caution" />
            <span>{SAFETY_TEXTS[id].title}</span>
          </summary>
          <p>{SAFETY_TEXTS[id].text}</p>
        </details>
      ))}
    </section>
  )
}

/** The cautions of an answer or outcome: the gravest, and the others folded. `open`: with their texts, as at a stop. */
export function FoldedCautions(given: {
  readonly ids: readonly string[]
  readonly verdict?: Verdict | undefined
  readonly open?: boolean
}) {
  const { ids, verdict, open = false } = given
  const fitting = fittingCautions(ids, verdict)
  const rest = fitting.slice(MOST_OPEN)
  return (
    <>
      <Cautions ids={fitting.slice(0, MOST_OPEN)} open={open} />
      {rest.length > 0 && (
        <details class="fold" open={open}>
          <summary>{rest.length === 1 ? 'One more caution' : `${rest.length} more cautions`}</summary>
          <Cautions ids={rest} open={open} label="More cautions" />
        </details>
      )}
    </>
  )
}
