/** The fields of a check as its screen shows them: what the Line says, and what was typed over since it was opened. */
import { type Express, type Field, readField, saySame } from '../calc/line/fields.ts'
import type { Resolution } from '../calc/line/resolver.ts'
import type { Check, Fact } from '../calc/types.ts'

/** What was typed over, by Line and fact: an answer, or several values where the field takes one. */
export type Displaced = ReadonlyMap<string, Fact>

type Given = {
  readonly resolution: Resolution
  readonly check: Check
  /** keys whose text belongs into its field whatever it is: it was typed there */
  readonly ownKeys: ReadonlySet<string>
  readonly displaced: Displaced
}

export function shownFields({ resolution, check, ownKeys, displaced }: Given, express?: Express): readonly Field[] {
  const { line } = resolution
  return resolution.fields(check).map((field) => {
    const { input, unsuited, ...rest } = field
    const own =
      unsuited !== undefined && ownKeys.has(input.key)
        ? readField(input, unsuited.text, { origin: unsuited.origin }, express)
        : field
    const before = displaced.get(`${line.id} ${input.fact}`)
    const others = rest.others ?? []
    const isSaid =
      before === undefined ||
      [own.text, ...others.map(({ text }) => text)].some((text) => saySame(input, text, before.text, express))
    return isSaid ? own : { ...own, others: [...others, before] }
  })
}

/** Gives the list of before where nothing in it differs, else its items that do not, so that nothing is done again for them. */
export function stable<T>(what: (item: T) => unknown): (list: readonly T[]) => readonly T[] {
  let before: { readonly list: readonly T[]; readonly said: readonly string[] } = { list: [], said: [] }
  return (list) => {
    const said = list.map((item) => JSON.stringify(what(item)))
    const kept = list.map((item, i) => (said[i] === before.said[i] ? (before.list[i] ?? item) : item))
    const isSame = kept.length === before.list.length && kept.every((item, i) => item === before.list[i])
    if (!isSame) before = { list: kept, said }
    return before.list
  }
}
