/** The first line of a result: the decision in one sentence. */
import type { Advice, AdviceItem, Outcome } from './types.ts'

const TOPOLOGY_WORDS: Readonly<Record<NonNullable<AdviceItem['topology']>, string>> = {
  C: 'a capacitor alone',
  L: 'an inductor alone',
  LC: 'LC, inductor towards the noise',
  CL: 'CL, capacitor towards the noise',
  PI: 'a Pi',
  T: 'a T',
}

/** The decision in one sentence of at most 25 words: what and where, which way round, how much. */
export function decisionSentence(outcome: Outcome, { items, mayAdviseParts }: Advice): string {
  if (!mayAdviseParts || (outcome.class !== 'filter' && outcome.class !== 'suppressor')) return `${outcome.headline}.`
  if (outcome.class === 'suppressor') {
    const decided = items.flatMap((item) => item.decided ?? [])
    return decided.length === 0 ? `${outcome.headline}.` : `${outcome.headline}; decided: ${decided.join(', ')}.`
  }
  const place = items.find(({ rule }) => rule.startsWith('place-'))?.decided
  const topology = items.find((item) => item.topology !== undefined)?.topology
  const need = items.find(({ rule }) => rule === 'need')?.decided
  const after = [topology && TOPOLOGY_WORDS[topology], need].filter((words) => words !== undefined)
  const what = place === undefined ? outcome.headline : `${outcome.headline}; ${place}`
  return `${[what, ...after].join(', ')}.`
}
