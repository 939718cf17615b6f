/** The part of the gate that reads one line: its facts, where they came from, and its trials. */
import { FACTS } from '../calc/ids.ts'
import type { Fact, FactKey, Line, Origin, Trial } from '../calc/types.ts'
import type { SourceId } from '../reference/sources.ts'
import { newId } from './complaint.ts'
import { entriesOf, isRecord } from './plain.ts'
import { isCheckId, isFactKey } from './restore-ids.ts'

/** Puts something aside under the place it was found. */
export type Keep = (at: string, value: unknown) => void

type Place = {
  /** where in the complaint this line was found */
  readonly at: string
  readonly from: 'stored' | 'import'
  /** ids taken by the lines before it */
  readonly usedIds: Set<string>
  readonly keep: Keep
  /** gets something back that an older version had put aside, if it can be read now */
  readonly takeBack: <T>(at: string, read: (value: unknown) => T | undefined) => T | undefined
}

const GATES = ['unknown', 'clear', 'barred'] as const
const LINE_KEYS = new Set(['id', 'name', 'gate', 'trials', 'facts'])

/** Shape only: the table of sources is large, and nothing stored is looked up in it. */
const isSourceId = (value: unknown): value is SourceId =>
  typeof value === 'string' && /^[A-Za-z][\w-]{0,39}$/.test(value)

function restoreOrigin(raw: unknown): Origin | undefined {
  if (!isRecord(raw)) return undefined
  const { by, source, node, id, check, why, favourable } = raw
  if (by === 'user') return { by }
  if (by === 'kind' && isSourceId(source)) return { by, source }
  if (by === 'answer' && typeof node === 'string') return { by, node }
  if (by === 'trial' && typeof id === 'string') return { by, id }
  if (by === 'check' && isCheckId(check)) return { by, check }
  if (by === 'assumed' && typeof why === 'string' && typeof favourable === 'boolean') return { by, why, favourable }
  return undefined
}

function restoreFact(raw: unknown): Fact | undefined {
  if (!isRecord(raw) || typeof raw['text'] !== 'string') return undefined
  const origin = restoreOrigin(raw['origin'])
  return origin === undefined ? undefined : { text: raw['text'], origin }
}

function restoreFacts(raw: unknown, lineAt: string, { keep, takeBack }: Place): Line['facts'] {
  const facts: { [K in FactKey]?: Fact } = {}
  if (raw !== undefined && !isRecord(raw)) keep(`${lineAt}.facts`, raw)
  for (const [key, value] of isRecord(raw) ? entriesOf(raw) : []) {
    const fact = isFactKey(key) ? restoreFact(value) : undefined
    if (isFactKey(key) && fact !== undefined) facts[key] = fact
    else keep(`${lineAt}.facts.${key}`, value)
  }
  for (const key of Object.keys(FACTS)) {
    if (!isFactKey(key) || facts[key] !== undefined) continue
    const fact = takeBack(`${lineAt}.facts.${key}`, restoreFact)
    if (fact !== undefined) facts[key] = fact
  }
  return facts
}

function restoreTrial(raw: unknown): Trial | undefined {
  if (!isRecord(raw)) return undefined
  const { id, legF, cleared, harmedSignal, repeatAgreed } = raw
  if (typeof id !== 'string' || typeof legF !== 'number' || !(legF > 0) || !Number.isFinite(legF)) return undefined
  if (typeof cleared !== 'boolean' || typeof harmedSignal !== 'boolean' || typeof repeatAgreed !== 'boolean')
    return undefined
  return { id, legF, cleared, harmedSignal, repeatAgreed }
}

function restoreTrials(raw: unknown, lineAt: string, keep: Keep): readonly Trial[] {
  if (!Array.isArray(raw)) {
    if (raw !== undefined) keep(`${lineAt}.trials`, raw)
    return []
  }
  return raw.flatMap((item: unknown, index) => {
    const trial = restoreTrial(item)
    if (trial === undefined) keep(`${lineAt}.trials.${index}`, item)
    return trial === undefined ? [] : [trial]
  })
}

/** A valid line, or undefined (with the value put aside) when it is not even a record. */
export function restoreLine(raw: unknown, place: Place): Line | undefined {
  const { at, from, usedIds, keep } = place
  if (!isRecord(raw)) {
    keep(at, raw)
    return undefined
  }
  const rawId = raw['id']
  const id = typeof rawId === 'string' && /^[\w-]{1,64}$/.test(rawId) && !usedIds.has(rawId) ? rawId : newId()
  usedIds.add(id)
  // Things put aside are filed under the line's id: its place in the list may change.
  const lineAt = `lines.${id}`
  if (rawId !== undefined && rawId !== id) keep(`${lineAt}.id`, rawId)
  for (const [key, value] of entriesOf(raw)) if (!LINE_KEYS.has(key)) keep(`${lineAt}.${key}`, value)
  if (raw['name'] !== undefined && typeof raw['name'] !== 'string') keep(`${lineAt}.name`, raw['name'])
  const gate = GATES.find((known) => known === raw['gate'])
  if (raw['gate'] !== undefined && gate === undefined) keep(`${lineAt}.gate`, raw['gate'])
  return {
    id,
    name: typeof raw['name'] === 'string' ? raw['name'] : '',
    // Nobody answers the safety gate for somebody else's aircraft.
    gate: from === 'import' ? 'unknown' : (gate ?? 'unknown'),
    trials: restoreTrials(raw['trials'], lineAt, keep),
    facts: restoreFacts(raw['facts'], lineAt, place),
  }
}
