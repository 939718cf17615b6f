import { useMemo } from 'preact/hooks'
import type { PastePlan } from '../../../calc/connector/paste-plan.ts'
import { hashOfConnector } from '../../../state/connector-address.ts'
import { type PasteModel, pasteInto } from '../../../state/paste.ts'
import { goTo } from '../../../state/router.ts'
import type { ViewGiven } from './connector.tsx'
import { Columns } from './paste-columns.tsx'
import { PasteText } from './paste-text.tsx'
import { KindWords } from './paste-words.tsx'
import { PlannedRows } from './planned-rows.tsx'

/** A table of contacts, pasted or from a file: what it says is shown row by row before anything is changed. */
export function Paste({ complaint, connector }: ViewGiven) {
  const model = useMemo(() => pasteInto(complaint.id, connector.id), [complaint.id, connector.id])
  const pasted = model.pasted.value
  const take = () => {
    if (model.takeOver()) goTo(hashOfConnector(complaint.id, connector.id))
  }
  return (
    <div class="panes">
      <div class="pane stack">
        <PasteText model={model} />
        {pasted !== undefined && !pasted.ok && (
          <p class="notice against" role="alert">
            {pasted.message}
          </p>
        )}
        {pasted !== undefined && <Columns model={model} />}
        {pasted?.ok && <KindWords model={model} />}
      </div>
      <div class="pane stack">{pasted?.ok && <Preview model={model} onTake={take} />}</div>
    </div>
  )
}

const MOST_REFUSALS = 12

function Preview({ model, onTake }: { readonly model: PasteModel; readonly onTake: () => void }) {
  const plan = model.plan.value
  if (plan === undefined)
    return (
      <p role="status">
        {openWords(model) === 1 ? 'One word' : `${openWords(model)} words`} for the kind of line to be told first; then
        the rows are shown here.
      </p>
    )
  if (!plan.ok) {
    const { refusals } = plan
    return (
      <section class="notice" role="alert" aria-label="Not taken over">
        <p>
          <strong>Nothing is taken over yet.</strong> Put this right in the table:
        </p>
        <ul class="plain">
          {refusals.slice(0, MOST_REFUSALS).map((sentence) => (
            <li key={sentence} class="against">
              {sentence}
            </li>
          ))}
        </ul>
        {refusals.length > MOST_REFUSALS && <p>And {refusals.length - MOST_REFUSALS} more.</p>}
      </section>
    )
  }
  const counts = countsOf(plan)
  return (
    <section class="stack" aria-label="What changes">
      <p class="sentence" role="status">
        {sentenceOf(counts)}
      </p>
      <Pairs model={model} plan={plan} />
      {counts.new + counts.changed > 0 && (
        <button type="button" class="button strong wide" onClick={onTake}>
          Take over
        </button>
      )}
      {plan.untouched.length > 0 && (
        <p class="muted small">
          {plan.untouched.length === 1
            ? `Contact ${plan.untouched[0]} is not in the table and stays as it is.`
            : `${plan.untouched.length} contacts are not in the table and stay as they are.`}
        </p>
      )}
      <PlannedRows rows={plan.rows} />
    </section>
  )
}

const openWords = (model: PasteModel) => model.words.value.filter(({ meaning }) => meaning === undefined).length

type Plan = Extract<PastePlan, { ok: true }>
type Counts = Readonly<Record<'new' | 'changed' | 'same', number>>

function countsOf({ rows }: Plan): Counts {
  const count = (state: keyof Counts) => rows.filter((row) => row.state === state).length
  return { new: count('new'), changed: count('changed'), same: count('same') }
}

function sentenceOf(counts: Counts): string {
  const parts = [
    ...(counts.new > 0 ? [`${counts.new} new`] : []),
    ...(counts.changed > 0 ? [`${counts.changed} changed`] : []),
    ...(counts.same > 0 ? [`${counts.same} the same`] : []),
  ]
  return counts.new + counts.changed === 0 ? 'The connector holds all of this already.' : `${parts.join(', ')}.`
}

/** Pairs that only the names of functions tell are the user's to take or leave. */
function Pairs({ model, plan }: { readonly model: PasteModel; readonly plan: Plan }) {
  const isOn = model.pairsByName.value
  const byName = plan.rows.filter(({ pair }) => pair?.by === 'name' && pair.leg === 'a')
  if (isOn && byName.length === 0) return null
  return (
    <div class="field flag">
      <label for="pairs-by-name">
        {isOn
          ? byName.length === 1
            ? 'One pair by its names: one line on two contacts'
            : `${byName.length} pairs by their names: one line on two contacts each`
          : 'Pairs by their names'}
      </label>
      <input
        id="pairs-by-name"
        type="checkbox"
        class="switch"
        checked={isOn}
        onChange={(event) => model.pairByName(event.currentTarget.checked)}
      />
    </div>
  )
}
