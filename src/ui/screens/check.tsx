import { useEffect, useMemo, useRef } from 'preact/hooks'
import type { Check } from '../../calc/types.ts'
import { type CheckModel, createCheck } from '../../state/check.ts'
import { type Desk, scratchDesk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { openAddress } from '../../state/opening.ts'
import { noteRecent } from '../../state/recents.ts'
import { noteAddress, type Pair } from '../../state/router.ts'
import { standing } from '../../state/runner.ts'
import { isAnswered } from '../parts/answer.tsx'
import { Text } from '../parts/book/terms.tsx'
import { withCheck } from '../parts/with-check.tsx'
import { useNextTurn } from '../rest.ts'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'
import { isResumed } from '../shell/start.ts'
import { CheckPanes } from './check-panes.tsx'
import { CheckTerms } from './check-terms.tsx'
import { LineBefore } from './line-before.tsx'
import { UndoButton } from './undo-button.tsx'

/** Typing settles for this long before the address follows; what is typed is stored at every key. */
const SETTLE_MS = 250

type ScreenGiven = { readonly id: string; readonly query: readonly Pair[] }

/** A quick check, on the Line under way or on the one its address brings. */
export function CheckScreen({ id, query }: ScreenGiven) {
  const View = viewOf(id)
  return <View id={id} query={query} />
}

const viewOf = withCheck(Ready)

function Ready({ check, id, query }: ScreenGiven & { readonly check: Check | undefined }) {
  if (!check) return <Nowhere path={`#/check/${id}`} what="check" />
  // A Line opened before the one under way is read back would not know what to keep aside.
  if (!isResumed.value)
    return (
      <p class="loading" role="status">
        Opening…
      </p>
    )
  return <OpenCheck key={keyOf(id, query)} check={check} query={query} />
}

/** Another address is another check; the same one rewritten while typing is not. */
function keyOf(id: string, query: readonly Pair[]): string {
  return JSON.stringify([id, query])
}

function OpenCheck({ check, query }: { readonly check: Check; readonly query: readonly Pair[] }) {
  const { model, isOld } = useMemo(() => {
    const opening = openAddress(check, query, expressionReading)
    return { model: createCheck(check, { ...scratchDesk, ...opening }, expressionReading), isOld: opening.isOld }
  }, [check, query])
  useEffect(() => model.dispose, [model])
  const isDue = useNextTurn()
  useAddress(model, scratchDesk, isOld)
  useRecent(model, query.length > 0)
  return (
    <CheckTerms check={check}>
      <Head title={check.title}>
        <UndoButton model={model} />
        <p class="muted check-question">
          <Text of={check.question} />
        </p>
      </Head>
      {isDue && (
        <CheckPanes model={model} desk={scratchDesk}>
          <LineBefore check={check.id} />
        </CheckPanes>
      )}
    </CheckTerms>
  )
}

/** A check that was answered is noted when it is left: by its address, never by its result. */
function useRecent({ check, answer, hash, isTouched, line }: CheckModel, isByAddress: boolean): void {
  useEffect(() => {
    const note = () => {
      const { shown, isLive } = standing(answer.peek())
      if (!isLive || shown === undefined || !isAnswered(shown) || !(isTouched.peek() || isByAddress)) return
      const at = new Date().toISOString()
      noteRecent({ lineId: line.peek().id, check: check.id, address: hash.peek(), at })
    }
    addEventListener('pagehide', note)
    return () => {
      removeEventListener('pagehide', note)
      note()
    }
  }, [check, answer, hash, isTouched, line, isByAddress])
}

/** The address follows the typed text, shortly after it rests and whenever a field is left. */
function useAddress({ hash, isTouched }: CheckModel, { line }: Desk, isOld: boolean): void {
  const ours = useRef(location.hash)
  const follow = () => {
    if (!isTouched.peek() && !isOld) return
    // a field that is taken off the page loses focus too: by then the address may be another screen's
    if (location.hash !== ours.current) return
    noteAddress(hash.peek(), line.peek().id)
    ours.current = location.hash
  }
  const latest = useRef(follow)
  latest.current = follow
  // heard beside the drawing: a new address changes nothing on the screen
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const stop = hash.subscribe(() => {
      clearTimeout(timer)
      timer = setTimeout(() => latest.current(), SETTLE_MS)
    })
    return () => {
      clearTimeout(timer)
      stop()
    }
  }, [hash])
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
