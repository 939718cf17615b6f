/** A check whose figures others run without the words of its answer. */
import type { Check, Figures, Input, WordlessCheck } from './types.ts'

/** The same check with words. What is remembered of one is remembered of both. */
export const withWords = <I extends readonly Input[], F extends Figures>(
  wordless: WordlessCheck<I, F>,
  explain: Check<I, F>['explain'],
): Check<I, F> => ({ ...wordless, wordless, explain })
