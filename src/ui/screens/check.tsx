import { useEffect, useMemo, useRef } from 'preact/hooks'
import { checkById } from '../../calc/registry.ts'
import type { Check } from '../../calc/types.ts'
import { type CheckModel, createCheck, lineWith } from '../../state/check.ts'
import { expressionReading } from '../../state/expression.ts'
import { noteAddress, type Pair, readHash } from '../../state/router.ts'
import { scratch, writeScratchFact } from '../../state/session.ts'
import { Screening } from '../parts/cautions.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'
import { GateLine, Late, Onward } from './check-actions.tsx'
import { AnswerPane, DetailPane } from './check-answer.tsx'
import { Fields, Strangers } from './check-fields.tsx'

/** Typing settles for this long before the address and the stored line follow. */
const SETTLE_MS = 250

/** Any check, rendered from its descriptor; opened on the texts of the address. */
export function CheckScreen({ id, query }: { readonly id: string; readonly query: readonly Pair[] }) {
  const check = checkById(id)
  if (!check) return <Nowhere path={`#/check/${id}`} what="check" />
  return <OpenCheck key={keyOf(id, query)} check={check} query={query} />
}

/** Another address is another check; the same one rewritten while typing is not. */
function keyOf(id: string, query: readonly Pair[]): string {
  return JSON.stringify([id, query])
}

function OpenCheck({ check, query }: { readonly check: Check; readonly query: readonly Pair[] }) {
  const model = useMemo(() => createCheck(check, query, expressionReading), [check, query])
  useEffect(() => model.dispose, [model])
  useSettled(model)
  return (
    <>
      <Head title={check.title}>
        <p class="muted">{check.question}</p>
      </Head>
      <PrintHead />
      <div class="panes">
        <div class="pane answer-pane">
          <AnswerPane model={model} />
        </div>
        <form class="pane field-pane" aria-label="What is known" onSubmit={(event) => event.preventDefault()}>
          <Strangers model={model} />
          <Fields model={model} />
        </form>
        <div class="pane detail-pane">
          <DetailPane model={model} />
          <Late model={model} />
          <Onward model={model} />
          <GateLine />
          <Screening />
        </div>
      </div>
    </>
  )
}

/** Address and scratch line follow the typed text, shortly after it rests and whenever a field is left. */
function useSettled(model: CheckModel): void {
  const { texts, hash, isTouched, check } = model
  const text = texts.value
  const settle = () => {
    if (!isTouched.peek()) return
    // a field that is taken off the page loses focus too: by then the address may be another screen's
    const here = readHash(location.hash)
    if (here.place === 'check' && here.id === check.id) noteAddress(hash.peek())
    const line = lineWith(scratch.peek(), check, texts.peek())
    for (const { fact } of check.inputs)
      if (line.facts[fact] !== scratch.peek().facts[fact]) writeScratchFact(fact, line.facts[fact])
  }
  const latest = useRef(settle)
  latest.current = settle
  useEffect(() => {
    if (text === undefined) return
    const timer = setTimeout(() => latest.current(), SETTLE_MS)
    return () => clearTimeout(timer)
  }, [text])
  useEffect(() => {
    const now = () => latest.current()
    addEventListener('pagehide', now)
    addEventListener('focusout', now)
    return () => {
      removeEventListener('pagehide', now)
      removeEventListener('focusout', now)
    }
  }, [])
}
