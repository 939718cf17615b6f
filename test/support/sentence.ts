/** The sentence a check answers a story with, its verdict, and the field it would be decided by. */
import type { Check } from '../../src/calc/types.ts'
import { sentenceOf } from '../../src/calc/verdict.ts'
import { run } from './run-check.ts'

export function answered(check: Check, texts: Readonly<Record<string, string>>) {
  const result = run(check, texts)
  return {
    sentence: sentenceOf(result).replaceAll('\u00a0', ' '),
    verdict: result.verdict,
    needs: result.needs?.key,
  }
}
