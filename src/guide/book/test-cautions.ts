/** The cautions of tests of the guide, for pages that tell of them or lead to them: the wording and the choice stand with the test. */
import { EVIDENCE } from '../evidence/evidence.ts'

/** What the cards of these items warn of, each once. */
export const cautionsOfTests = (items: readonly string[]): readonly string[] => [
  ...new Set(EVIDENCE.filter(({ id }) => items.includes(id)).flatMap(({ cautions = [] }) => cautions)),
]
