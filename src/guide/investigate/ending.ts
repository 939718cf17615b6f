/** Whether the cause is found, and how sure that is. */
import type { Cause } from './causes.ts'
import { servingAll } from './causes.ts'
import type { Standing } from './standing.ts'

/** The cause found: whose repair, and whether it is proven or likely. `with`: what else belongs to it. */
export type Found = {
  readonly cure: Standing
  readonly sure: 'proven' | 'likely'
  readonly members: readonly Standing[]
}

const hasEvidence = ({ is, balance }: Standing): boolean => is === 'proven' || balance > 0

/**
 * One repair serves every cause left, and something speaks for it (or for what it goes together with). It is proven
 * when its own suspect is.
 */
export function foundCause(causes: readonly Cause[]): Found | undefined {
  const serving = servingAll(causes)
  const cure = serving.find(({ is }) => is === 'proven') ?? serving.find(hasEvidence) ?? serving[0]
  if (cure === undefined) return undefined
  const members = causes.length === 1 ? (causes[0]?.members ?? []) : []
  const isBacked = hasEvidence(cure) || (causes.length === 1 && members.some(({ is }) => is === 'proven'))
  return isBacked ? { cure, sure: cure.is === 'proven' ? 'proven' : 'likely', members } : undefined
}
