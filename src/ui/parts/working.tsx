import type { Basis, Source } from '../../calc/types.ts'
import { SOURCES } from '../../reference/sources.ts'
import { STANDING_WORDS } from '../../reference/standing.ts'
import { printed } from './figure.ts'

/** How a figure came about: formula with its numbers, what was assumed, where it is written and how well we know it. */
export function Working({ basis }: { readonly basis: Basis }) {
  return (
    <div class="working">
      {basis.steps.length > 0 && (
        <ol class="steps">
          {basis.steps.map((step) => (
            <li key={`${step.formula}${step.withNumbers}`}>
              <p class="formula">{step.formula}</p>
              <p class="formula muted">
                {step.withNumbers} = <strong>{printed(step.si, step.quantity, 5)}</strong>
              </p>
            </li>
          ))}
        </ol>
      )}
      {basis.assumptions.length > 0 && (
        <>
          <p class="working-name">Taken for granted</p>
          <ul class="plain">
            {basis.assumptions.map((assumption) => (
              <li key={assumption}>{assumption}</li>
            ))}
          </ul>
        </>
      )}
      <p class="working-name">Source</p>
      <Sources sources={basis.sources} />
    </div>
  )
}

export function Sources({ sources }: { readonly sources: readonly Source[] }) {
  return (
    <ul class="plain">
      {sources.map((source) => (
        <li key={`${source.id}${source.clause ?? ''}${source.standing}`}>
          {SOURCES[source.id].title}
          {source.clause ? `, ${source.clause}` : ''}
          <span class="standing">{STANDING_WORDS[source.standing]}</span>
        </li>
      ))}
    </ul>
  )
}
