/** Takes the lines out of a complaint that holds them, as complaints did until database version 1, and as files still do. */
import { newId } from './ids.ts'
import { isRecord } from './plain.ts'

type Raw = Record<string, unknown>

const isId = (value: unknown): value is string => typeof value === 'string' && /^[\w-]{1,64}$/.test(value)

/**
 * The complaint without its lines, and the lines as records of their own. Nothing is judged here and nothing is dropped:
 * what is no line, and what was set aside of a line, stays in the complaint or goes along with its line.
 */
export function splitLines(raw: Raw): { readonly complaint: Raw; readonly lines: readonly Raw[] } {
  const { lines: held, ...rest } = raw
  const complaintId = isId(raw['id']) ? raw['id'] : newId()
  const aside = Array.isArray(raw['kept']) ? [...raw['kept']] : []
  const hasOddKept = raw['kept'] !== undefined && !Array.isArray(raw['kept'])
  if (hasOddKept) aside.push({ at: 'kept', value: raw['kept'] })
  if (held !== undefined && !Array.isArray(held)) aside.push({ at: 'lines', value: held })
  const usedIds = new Set<string>()
  const lines = (Array.isArray(held) ? held : []).flatMap((line: unknown, index): Raw[] => {
    if (!isRecord(line)) {
      aside.push({ at: `lines.${index}`, value: line })
      return []
    }
    const id = isId(line['id']) && !usedIds.has(line['id']) ? line['id'] : newId()
    usedIds.add(id)
    const own = Array.isArray(line['kept']) ? [...line['kept']] : []
    if (line['kept'] !== undefined && !Array.isArray(line['kept'])) own.push({ at: 'kept', value: line['kept'] })
    if (line['id'] !== undefined && line['id'] !== id) own.push({ at: 'id', value: line['id'] })
    own.push(...takeOut(aside, `lines.${id}.`))
    const { updatedAt = raw['updatedAt'], order = index } = line
    return [{ ...line, id, complaintId, order, ...(updatedAt === undefined ? {} : { updatedAt }), kept: own }]
  })
  return {
    complaint: { ...rest, id: complaintId, ...(raw['id'] === complaintId ? {} : oddId(raw, aside)), kept: aside },
    lines,
  }
}

function oddId(raw: Raw, aside: unknown[]): Raw {
  if (raw['id'] !== undefined) aside.push({ at: 'id', value: raw['id'] })
  return {}
}

/** Removes from `aside` what was set aside below a place, and gives it with the rest of its place. */
function takeOut(aside: unknown[], below: string): readonly unknown[] {
  const isBelow = (one: unknown): one is { at: string; value: unknown } =>
    isRecord(one) && typeof one['at'] === 'string' && one['at'].startsWith(below)
  const found = aside.filter(isBelow)
  for (const one of found) aside.splice(aside.indexOf(one), 1)
  return found.map((one) => ({ ...one, at: one.at.slice(below.length) }))
}
