/**
 * What a change does to a record, as pure functions: the same for the list in memory and for the disk, now or late.
 *
 * A typed text is written onto the text that was read. If something else stands there by now (another window), both are
 * kept: the one written now, and the other beside it as a rival until one of them is taken.
 */
import type { Fact, FactKey, Line, LineText, Rival } from '../calc/types.ts'
import type { Filled } from '../guide/fill-ins.ts'
import {
  type ComplaintPatch,
  type ComplaintRecord,
  type ComplaintRival,
  type ComplaintText,
  type ComplaintTexts,
  later,
  type SavedCheck,
} from './complaint.ts'
import type { KeptLine, LooseLine } from './line.ts'

/** The parts of a line that are changed as a whole; its facts are written one by one. */
export type LinePatch = Partial<Pick<Line, 'name' | 'gate' | 'trials'>>

/**
 * When a change was made. Changes to one record are ordered by counting them, since clocks are set back and forward:
 * `on`: how many it had had when it was read; `turn`: the number of this one. `seen`: when what was read had been
 * changed, where this clock is not after it (it was set back, or the other came from a device whose clock is ahead).
 */
export type When = { readonly at: string; readonly seen?: string; readonly on?: number; readonly turn?: number }

type Dated = { readonly updatedAt: string; readonly turn?: number }

/** The change with what is to be known of the record it is made on. */
export const madeOn = <S extends When>(step: S, read: Dated | undefined): S => {
  if (read === undefined) return step
  const { updatedAt, turn: on = 0 } = read
  return { ...step, on, turn: on + 1, ...(updatedAt >= step.at && { seen: updatedAt }) }
}

/** Of parts that are changed as a whole, what is taken of a patch that comes onto something newer. */
export type Beside = {
  readonly record: (newer: ComplaintRecord, patch: ComplaintPatch) => ComplaintPatch
  readonly line: (newer: KeptLine, patch: Omit<LinePatch, 'name'>) => LinePatch
}

/** Whether a change was left behind by a window that has ended: what is newer stays, and `Beside` says what comes to it. */
export type Late = boolean | Beside

const lateParts = (late: Late): Beside | undefined => (typeof late === 'object' ? late : undefined)

/** Two changes as one: made on what the first was made on. */
export const onFirst = <S extends When>({ on }: When, second: S): S => (on === undefined ? second : { ...second, on })

/** Whether the record was changed after that which a change was made on; by the clocks where nobody counted (a file). */
export const isNewer = ({ updatedAt, turn = 0 }: Dated, { at, seen = at, on }: When): boolean =>
  on === undefined ? updatedAt > seen : turn > on

/**
 * What says of a record once this is done when it was changed: later than what was read, whatever the clock says. Onto
 * something newer it counts past its own number, so that the next change of the same window meets something newer too.
 */
export function stampOf(
  { updatedAt, turn = 0 }: Dated,
  { at, seen, turn: own = 0 }: When,
  staysNewer = false,
): Required<Dated> {
  const next = seen === undefined ? at : new Date(Date.parse(seen) + 1).toISOString()
  return { updatedAt: later(updatedAt, next), turn: Math.max(turn + 1, own + (staysNewer ? 1 : 0)) }
}

/** A change to a complaint's own record. `base`: the texts that were read, on which the new ones were typed. */
export type ComplaintEdit = { readonly id: string } & When &
  (
    | { readonly do: 'change'; readonly patch: ComplaintPatch; readonly base?: ComplaintTexts }
    | { readonly do: 'check'; readonly check: SavedCheck }
    | ({ readonly do: 'cell' } & CellEdit)
    | ({ readonly do: 'settle'; readonly field: ComplaintText } & Choice)
    | { readonly do: 'delete' | 'undelete' }
  )

/** A change to one line of a complaint. */
export type LineEdit = { readonly id: string; readonly lineId: string } & When &
  (
    | ({ readonly do: 'fact' } & FactEdit)
    | ({ readonly do: 'settleFact'; readonly fact: LineText } & Choice)
    | LineChange
    | { readonly do: 'removeLine' | 'undoRemoveLine' }
  )

/** `base`: the name that was read, where it is changed. */
type LineChange = { readonly do: 'line'; readonly patch: LinePatch; readonly base?: string | undefined }

/** A fact as it is now (absent: taken off), typed on `base`. */
export type FactEdit = { readonly fact: FactKey; readonly next?: Fact | undefined; readonly base: string }

/** One cell of a table that is filled in, typed on `base`. */
export type CellEdit = {
  readonly table: string
  readonly row: number
  readonly column: string
  readonly text: string
  readonly base: string
}

/** The text that was taken, and the rivals that were seen and left. */
export type Choice = { readonly text: string; readonly left: readonly string[] }

type Aside = { readonly text: string; readonly at: string }
type Texts<R extends Aside> = { readonly text: string; readonly rivals: readonly R[] }

/** `staysNewer`: the change comes late, onto something that was changed after it was typed. */
export function writeText<R extends Aside>(
  { text, rivals }: Texts<R>,
  {
    base,
    next,
    staysNewer,
  }: { readonly base: string | undefined; readonly next: string; readonly staysNewer: boolean },
  rival: (text: string) => R,
): Texts<R> {
  if (text === next) return { text, rivals }
  if (text === base) return { text: next, rivals: rivals.filter((one) => one.text !== next) }
  const others = rivals.filter((one) => one.text !== base && one.text !== next)
  // An emptied field takes nothing away that was not read.
  if (next.trim() === '') return { text, rivals: others }
  if (staysNewer) return { text, rivals: [...others, rival(next)] }
  return { text: next, rivals: text.trim() === '' ? others : [...others, rival(text)] }
}

/** The texts that whoever took one has not seen: they stay. */
export function unseen<R extends Aside>(
  { text, rivals }: Texts<R>,
  choice: Choice,
  rival: (text: string) => R,
): readonly R[] {
  const isUnseen = (one: string) => one !== choice.text && one.trim() !== '' && !choice.left.includes(one)
  return [...rivals.filter((one) => isUnseen(one.text)), ...(isUnseen(text) ? [rival(text)] : [])]
}

/** The record with these rivals; none of them, no field. */
export const withRivals = <R, T extends { readonly rivals?: readonly R[] }>(record: T, rivals: readonly R[]): T => {
  const { rivals: _old, ...rest } = record
  // only the optional field was taken off
  return (rivals.length === 0 ? rest : { ...rest, rivals }) as T
}

type TextEdit = {
  readonly field: ComplaintText
  readonly next: string
  readonly base: string | undefined
  readonly at: string
  readonly staysNewer: boolean
}

function editText(record: ComplaintRecord, { field, next, base, at, staysNewer }: TextEdit): ComplaintRecord {
  const all = record.rivals ?? []
  const written = writeText(
    { text: record[field] ?? '', rivals: all.filter((one) => one.field === field) },
    { base, next, staysNewer },
    (text): ComplaintRival => ({ field, text, at }),
  )
  const others = all.filter((one) => one.field !== field)
  return {
    ...withRivals<ComplaintRival, ComplaintRecord>(record, [...others, ...written.rivals]),
    [field]: written.text,
  }
}

const isSameCheck = (a: SavedCheck, b: SavedCheck): boolean =>
  a.check === b.check && a.address === b.address && a.lineId === b.lineId

/** The check once more; one that is there already takes the newer edition of the rules, and the variants beside it. */
function withCheck(old: ComplaintRecord, changed: ComplaintRecord, check: SavedCheck): ComplaintRecord {
  const there = old.checks.find((one) => isSameCheck(one, check))
  if (there === undefined) return { ...changed, checks: [...old.checks, check] }
  const { rules = 0, beside = there.beside } = check
  const isNewer = rules > (there.rules ?? 0)
  if (!isNewer && beside === there.beside) return old
  const taken = { ...there, ...(isNewer && { rules }), ...(beside !== undefined && { beside }) }
  return { ...changed, checks: old.checks.map((one) => (one === there ? taken : one)) }
}

/** The record after a change. `late`: it was left behind by a window that has ended, so what is newer stays. */
export function editComplaint(old: ComplaintRecord, edit: ComplaintEdit, late: Late): ComplaintRecord {
  const staysNewer = late !== false && isNewer(old, edit)
  const stamp = stampOf(old, edit, staysNewer)
  const record = { ...old, ...stamp }
  switch (edit.do) {
    case 'change': {
      const { title, aircraft, note, ...whole } = edit.patch
      const texts = Object.entries({ title, aircraft, note }) as [ComplaintText, string | undefined][]
      const edited = texts.reduce((now, [field, next]) => {
        if (next === undefined) return now
        const base = edit.base?.[field] ?? (staysNewer ? undefined : (old[field] ?? ''))
        return editText(now, { field, next, base, at: edit.at, staysNewer })
      }, old)
      return { ...edited, ...(staysNewer ? lateParts(late)?.record(old, whole) : whole), ...stamp }
    }
    case 'check':
      return withCheck(old, record, edit.check)
    case 'cell':
      return { ...record, tables: writeCell(old.tables, edit, staysNewer) }
    case 'settle': {
      const own = (old.rivals ?? []).filter((one) => one.field === edit.field)
      const others = (old.rivals ?? []).filter((one) => one.field !== edit.field)
      const rival = (text: string): ComplaintRival => ({ field: edit.field, text, at: edit.at })
      const rivals = [...others, ...unseen({ text: old[edit.field] ?? '', rivals: own }, edit, rival)]
      return { ...withRivals<ComplaintRival, ComplaintRecord>(record, rivals), [edit.field]: edit.text }
    }
    case 'delete':
      return { ...old, turn: stamp.turn, ...(!staysNewer && { deletedAt: edit.at }) }
    case 'undelete': {
      const { deletedAt: _gone, ...rest } = old
      return { ...rest, turn: stamp.turn }
    }
  }
}

/**
 * The tables with one cell written. Where somebody typed another text there meanwhile, that one goes on in a line of its
 * own; with `staysNewer`, this one does.
 */
export function writeCell(filled: Filled = {}, cell: CellEdit, staysNewer = false): Filled {
  const { table, row, column, text, base } = cell
  const before = filled[table] ?? []
  const rows = Array.from({ length: Math.max(before.length, row + 1) }, (_, at) => before[at] ?? {})
  const there = rows[row]?.[column] ?? ''
  const isOthers = there !== '' && there !== base && there !== text
  const [stays, apart] = isOthers && staysNewer ? [there, text] : [text, there]
  const written = rows.map((one, at) => (at === row ? { ...one, [column]: stays } : one))
  return { ...filled, [table]: isOthers && apart !== '' ? [...written, { [column]: apart }] : written }
}

/** The line with one fact written. */
export function editFact<L extends LooseLine>(line: L, { fact, next, base }: FactEdit, when: When, late: Late): L {
  const all = line.rivals ?? []
  const old = line.facts[fact]
  const nextText = next?.text ?? ''
  const staysNewer = late !== false && isNewer(line, when)
  const written = writeText(
    { text: old?.text ?? '', rivals: all.filter((one) => one.fact === fact) },
    { base, next: nextText, staysNewer },
    (text): Rival => ({ fact, text, at: when.at }),
  )
  const facts = { ...line.facts }
  if (written.text === nextText && next !== undefined) facts[fact] = next
  else if (written.text === '') delete facts[fact]
  const rivals = [...all.filter((one) => one.fact !== fact), ...written.rivals]
  return { ...withRivals<Rival, L>(line, rivals), facts, ...stampOf(line, when, staysNewer) }
}

/** The line with one text of a fact taken, and the rivals that were seen put away. */
export function settleFact<L extends LooseLine>(line: L, fact: LineText, { text, left }: Choice, when: When): L {
  const all = line.rivals ?? []
  const own = all.filter((one) => one.fact === fact)
  const rival = (other: string): Rival => ({ fact, text: other, at: when.at })
  const there = fact === 'name' ? line.name : line.facts[fact]?.text
  const kept = unseen({ text: there ?? '', rivals: own }, { text, left }, rival)
  const settled = {
    ...withRivals<Rival, L>(line, [...all.filter((one) => one.fact !== fact), ...kept]),
    ...stampOf(line, when),
  }
  if (fact === 'name') return { ...settled, name: text }
  return there === text ? settled : { ...settled, facts: { ...line.facts, [fact]: { text, origin: { by: 'user' } } } }
}

/** The line with its name written. */
function editName(line: KeptLine, next: string, { base, at }: LineChange & When, staysNewer: boolean): KeptLine {
  const all = line.rivals ?? []
  const written = writeText(
    { text: line.name, rivals: all.filter(({ fact }) => fact === 'name') },
    { base: base ?? (staysNewer ? undefined : line.name), next, staysNewer },
    (text): Rival => ({ fact: 'name', text, at }),
  )
  const rivals = [...all.filter(({ fact }) => fact !== 'name'), ...written.rivals]
  return { ...withRivals<Rival, KeptLine>(line, rivals), name: written.text }
}

/** The line after a change. `late` as above. */
export function editLine(old: KeptLine, edit: LineEdit, late: Late): KeptLine {
  const staysNewer = late !== false && isNewer(old, edit)
  const stamp = stampOf(old, edit, staysNewer)
  switch (edit.do) {
    case 'fact':
      return editFact(old, edit, edit, late)
    case 'settleFact':
      return settleFact(old, edit.fact, edit, edit)
    case 'line': {
      const { name, ...whole } = edit.patch
      const named = name === undefined ? old : editName(old, name, edit, staysNewer)
      return { ...named, ...(staysNewer ? lateParts(late)?.line(old, whole) : whole), ...stamp }
    }
    case 'removeLine':
      return { ...old, ...stamp, ...(!staysNewer && { removedAt: edit.at }) }
    case 'undoRemoveLine': {
      const { removedAt: _gone, ...rest } = old
      return { ...rest, ...stamp }
    }
  }
}
