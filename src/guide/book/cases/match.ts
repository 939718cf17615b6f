/** Which documented cases answer alike: what a complaint has answered so far against what each document gives. */
import type { Answers } from '../../types.ts'
import { CASES } from './all.ts'
import type { CaseRecord } from './types.ts'

/** Answers that settle nothing by themselves. */
const SAYS_NOTHING = new Set(['dont-know', 'set-aside'])
/** Questions of safety are not what makes two complaints alike. */
const isSafety = (item: string): boolean => item.startsWith('gate')

/** Answers the two share, and whether they contradict each other in what both know. */
export function likeness(answers: Answers, one: CaseRecord): { readonly shared: number; readonly isContrary: boolean } {
  let [shared, contrary] = [0, false]
  for (const [item, option] of Object.entries(answers)) {
    const theirs = one.answers[item]
    if (theirs === undefined || isSafety(item) || SAYS_NOTHING.has(option) || one.inferred?.includes(item)) continue
    if (theirs === option) shared++
    else contrary = true
  }
  return { shared, isContrary: contrary }
}

/** Least answers in common before a case is called like: what is wrong, and one thing more. */
const LEAST_SHARED = 2

/** Cases that share at least two answers and contradict none, the nearest first; at most `most`. */
export function casesLike(answers: Answers, most = 3): readonly CaseRecord[] {
  return CASES.map((one) => ({ one, ...likeness(answers, one) }))
    .filter(({ shared, isContrary }) => shared >= LEAST_SHARED && !isContrary)
    .sort((a, b) => b.shared - a.shared)
    .slice(0, most)
    .map(({ one }) => one)
}
