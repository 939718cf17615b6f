/** The one order of verdicts (fails, then unknown, then marginal, then ok) and the one list of words for them. */
import type { Finding, Success } from './said.ts'
import type { Verdict } from './terms.ts'

/** What every screen, shared text and sheet of paper says for a verdict; addresses and files keep the ids. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  ok: 'yes',
  marginal: 'with care',
  fails: 'no',
  unknown: 'not known',
}

/** A sentence around the word of its verdict: "10 nF: ", "no", ". The whole bus stands 4.8 nF a leg." */
export type AroundWord = { readonly before: string; readonly word: string; readonly after: string }

/** Where a sentence says the word of its verdict, small or with a capital; undefined = it does not. */
export function aroundWord(sentence: string, verdict: Verdict): AroundWord | undefined {
  const saying = VERDICT_WORDS[verdict]
  const found = new RegExp(`^${saying}(?!\\p{L})|(?<![\\p{L}\\d])${saying}(?=[.:,;])`, 'iu').exec(sentence)
  if (found === null) return undefined
  const [word] = found
  return { before: sentence.slice(0, found.index), word, after: sentence.slice(found.index + word.length) }
}

/** The word beside an answer's mark; none where a number is the answer and stands. */
export const wordOf = ({ verdict, answers }: Pick<Success, 'verdict' | 'answers'>): string =>
  verdict === undefined || (answers === 'number' && verdict === 'ok') ? '' : VERDICT_WORDS[verdict]

/**
 * The answer in one sentence, the same on the page, in the log, in shared text, on paper and spoken: the word of the
 * verdict is in it, unless the question was for a number and the number is the answer.
 */
export function sentenceOf(result: Pick<Success, 'verdict' | 'headline' | 'answers'>): string {
  const { verdict, headline } = result
  const word = wordOf(result)
  return verdict === undefined || word === '' || aroundWord(headline, verdict)
    ? headline
    : `${capital(word)}. ${headline}`
}

export const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`

/** Larger is worse. */
export const VERDICT_RANK: Readonly<Record<Verdict, number>> = { ok: 0, marginal: 1, unknown: 2, fails: 3 }

/** The worse of two verdicts. */
export function worse(a: Verdict, b: Verdict): Verdict {
  return VERDICT_RANK[a] >= VERDICT_RANK[b] ? a : b
}

/** Findings with the worst first; equals keep their order. */
export function worstFirst(findings: readonly Finding[]): readonly Finding[] {
  return [...findings].sort((a, b) => VERDICT_RANK[b.verdict] - VERDICT_RANK[a.verdict])
}
