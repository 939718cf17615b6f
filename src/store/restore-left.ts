/** Hands over what windows that have ended left unwritten; only then their copies go. */
import { beside } from './beside.ts'
import { keepSmallText, smallNames, smallText } from './browser-storage.ts'
import type { Late } from './edits.ts'
import { parsed } from './plain.ts'
import { takeTyped } from './restore-long-text.ts'
import { restoreSteps } from './restore-steps.ts'
import type { Step, Write } from './steps.ts'

/** `done`: called once these steps are written; `by`: how, where it is not the usual way. */
export type Take = (steps: readonly Step[], late: Late, done?: () => void, by?: Write) => void

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
  for (const { raw, writeOf, remove } of await takeTyped(typing).catch(() => [])) {
    const steps = restoreSteps(raw)
    take(steps, beside, () => remove().catch(() => undefined), writeOf(steps))
  }
  take(
    names.flatMap((name) => restoreSteps(parsed(smallText(name) ?? ''))),
    beside,
  )
  for (const name of names) keepSmallText(name, undefined)
}
