import type { ComponentChildren } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { lazy } from '../lazy.tsx'
import { COMING } from '../parts/coming.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { useRootMark } from '../parts/root-mark.ts'
import { Screening } from '../parts/screening.tsx'
import { useStandStill } from '../parts/stand-still.ts'
import { UseValues } from '../parts/use-values.tsx'
import { holdRest, isAtRest, whenIdle } from '../rest.ts'
import { offerSheet } from '../shell/offered-sheet.ts'
import { useFirstWait, useTurns } from '../turns.ts'
import { GateLine, Late } from './check-actions.tsx'
import { AfterAnswer, AnswerPane, EvidencePane } from './check-answer.tsx'
import { FieldGroups, OpenFields, Strangers } from './check-fields.tsx'
import { CheckFoot } from './check-foot.tsx'
import { CheckTool, CheckYield } from './check-tool.tsx'
import { CompareFold } from './compare-fold.tsx'

const Onward = lazy(async () => (await import('./onward.tsx')).Onward, null)

type Given = { readonly model: CheckModel; readonly desk: Desk; readonly children?: ComponentChildren }

/** A first screen draws the answer's place and the first field; behind that more fields, the folded ones, what lies below. */
const FIELDS_AFTER = [1, 4, 8, Number.POSITIVE_INFINITY] as const
const GROUPS_AFTER = FIELDS_AFTER.length
const TURNS = GROUPS_AFTER + 1
/** Turns that do not wait for a first answer: what a phone has in sight below its place. */
const TURNS_BEFORE = 1
/** Where a first answer takes longer nothing waits for it. */
const WAITS_MS = 400

/** Answer, fields and what explains the answer, rendered from the descriptor of the check. */
export function CheckPanes({ model, desk, children }: Given) {
  const panes = useRef<HTMLDivElement>(null)
  const form = useRef<HTMLFormElement>(null)
  useStandStill(panes)
  useRootMark('check')
  // drawn meanwhile, the rest would take the processor from the answer, and each of its turns would last twice as long
  const waits = useFirstWait(model.answer.value.is === 'working', WAITS_MS)
  const turns = useTurns(waits ? TURNS_BEFORE : TURNS)
  return (
    <UseValues.Provider value={model.use}>
      <PrintHead />
      <div ref={panes} class="panes check">
        <div class="pane answer-pane">
          <AnswerPane model={model} />
        </div>
        <form
          ref={form}
          class="pane field-pane"
          aria-label="What is known"
          onSubmit={(event) => event.preventDefault()}
        >
          {children}
          <CheckTool model={model} desk={desk} />
          <Strangers model={model} />
          <OpenFields model={model} desk={desk} most={FIELDS_AFTER[Math.min(turns, GROUPS_AFTER - 1)]} />
          {turns < GROUPS_AFTER ? COMING : <FieldGroups model={model} desk={desk} />}
        </form>
        <div class="pane detail-pane">{turns < TURNS ? COMING : <DetailPane model={model} desk={desk} />}</div>
      </div>
      {turns === TURNS && <CheckFoot model={model} form={form} />}
    </UseValues.Provider>
  )
}

function DetailPane({ model, desk }: Omit<Given, 'children'>) {
  return (
    <>
      <div class="evidence-pane">
        <EvidencePane model={model} />
      </div>
      <div class="after-pane stack">
        <CompareFold model={model} />
        <AfterAnswer model={model} desk={desk} />
        <CheckYield model={model} />
        <Late model={model} desk={desk} />
        <AfterFirst model={model} desk={desk} />
        <GateLine desk={desk} />
        <Screening />
      </div>
    </>
  )
}

/** What nobody waits for: it is fetched once the first answer, or why there is none, stands on the screen. */
function AfterFirst({ model, desk }: Omit<Given, 'children'>) {
  const isThere = model.answer.value.is !== 'working'
  const [wasThere, setThere] = useState(false)
  const [hasSheet, setSheet] = useState(false)
  useEffect(() => (isThere ? undefined : holdRest()), [isThere])
  const isFree = isThere && isAtRest.value
  useEffect(() => {
    if (isFree) setThere(true)
  }, [isFree])
  useEffect(() => {
    if (!wasThere) return
    const done = () => setSheet(true)
    let withdraw: (() => void) | undefined
    const stop = whenIdle(() => {
      const sheet = sheetOf(model)
      sheet.then(done, done)
      withdraw = offerSheet(sheet)
    })
    return () => {
      stop()
      withdraw?.()
    }
  }, [model, wasThere])
  return (
    <>
      {!hasSheet && COMING}
      {wasThere && <Onward model={model} desk={desk} />}
    </>
  )
}

async function sheetOf(model: CheckModel) {
  const { layCheckSheet } = await import('../paper/check-sheet.tsx')
  return () => layCheckSheet(model)
}
