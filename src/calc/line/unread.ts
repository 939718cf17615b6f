/** A field that another check would fill, had it not refused its own texts on the line. */
import type { Fact, FactKey, Figures, Input, Line, Refused, WordlessCheck } from '../types.ts'
import { isRefused, UNREAD } from './evaluate.ts'
import type { Field } from './fields.ts'
import { wasPutAway } from './put-away.ts'

type OnLine = {
  readonly line: Line
  readonly stated: (key: FactKey) => Fact | undefined
  readonly counted: (check: WordlessCheck) => Figures | Refused
}

/**
 * A limit that was found and cannot be read is not a limit that is not there: the field is refused with the reason.
 * Undefined where the provider reads its texts, has none on this line, or says by what it hands over that something is
 * there. A trial that a safety question keeps from being judged is left out.
 */
export function unreadFor(line: OnLine, input: Input, provider: WordlessCheck | undefined): Field | undefined {
  if (provider?.whileUnread === undefined || input.whenEmpty.do !== 'omit') return undefined
  const { facts, sentence } = provider.whileUnread
  if (!facts.some((fact) => line.stated(fact) !== undefined || wasPutAway(line.line, fact))) return undefined
  const figures = line.counted(provider)
  if (!isRefused(figures) || figures.lists !== undefined) return undefined
  const [issue] = figures.issues
  if (issue === undefined || issue.code === 'barred') return undefined
  const field = { key: input.key, input, text: '' }
  if (issue.code === 'pending') return { ...field, state: 'pending' }
  const label = provider.inputs.find(({ key }) => key === issue.key)?.label ?? provider.title
  const message = `${sentence} ${label}: ${issue.message}`
  return { ...field, state: 'refused', issue: { key: input.key, code: UNREAD, message } }
}
