/**
 * Files of complaints: one format for one complaint, several, or all of a device. Written the same for the same content,
 * sign by sign; read with a sentence where something does not fit, naming its line and field.
 */
import type { Progress } from '../../calc/types.ts'
import { COMPLAINT_SCHEMA } from '../complaint.ts'
import { isRecord } from '../plain.ts'
import { lineAndColumn, type Path, pathWords, placeOf, troubleIn } from './json-text.ts'
import { COMPLAINT_IN_FILE, FILE_SCHEMA, FORMAT, FORMAT_VERSION } from './schema.ts'
import { misfitOf, shownValue } from './schema-check.ts'
import { formOf, restoreWhole, type Whole } from './whole.ts'

/** Larger files are not read: 5,000 complaints with a small connector each are two thirds of it. */
export const MOST_CHARACTERS = 64 * 1024 * 1024

export const TOO_LARGE = `The file is larger than ${MOST_CHARACTERS / 1024 / 1024} MB without its photos: no backup of complaints comes near it.`

/** The text of a file with these complaints, one a step. */
export function* writeSteps(complaints: readonly Whole[]): Generator<Progress, string> {
  const forms: unknown[] = []
  for (const whole of complaints) {
    yield { doneFrac: forms.length / complaints.length }
    forms.push(formOf(whole))
  }
  return `${JSON.stringify({ format: FORMAT, version: FORMAT_VERSION, complaints: forms }, null, 1)}\n`
}

/** The same at once. */
export const writeFile = (complaints: readonly Whole[]): string => finished(writeSteps(complaints))

function finished<T>(steps: Generator<unknown, T>): T {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** `inline`: photos and measured files, as the file says them. `aside`: how many pieces this version did not understand; they are kept and given back to a version that does. */
export type FileRead =
  | {
      readonly ok: true
      readonly complaints: readonly Whole[]
      readonly inline: readonly unknown[]
      readonly aside: number
    }
  | { readonly ok: false; readonly message: string }

const refused = (message: string): FileRead => ({ ok: false, message })

const NO_FILE_OF_OURS = 'This is no file of complaints'

/** Reads a file at once. Nothing of it is taken over where a place of it does not fit. Never throws. */
export const readFile = (source: string): FileRead => finished(readSteps(source))

/** The same, one complaint a step. */
export function* readSteps(source: string): Generator<Progress, FileRead> {
  const text = source.startsWith('\uFEFF') ? source.slice(1) : source
  if (text.length > MOST_CHARACTERS) return refused(TOO_LARGE)
  if (text.trim() === '') return refused('The file is empty. A file of complaints begins with “{”.')
  const trouble = troubleIn(text)
  if (trouble !== undefined) return refused(`${lineAndColumn(text, trouble.at)}: ${trouble.message}.`)
  return yield* readValue(text, JSON.parse(text))
}

function* readValue(text: string, value: unknown): Generator<Progress, FileRead> {
  const at = (path: Path, message: string): FileRead =>
    refused(
      `${lineAndColumn(text, placeOf(text, path))}${path.length === 0 ? '' : `, ${pathWords(path)}`}: ${message}.`,
    )
  if (!isRecord(value) || value['format'] !== FORMAT)
    return at([], `${NO_FILE_OF_OURS}: a record with "format": "${FORMAT}" is expected, and ${foundHead(value)}`)
  if (value['version'] !== FORMAT_VERSION)
    return at(
      ['version'],
      `this app reads files of version ${FORMAT_VERSION}, and ${shownValue(value['version'])} stands there. ${NEWER}`,
    )
  const head = misfitOf(
    { ...FILE_SCHEMA, properties: { complaints: { type: 'array' }, attached: { type: 'array' } } },
    value,
  )
  if (head !== undefined) return at(head.path, head.message)
  const all: readonly unknown[] = Array.isArray(value['complaints']) ? value['complaints'] : []
  const ids = new Set<unknown>()
  const complaints: Whole[] = []
  for (const [index, raw] of all.entries()) {
    yield { doneFrac: index / all.length }
    const path = ['complaints', index]
    const isNewer = isRecord(raw) && Number(raw['schemaVersion']) > COMPLAINT_SCHEMA
    const misfit = misfitOf(isNewer ? { type: 'object' } : COMPLAINT_IN_FILE, raw, path) ?? doubleIn(raw, path)
    if (misfit !== undefined) return at(misfit.path, misfit.message)
    const whole = restoreWhole(raw, 'import')
    if (ids.has(whole.complaint.id)) return at([...path, 'id'], 'this complaint stands twice in the file')
    ids.add(whole.complaint.id)
    complaints.push(whole)
  }
  const aside = complaints.reduce((sum, whole) => sum + asideOf(whole), 0)
  if (aside > MOST_ASIDE) return at(['complaints'], `${aside} pieces are not understood here. ${NEWER}`)
  const inline: readonly unknown[] = Array.isArray(value['attached']) ? value['attached'] : []
  return { ok: true, complaints, inline, aside }
}

/** More than that is no newer version, it is another kind of file. */
const MOST_ASIDE = 10_000

const NEWER = 'It may come from a newer app: reload this one while online, then try again'

function foundHead(value: unknown): string {
  if (!isRecord(value)) return `${shownValue(value)} stands there`
  return value['format'] === undefined ? 'it has none' : `it says ${shownValue(value['format'])}`
}

const asideOf = ({ complaint, connectors }: Whole): number =>
  [complaint, ...complaint.lines, ...connectors].reduce((sum, { kept }) => sum + kept.length, 0)

const PARTS = [
  { name: 'lines', what: 'line', inside: undefined },
  { name: 'connectors', what: 'connector', inside: 'contacts' },
] as const

/** The second line, connector or contact of one name. */
function doubleIn(raw: unknown, path: Path): { readonly path: Path; readonly message: string } | undefined {
  for (const { name, what, inside } of PARTS) {
    const list = isRecord(raw) && Array.isArray(raw[name]) ? raw[name] : []
    const found = doubleAt(list, [...path, name], what)
    if (found !== undefined) return found
    if (inside === undefined) continue
    for (const [at, one] of list.entries()) {
      const contacts = isRecord(one) && Array.isArray(one[inside]) ? one[inside] : []
      const double = doubleAt(contacts, [...path, name, at, inside], 'contact')
      if (double !== undefined) return double
    }
  }
  return undefined
}

function doubleAt(list: readonly unknown[], path: Path, what: string) {
  const seen = new Set<unknown>()
  for (const [at, one] of list.entries()) {
    const id = isRecord(one) ? one['id'] : undefined
    if (seen.has(id))
      return { path: [...path, at, 'id'], message: `a ${what} of this name stands there already; each needs its own` }
    seen.add(id)
  }
  return undefined
}
