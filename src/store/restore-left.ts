/** Hands over what windows that have ended left unwritten; only then their copies go. */
import { beside } from './beside.ts'
import { keepSmallText, smallNames, smallText } from './browser-storage.ts'
import type { Late } from './edits.ts'
import { takeTyped } from './restore-long-text.ts'
import { restoreSteps } from './restore-steps.ts'
import type { Step } from './steps.ts'

/** `done`: called once these steps are written. */
export type Take = (steps: readonly Step[], late: Late, done?: () => void) => void

type Given = {
  /** how the names begin under which windows leave their steps, and what was typed into long texts */
  readonly unsaved: string
  readonly typing: string
  /** the name of this window's own */
  readonly mine: string
  readonly take: Take
}

export async function takeLeft({ unsaved, typing, mine, take }: Given): Promise<void> {
  const names = smallNames().filter((name) => name.startsWith(unsaved) && name !== mine)
  const typed = await takeTyped(typing).catch(() => undefined)
  if (typed !== undefined) take(restoreSteps(typed.steps), beside, () => typed.remove().catch(() => undefined))
  take(
    names.flatMap((name) => restoreSteps(parsed(smallText(name) ?? ''))),
    beside,
  )
  for (const name of names) keepSmallText(name, undefined)
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
