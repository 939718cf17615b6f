/** A triage that starts with answers already found by the search; the one under way makes room and can be brought back. */
import { give } from './ask.ts'
import { loadGuide } from './guide-content.ts'
import { hashOf } from './router.ts'
import type { Given } from './search.ts'
import { restartTriage, triage } from './session.ts'

/** Gives the answers and says where the triage goes on. */
export async function startWith(answers: readonly Given[]): Promise<string> {
  const guide = await loadGuide()
  if (Object.keys(triage.peek().answers).length > 0) restartTriage()
  const positions = answers.map(({ evidence, option }) => give(guide, evidence, option))
  return hashOf('ask', positions.at(-1)?.current.id ?? guide.start)
}
