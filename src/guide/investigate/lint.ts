/** Faults of the table of suspects and evidence. */
import type { Evidence, Reading, Suspect } from '../investigation.ts'
import type { Problem } from '../types.ts'
import { indexOf, type Table } from './table.ts'

const KEBAB = /^[a-z0-9]+(-[a-z0-9]+)*$/
/** A bit mask holds the options of one item. */
const MOST_OPTIONS = 30

const problem = (code: string, node: string, message: string): Problem => ({ code, node, message })

const isStrong = (say: string): boolean => say === 'rules-out' || say === 'proves'

function lintReading(table: Table, item: Evidence, option: Reading): readonly Problem[] {
  const { suspectById } = indexOf(table)
  const found: Problem[] = []
  const add = (code: string, message: string) => found.push(problem(code, item.id, `"${option.id}": ${message}`))
  if (!KEBAB.test(option.id)) add('id-form', 'the id is not lower case with hyphens.')
  if (option.means.trim() === '') add('means-missing', 'it does not say what this reading means.')
  for (const [id, say] of Object.entries(option.says)) {
    const suspect = suspectById.get(id)
    if (suspect === undefined) add('suspect-unknown', `"${id}" is not a suspect.`)
    else if (isStrong(say) && suspect.part !== item.about)
      add('other-part', `an item about the ${item.about} settles "${id}", which is a ${suspect.part}.`)
  }
  for (const id of Object.keys(option.cites ?? {}))
    if (option.says[id] === undefined) add('cite-empty', `a source is given for "${id}", of which it says nothing.`)
  if (!changesSomething(table, item, option)) add('changes-nothing', 'no decision and no question depends on it.')
  return found
}

function changesSomething(table: Table, item: Evidence, option: Reading): boolean {
  if (option.id === 'dont-know' || option.retired || item.about === 'safety' || item.about === 'line') return true
  if (
    item.id === 'wrong' ||
    Object.keys(option.says).length > 0 ||
    option.sets !== undefined ||
    option.gate !== undefined
  )
    return true
  return table.evidence.some(({ when }) =>
    when?.answered?.some(({ evidence, options }) => evidence === item.id && options.includes(option.id)),
  )
}

function lintCard({ id, card }: Evidence): readonly Problem[] {
  if (card === undefined) return [problem('card-missing', id, 'A test has no card.')]
  const isWhole = card.do.length > 0 && card.with.length > 0 && card.expect.trim() !== ''
  return isWhole ? [] : [problem('card-empty', id, 'The card lacks what to do, with what, or what to expect.')]
}

function lintItem(table: Table, item: Evidence): readonly Problem[] {
  const ids = item.options.map(({ id }) => id)
  const found: Problem[] = item.options.flatMap((option) => lintReading(table, item, option))
  if (!KEBAB.test(item.id)) found.push(problem('id-form', item.id, 'The id is not lower case with hyphens.'))
  if (new Set(ids).size < ids.length) found.push(problem('option-twice', item.id, 'Two readings have the same id.'))
  if (ids.length > MOST_OPTIONS) found.push(problem('too-many', item.id, 'More readings than the engine can hold.'))
  if (!ids.includes('dont-know')) found.push(problem('dont-know-missing', item.id, 'It has no "don\'t know".'))
  if (item.minutes <= 0) found.push(problem('no-cost', item.id, 'It costs no time.'))
  for (const text of [item.text, item.why, item.findOut])
    if (text.trim() === '') found.push(problem('text-missing', item.id, 'Text, reason or how to find out is missing.'))
  for (const { evidence, options } of item.when?.answered ?? []) {
    const other = table.evidence.find(({ id }) => id === evidence)
    for (const option of options)
      if (option !== 'set-aside' && other?.options.every(({ id }) => id !== option) !== false)
        found.push(
          problem('condition-unknown', item.id, `It waits for "${option}" of "${evidence}", which is not there.`),
        )
  }
  return item.kind === 'test' ? [...found, ...lintCard(item)] : found
}

function lintSuspect(table: Table, suspect: Suspect): readonly Problem[] {
  const { suspectById, evidenceById } = indexOf(table)
  const found: Problem[] = []
  const proof = evidenceById.get(suspect.proof)
  if (proof === undefined)
    found.push(problem('proof-missing', suspect.id, `Its proof "${suspect.proof}" is not an item.`))
  else if (!proof.options.some(({ says }) => says[suspect.id] === 'proves'))
    found.push(problem('proof-empty', suspect.id, `No reading of "${suspect.proof}" proves it.`))
  if (suspect.shows.length === 0) found.push(problem('shows-nothing', suspect.id, 'It can show as nothing.'))
  for (const path of suspect.paths ?? [])
    if (suspectById.get(path)?.part !== 'path') found.push(problem('path-unknown', suspect.id, `"${path}" is no path.`))
  return found
}

function canMeet({ when }: Evidence, symptoms: readonly string[]): boolean {
  return when?.symptoms === undefined || when.symptoms.some((symptom) => symptoms.includes(symptom))
}

/** Every two suspects of different cure with a symptom in common must be told apart by an item both can meet. */
function lintPairs(table: Table): readonly Problem[] {
  const { marks } = indexOf(table)
  const found: Problem[] = []
  for (const [at, one] of table.suspects.entries())
    for (const other of table.suspects.slice(at + 1)) {
      const common = one.shows.filter((symptom) => other.shows.includes(symptom))
      if (common.length === 0) continue
      const isTold = table.evidence.some((item) => {
        const [a, b] = [marks.get(item.id)?.get(one.id), marks.get(item.id)?.get(other.id)]
        return canMeet(item, common) && (a?.against !== b?.against || a?.proves !== b?.proves)
      })
      if (!isTold) found.push(problem('not-separated', one.id, `Nothing tells it from "${other.id}".`))
    }
  return found
}

/**
 * Every fault of a table, empty when it is sound: ids in form and unique, readings that say what they mean, change
 * something and settle only the item's own part, tests with a card, suspects with a proof, and every two suspects with
 * a symptom in common told apart.
 */
export function lintTable(table: Table): readonly Problem[] {
  const ids = [...table.suspects.map(({ id }) => id), ...table.evidence.map(({ id }) => id)]
  const twice = ids.filter(
    (id, at) => ids.indexOf(id) !== at && table.evidence.filter((each) => each.id === id).length > 1,
  )
  return [
    ...twice.map((id) => problem('id-twice', id, 'Two rows have this id.')),
    ...table.suspects.flatMap((suspect) => lintSuspect(table, suspect)),
    ...table.evidence.flatMap((item) => lintItem(table, item)),
    ...lintPairs(table),
  ]
}
