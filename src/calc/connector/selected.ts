/** Which contacts a text means: names and spans in the order of the connector, such as “1-12, A-F, GND”. */

export type SelectedContacts =
  | { readonly ok: true; readonly ids: readonly string[] }
  | { readonly ok: false; readonly message: string }

/** The contacts named, each once, in the order of the connector; a sentence where one is not among them. */
export function selectedContacts(text: string, ids: readonly string[]): SelectedContacts {
  const chosen = new Set<string>()
  for (const word of text.split(/[\s,;]+/)) {
    if (word === '') continue
    const found = spanOf(word, ids)
    if (typeof found === 'string') return { ok: false, message: found }
    for (const id of found) chosen.add(id)
  }
  if (chosen.size === 0) return { ok: false, message: 'Name the contacts, such as “1-12” or “A-F, GND”.' }
  return { ok: true, ids: ids.filter((id) => chosen.has(id)) }
}

/** A name with a dash in it is a name first. */
function spanOf(word: string, ids: readonly string[]): readonly string[] | string {
  if (ids.includes(word)) return [word]
  for (const dash of word.matchAll(/[-–]/g)) {
    const [first, last] = [word.slice(0, dash.index), word.slice(dash.index + 1)]
    const [from, to] = [ids.indexOf(first), ids.indexOf(last)]
    if (from < 0 || to < 0) continue
    if (to < from) return `“${word}” runs backwards here; write it as “${last}-${first}”.`
    return ids.slice(from, to + 1)
  }
  const ends = ids.length > 0 ? `; its contacts go from ${ids[0]} to ${ids.at(-1)}` : ''
  return `“${word}” is no contact of this connector${ends}.`
}
