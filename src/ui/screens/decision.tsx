/** What stands around a decision: how sure it is, which answers carry it, what is withheld and why. */
import { isEvidence } from '../../guide/engine.ts'
import type { Guide, Outcome, Position } from '../../guide/types.ts'
import { earlierComplaints } from '../../state/ask.ts'
import { hashOf } from '../../state/router.ts'

/** Proven, or likely with the test that proves it. */
export function Sure({ guide, position }: { readonly guide: Guide; readonly position: Position }) {
  const { found } = position
  if (found === undefined) return null
  const { suspect } = found.cure
  const proof = guide.evidence.find(({ id }) => id === suspect.proof)
  return (
    <p>
      Cause: {suspect.name}, {found.sure}.
      {found.sure === 'likely' && proof && (
        <>
          {' '}
          Prove it by:{' '}
          <a class="link" href={hashOf('ask', proof.id)}>
            {proof.text}
          </a>
        </>
      )}
    </p>
  )
}

/** The reason, each clause with the answer that carries it. */
export function Reasons({ position }: { readonly position: Position }) {
  if (position.reasons.length === 0) return null
  return (
    <section aria-label="Because of these answers">
      <h2>Because of these answers</h2>
      <ul class="plain">
        {position.reasons.map(({ step, suspect }) => (
          <li key={`${step.node.id} ${suspect.id}`}>
            <a class="link" href={hashOf('ask', step.node.id)}>
              {step.label}
            </a>
            <span class="row-note">
              {step.node.text} {step.means} Speaks for: {suspect.name}.
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** A stop bars parts and trials; looking and thinking go on. */
export function ThinkOn({ position }: { readonly position: Position }) {
  const { current } = position
  if (!isEvidence(current)) return null
  return (
    <p>
      Nothing is fitted, tried or opened.{' '}
      <a class="link" href={hashOf('ask', current.id)}>
        Go on looking and thinking
      </a>
    </p>
  )
}

export function Earlier({ position }: { readonly position: Position }) {
  const found = earlierComplaints(position.answers)
  if (found.length === 0) return null
  return (
    <section aria-label="Seen before">
      <h2>This device has seen these answers before</h2>
      <ul class="plain">
        {found.map(({ id, title, cure, proof, answers }) => (
          <li key={id}>
            <a class="link" href={hashOf('log', id)}>
              {title || 'Untitled complaint'}
            </a>
            <span class="row-note">
              {position.standings.find(({ suspect }) => suspect.id === answers['closed'])?.suspect.name}
              {cure === '' ? '' : `; ${cure}`}
              {proof === '' ? '' : `; ${proof}`}
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

/** Why advice to fit or try a part is withheld; what was found is shown all the same. */
export function Withheld(given: {
  readonly guide: Guide
  readonly outcome: Outcome
  readonly position: Position
  readonly isAllowed: boolean
}) {
  const { guide, outcome, position, isAllowed } = given
  if (isAllowed || outcome.class === 'stop') return null
  const why = position.isPaperOnly
    ? 'This is a design on paper: the line is on the list, so nothing is fitted or tried on it.'
    : position.stop !== undefined
      ? `Fitting or trying a part is not advised: ${position.stop.headline.toLowerCase()}.`
      : 'Figures are shown, but fitting or trying a part is not advised until the safety questions are answered.'
  return (
    <p class="notice" role="status">
      {why}{' '}
      <a class="link" href={hashOf('ask', position.stop?.id ?? guide.start)}>
        {position.stop === undefined ? 'Answer them now.' : 'Why'}
      </a>
    </p>
  )
}
