/**
 * Whether the screen that was opened stands. Until then nothing else may take the phone's time: no offline copy is fetched,
 * nothing is drawn that is out of sight.
 */
import { effect, signal } from '@preact/signals'

/** False until the screen stands with its first answer and the browser had a moment; true from then on. */
export const isAtRest = signal(false)

/** What takes longer than this keeps nothing else waiting. */
const LATEST_MS = 5000
/** What is out of sight at first is drawn within about this time. */
const FOLLOWS_MS = 1000
/** A part that has come may ask for the next one. */
const SETTLED_MS = 50
/** Where the browser is busy all the time the work is done all the same. */
const IDLE_WITHIN_MS = 500

let holds = 0
let withdraw: (() => void) | undefined

/** Runs `work` once the browser has nothing more urgent to do; gives what withdraws it. */
export function whenIdle(work: () => void): () => void {
  if (typeof requestIdleCallback !== 'function') {
    // a timer set in a frame comes behind its painting
    let late: ReturnType<typeof setTimeout> | undefined
    const frame = requestAnimationFrame(() => {
      late = setTimeout(work)
    })
    return () => {
      cancelAnimationFrame(frame)
      clearTimeout(late)
    }
  }
  const asked = requestIdleCallback(() => work(), { timeout: IDLE_WITHIN_MS })
  return () => cancelIdleCallback(asked)
}

const rest = () => {
  isAtRest.value = true
}

function settle(): void {
  withdraw?.()
  if (holds > 0 || isAtRest.peek()) return
  // what takes the place of a part that has come says what is still to come once it is painted, which a busy browser does late
  const frame = requestAnimationFrame(() => {
    const timer = setTimeout(() => {
      withdraw = whenIdle(rest)
    }, SETTLED_MS)
    withdraw = () => clearTimeout(timer)
  })
  withdraw = () => cancelAnimationFrame(frame)
}

/** Something on the first screen is still to come; gives what says that it is there. */
export function holdRest(): () => void {
  holds += 1
  settle()
  let isHeld = true
  return () => {
    if (!isHeld) return
    isHeld = false
    holds -= 1
    settle()
  }
}

settle()
setTimeout(rest, LATEST_MS)

/** Comes once the screen stands and what follows it had time to be drawn. */
export const atRest = (): Promise<void> =>
  new Promise((resolve) => {
    effect(() => {
      if (isAtRest.value) setTimeout(resolve, FOLLOWS_MS)
    })
  })
