/** The one order of verdicts: fails, then unknown, then marginal, then ok. */
import type { Finding, Verdict } from './types.ts'

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
