/** A line as a record of its own: what is typed about one circuit, and the table by which it is read back. */
import type { Fact, Line, Origin, Rival, Trial } from '../calc/types.ts'
import type { SourceId } from '../reference/sources.ts'
import {
  dictionaryOf,
  flag,
  id,
  item,
  type Kept,
  listOf,
  oneOf,
  type Provenance,
  place,
  positive,
  type Reader,
  readRecord,
  required,
  schema,
  type Table,
  text,
  time,
  turn,
} from './gate.ts'
import { isCheckId, isFactKey, isLineText, newId } from './ids.ts'
import { isRecord } from './plain.ts'

/** Version of a line's shape. Raise it when the shape changes, and keep a fixture of every old one. */
export const LINE_SCHEMA = 3

/** The time of what has none. */
const UNTIMED = '1970-01-01T00:00:00.000Z'

/** A line with what this version did not understand of it: the scratch line, and the line of a triage. */
export type LooseLine = Line & {
  readonly schemaVersion: number
  readonly updatedAt: string
  /** how many changes it has had, as for a complaint */
  readonly turn?: number
  readonly kept: readonly Kept[]
}

/** A line of a complaint: `order` is its place among the others, `removedAt` is set while its removal can be undone. */
export type KeptLine = LooseLine & {
  readonly complaintId: string
  readonly order: number
  readonly removedAt?: string
}

const ORIGINS: { readonly [K in Origin['by']]: Reader<Origin> } = {
  user: item<Extract<Origin, { by: 'user' }>>({ by: required(oneOf(['user'])) }),
  kind: item<Extract<Origin, { by: 'kind' }>>({
    by: required(oneOf(['kind'])),
    // Shape only: the table of sources is large, and nothing stored is looked up in it.
    source: required((value) =>
      typeof value === 'string' && /^[A-Za-z][\w-]{0,39}$/.test(value) ? (value as SourceId) : undefined,
    ),
  }),
  answer: item<Extract<Origin, { by: 'answer' }>>({ by: required(oneOf(['answer'])), node: required(text) }),
  trial: item<Extract<Origin, { by: 'trial' }>>({ by: required(oneOf(['trial'])), id: required(text) }),
  check: item<Extract<Origin, { by: 'check' }>>({
    by: required(oneOf(['check'])),
    check: required((value) => (isCheckId(value) ? value : undefined)),
  }),
  assumed: item<Extract<Origin, { by: 'assumed' }>>({
    by: required(oneOf(['assumed'])),
    why: required(text),
    favourable: required(flag),
  }),
}

const origin: Reader<Origin> = (raw, at, gate) => {
  const by = isRecord(raw) ? raw['by'] : undefined
  const isKnown = (word: unknown): word is Origin['by'] => typeof word === 'string' && Object.hasOwn(ORIGINS, word)
  return isKnown(by) ? ORIGINS[by](raw, at, gate) : undefined
}

const FACT: Table<Fact> = { text: required(text), origin: required(origin) }

const TRIAL: Table<Trial> = {
  id: required(text),
  at: { read: time, or: () => UNTIMED },
  steps: required(text),
  places: { read: text, or: () => '' },
  noise: { read: text, or: () => '' },
  signal: { read: text, or: () => '' },
  repeats: { read: text, or: () => '' },
  times: { read: text, or: () => '' },
  removed: { read: text, or: () => '' },
}

/** A trial as the first version kept it: one value, and what it did. */
type FirstTrial = {
  readonly id: string
  readonly legF: number
  readonly cleared: boolean
  readonly harmedSignal: boolean
  readonly repeatAgreed: boolean
}

const FIRST_TRIAL: Table<FirstTrial> = {
  id: required(text),
  legF: required(positive),
  cleared: required(flag),
  harmedSignal: required(flag),
  repeatAgreed: required(flag),
}

/** One step of the columns: nothing it did not say is added, so that it proves no more than it did. */
function columnsOf({ id: key, legF, cleared, harmedSignal, repeatAgreed, ...strange }: FirstTrial): Trial {
  const columns = {
    id: key,
    at: UNTIMED,
    steps: `${legF} F`,
    places: '',
    noise: cleared ? 'gone' : 'same',
    signal: harmedSignal ? 'degraded' : 'good',
    repeats: repeatAgreed ? 'agreed' : 'differed',
    times: '',
    removed: '',
  }
  return { ...strange, ...columns }
}

const trial: Reader<Trial> = (raw, at, gate) => {
  if (!isRecord(raw) || raw['steps'] !== undefined) return item(TRIAL)(raw, at, gate)
  const first = item(FIRST_TRIAL)(raw, at, gate)
  return first && columnsOf(first)
}

const RIVAL: Table<Rival> = {
  fact: required((value) => (isLineText(value) ? value : undefined)),
  text: required(text),
  at: required(time),
}

const gateWord = oneOf<Line['gate']>(['unknown', 'clear', 'barred'])

const LOOSE: Table<Omit<LooseLine, 'kept'>> = {
  id: { read: id, or: newId },
  schemaVersion: { read: schema(LINE_SCHEMA), or: () => LINE_SCHEMA },
  // not "now": a line without a time must not look newer than what was typed since
  updatedAt: { read: time, or: () => UNTIMED },
  turn: { read: turn, or: () => undefined },
  name: { read: text, or: () => '' },
  gate: {
    // Nobody answers the safety gate for somebody else's aircraft.
    read: (value, at, gate) => {
      const word = gateWord(value, at, gate)
      return word !== undefined && gate.from === 'import' ? 'unknown' : word
    },
    or: () => 'unknown',
  },
  trials: { read: listOf(trial), or: () => [] },
  facts: { read: dictionaryOf(isFactKey, item(FACT)), or: () => ({}) },
  rivals: { read: listOf(item(RIVAL)), or: () => undefined },
}

const KEPT: Table<Omit<KeptLine, 'kept'>> = {
  ...LOOSE,
  complaintId: { read: id, or: newId },
  order: { read: place, or: () => 0 },
  removedAt: { read: time, or: () => undefined },
}

/** Every field a record of these types has, for the guard over the fixtures. */
export const LINE_FIELDS = { loose: [...Object.keys(LOOSE), 'kept'], kept: [...Object.keys(KEPT), 'kept'] } as const

/** The gate for a scratch line or the line of a triage; anything that is no record becomes an empty one. Never throws. */
export function restoreLoose(raw: unknown, from: Provenance = 'stored'): LooseLine {
  return readRecord(LOOSE, isRecord(raw) ? raw : {}, from)
}

/** The gate for a line of a complaint. Never throws. */
export function restoreKeptLine(raw: unknown, from: Provenance = 'stored'): KeptLine {
  return readRecord(KEPT, isRecord(raw) ? raw : { kept: [{ at: '', value: raw }] }, from)
}

/** An empty line with a fresh id; its safety gate is not answered. */
export function newLine(name = ''): LooseLine {
  return looseLine({ id: newId(), name, gate: 'unknown', trials: [], facts: {} })
}

/** A line as it is stored on its own, outside of a complaint; what an earlier window set aside goes along. */
export function looseLine(line: Line | LooseLine | KeptLine): LooseLine {
  const { complaintId: _id, order: _order, removedAt: _at, ...own }: Line & Partial<KeptLine> = line
  return { schemaVersion: LINE_SCHEMA, updatedAt: new Date().toISOString(), kept: [], ...own }
}

/** A line as it is stored for a complaint. */
export function keptLine(line: Line | LooseLine, complaintId: string, order: number): KeptLine {
  return { ...looseLine(line), complaintId, order }
}

/** True when anything was typed about a line, or found out by a trial. */
export function holdsAnything(line: Line): boolean {
  return Object.keys(line.facts).length > 0 || line.trials.length > 0
}
