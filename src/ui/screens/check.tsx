import { useEffect, useRef, useState } from 'preact/hooks'
import type { Check } from '../../calc/types.ts'
import { type CheckModel, createCheck } from '../../state/check.ts'
import { type Desk, scratchDesk } from '../../state/desk.ts'
import { addressHere, isStillAt, noteAddress } from '../../state/entry.ts'
import { expressionReading } from '../../state/expression.ts'
import { inSlices } from '../../state/in-slices.ts'
import { nextTurn } from '../../state/next-turn.ts'
import { type Opening, openAddress, readAhead } from '../../state/opening.ts'
import { noteRecent } from '../../state/recents.ts'
import type { Pair } from '../../state/router.ts'
import { standing } from '../../state/runner.ts'
import { scratch } from '../../state/session.ts'
import { isAnswered } from '../parts/answer.tsx'
import { Text } from '../parts/book/terms.tsx'
import { withCheck } from '../parts/with-check.tsx'
import { holdRest, isAtRest } from '../rest.ts'
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

type OpenGiven = { readonly check: Check; readonly query: readonly Pair[] }

function OpenCheck({ check, query }: OpenGiven) {
  const opened = useOpened({ check, query })
  return (
    <CheckTerms check={check}>
      <Head title={check.title}>
        {opened && <UndoButton model={opened.model} />}
        <p class="muted check-question">
          <Text of={check.question} />
        </p>
      </Head>
      {opened === undefined ? <span hidden aria-busy="true" /> : <Opened {...opened} isByAddress={query.length > 0} />}
    </CheckTerms>
  )
}

/** Short, beside a worker that starts and a browser that draws: a turn takes twice as long on the clock then. */
const OPENING_SLICE_MS = 3

type OpenedCheck = { readonly model: CheckModel; readonly isOld: boolean }

/** The check on its Line: at once where the app stands; a first screen shows its head and reads the Line in slices meanwhile. */
function useOpened({ check, query }: OpenGiven): OpenedCheck | undefined {
  const enter = () => openAddress(check, query, expressionReading)
  const open = (opening: Opening): OpenedCheck => ({
    model: createCheck(check, { ...scratchDesk, ...opening }, expressionReading),
    isOld: opening.isOld,
  })
  const [address] = useState(addressHere)
  const [opened, setOpened] = useState(() => (isAtRest.peek() && isStillAt(address) ? open(enter()) : undefined))
  useEffect(() => {
    if (opened !== undefined) return opened.model.dispose
    const release = holdRest()
    const left = new AbortController()
    // each in a turn of its own: the head is painted, the Line opened and read, the check made, its fields drawn
    const read = async () => {
      do await nextTurn()
      while (!isStillAt(address) && !left.signal.aborted)
      if (left.signal.aborted) return
      const opening = enter()
      await nextTurn()
      const ahead = readAhead(check, scratch.peek(), expressionReading)
      await inSlices(ahead, () => undefined, left.signal, OPENING_SLICE_MS)
      await nextTurn()
      if (left.signal.aborted) return
      const next = open(opening)
      await nextTurn()
      if (left.signal.aborted) next.model.dispose()
      else setOpened(next)
    }
    read().catch((error: unknown) => {
      // a Line left while it is read is no failure
      if (!left.signal.aborted) throw error
    })
    return () => {
      left.abort()
      release()
    }
  }, [opened])
  return opened
}

function Opened({ model, isOld, isByAddress }: OpenedCheck & { readonly isByAddress: boolean }) {
  useAddress(model, scratchDesk, isOld)
  useRecent(model, isByAddress)
  return (
    <CheckPanes model={model} desk={scratchDesk}>
      <LineBefore check={model.check.id} />
    </CheckPanes>
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
  const ours = useRef(addressHere())
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
