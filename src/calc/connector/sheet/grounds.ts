/**
 * What the rows of a sheet rest on, each once however many contacts share it: windows and ladders drawn, what was assumed,
 * what was not entered, sources and cautions. In steps: a surge takes its time.
 */
import { surgeCheck } from '../../checks/surge/check.ts'
import { windowCheck } from '../../checks/window/check.ts'
import { evaluate } from '../../line/evaluate.ts'
import { type Express, type Field, isUsual } from '../../line/fields.ts'
import { resolve } from '../../line/resolver.ts'
import { withFact } from '../../line/with-fact.ts'
import { printText } from '../../quantity/format.ts'
import type {
  Check,
  FactKey,
  Line,
  Picture,
  Progress,
  Result,
  SaidBound,
  Source,
  Success,
  Topology,
} from '../../types.ts'
import { capital, sentenceOf } from '../../verdict.ts'
import type { Build } from '../build.ts'
import { buildWords, thinAirWords, toleranceWords } from '../build-words.ts'
import { lineInConnector } from '../contact-line.ts'
import { type ContactRow, contactPartOf } from '../contact-row.ts'
import type { DecidedContact } from '../decided.ts'
import { partWords } from '../said.ts'
import type { SharedTexts } from '../types.ts'

type Of<P extends Picture['is']> = Extract<Picture, { is: P }>

export type SheetWindow = {
  readonly contacts: readonly string[]
  /** the line it was worked out for, the first of them */
  readonly line: Line
  readonly decided: DecidedContact
  /** the inductance that was chosen for it; absent: that of the line, as entered or assumed there */
  readonly chosenH?: number
  readonly title: string
  readonly sentence: string
  readonly picture?: Of<'strip'>
  readonly bounds: readonly SaidBound[]
  /** what can be built of the capacitor, and what a tighter tolerance buys; absent where there is none */
  readonly build?: string
}

export type SheetLadder = {
  readonly contacts: readonly string[]
  readonly sentence: string
  readonly picture?: Of<'ladder'>
}

/** Something taken for granted on these contacts; its field says what and why. */
export type SheetAssumption = { readonly field: Field; readonly contacts: readonly string[] }

export type SheetGrounds = {
  readonly windows: readonly SheetWindow[]
  readonly ladders: readonly SheetLadder[]
  readonly assumed: readonly SheetAssumption[]
  /** what the steps of the figures take for granted, in sentences */
  readonly granted: readonly string[]
  readonly absent: readonly { readonly label: string; readonly contacts: readonly string[] }[]
  readonly sources: readonly Source[]
  readonly cautions: readonly string[]
}

/** Facts of a surge that somebody entered: without one of them a ladder would be of nobody's circuit. */
const SURGE_FACTS: readonly FactKey[] = ['surgeWaveform', 'surgeLevel', 'standoffV', 'breakdownV', 'surgeOpenCircuitV']

type Job = {
  readonly check: Check
  readonly line: Line
  readonly fields: readonly Field[]
  readonly contacts: string[]
}

type WindowJob = Job & {
  readonly decided: DecidedContact
  readonly chosenH: number | undefined
  readonly headline: string
  readonly build: Build | undefined
}

/** The grounds of a schedule's rows, `shared`: the bond of their connector. */
export function* groundsOf(
  rows: readonly ContactRow[],
  shared: SharedTexts,
  express?: Express,
): Generator<Progress, SheetGrounds> {
  const windows = new Map<string, WindowJob>()
  const surges = new Map<string, Job>()
  for (const { line, decided, headline, build, choice } of rows) {
    if (line === undefined || decided.by === 'barred') continue
    const chosenH = choice?.inductanceH
    const asked = asDecided({ line, decided, ...(chosenH === undefined ? {} : { chosenH }) }, shared)
    const fields = resolve(asked, express).fields(windowCheck)
    const { topology, capacitanceF } = decided.part ?? {}
    const key = JSON.stringify([fields.map(({ text }) => text), topology, capacitanceF, build?.zone])
    collect(windows, key, decided.id, () => ({
      check: windowCheck,
      line,
      fields,
      contacts: [],
      decided,
      chosenH,
      headline,
      build,
    }))
    if (!SURGE_FACTS.some((fact) => (line.facts[fact]?.text.trim() ?? '') !== '')) continue
    const surge = resolve(asked, express).fields(surgeCheck)
    const surgeKey = JSON.stringify(surge.map(({ text }) => text))
    collect(surges, surgeKey, decided.id, () => ({ check: surgeCheck, line, fields: surge, contacts: [] }))
  }
  const count = windows.size + surges.size
  let done = 0
  const answers: { job: Job; result: Result }[] = []
  const sheetWindows: SheetWindow[] = []
  for (const job of windows.values()) {
    const result = yield* answered(job, done++ / count, count)
    answers.push({ job, result })
    sheetWindows.push(windowOf(job, result))
  }
  const ladders: SheetLadder[] = []
  for (const job of surges.values()) {
    const result = yield* answered(job, done++ / count, count)
    answers.push({ job, result })
    ladders.push(ladderOf(job, result))
  }
  const successes = answers.flatMap(({ result }) => (result.ok ? [result] : []))
  const bases = successes.flatMap(basesOf)
  return {
    windows: sheetWindows,
    ladders,
    assumed: assumedIn([...windows.values(), ...surges.values()]),
    granted: [...new Set(bases.flatMap(({ assumptions }) => assumptions))],
    absent: absentIn([...windows.values()]),
    sources: [
      ...bases.flatMap(({ sources }) => sources),
      ...rows.flatMap(({ build }) => build?.dielectrics.flatMap(({ sources }) => sources) ?? []),
    ],
    cautions: [...new Set(successes.flatMap(({ cautions }) => cautions))],
  }
}

function collect<J extends Job>(jobs: Map<string, J>, key: string, id: string, begin: () => J): void {
  const job = jobs.get(key) ?? begin()
  job.contacts.push(id)
  jobs.set(key, job)
}

function* answered({ check, fields }: Job, fromFrac: number, count: number): Generator<Progress, Result> {
  yield { doneFrac: fromFrac }
  const running = evaluate(check, fields)
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
    yield { doneFrac: fromFrac + step.value.doneFrac / count }
  }
}

/**
 * The line in its connector with the part that was decided: for the noise and the signal, and for the surge. An inductance
 * that was assumed stays assumed.
 */
export function asDecided(
  { line, decided: { part }, chosenH }: Pick<SheetWindow, 'line' | 'decided' | 'chosenH'>,
  shared: SharedTexts,
): Line {
  if (part === undefined) return lineInConnector(line, shared)
  const coil = chosenH === undefined ? {} : { inductanceH: chosenH }
  const asked = lineInConnector(line, shared, { topology: part.topology, ...coil })
  const texts: readonly (readonly [FactKey, string])[] = [
    ['surgeTopology', part.topology],
    ['markedF', part.capacitanceF > 0 ? printText(part.capacitanceF, 'capacitance') : ''],
  ]
  return texts.reduce(
    (one, [fact, text]) => (text === '' ? one : withFact(one, fact, { text, origin: { by: 'user' } })),
    asked,
  )
}

const issuesOf = (result: Result): string => (result.ok ? '' : result.issues.map(({ message }) => message).join(' '))

function windowOf({ contacts, line, decided, chosenH, headline, build }: WindowJob, result: Result): SheetWindow {
  const { part } = decided
  const title = part ? partWords(contactPartOf(part)) : 'no part'
  const strip = result.ok ? result.pictures.find((picture) => picture.is === 'strip') : undefined
  return {
    contacts,
    line,
    decided,
    ...(chosenH === undefined ? {} : { chosenH }),
    title,
    sentence: headline,
    ...(strip?.is === 'strip' ? { picture: narrowed(strip, part?.topology, part?.capacitanceF) } : {}),
    bounds: result.ok ? result.bounds : [],
    ...(build === undefined ? {} : { build: builtWords(build) }),
  }
}

function builtWords(build: Build): string {
  const air = thinAirWords(build)
  return [`${capital(buildWords(build))}.`, toleranceWords(build), ...(air === undefined ? [] : [air])].join(' ')
}

/** A strip of the one topology that was decided, with its value; of the best where none was. */
function narrowed(strip: Of<'strip'>, topology: Topology | undefined, capacitanceF: number | undefined): Of<'strip'> {
  const row = strip.rows.find((one) => one.topology === topology) ?? strip.rows.find((one) => one.best) ?? strip.rows[0]
  if (row === undefined) return { ...strip, rows: [] }
  const { chosenF: _proposed, ...rest } = strip
  const { proposedF, ...kept } = row
  // a note is about the value that was proposed
  const note = proposedF === capacitanceF ? kept.note : ''
  return {
    ...rest,
    rows: [{ ...kept, note, best: true }],
    ...(capacitanceF !== undefined && capacitanceF > 0 ? { chosenF: capacitanceF } : {}),
  }
}

function ladderOf({ contacts }: Job, result: Result): SheetLadder {
  const ladder = result.ok ? result.pictures.find((picture) => picture.is === 'ladder') : undefined
  return {
    contacts,
    sentence: result.ok ? sentenceOf(result) : issuesOf(result),
    ...(ladder?.is === 'ladder' ? { picture: ladder } : {}),
  }
}

const basesOf = ({ outputs, bounds, rungs }: Success) => [
  ...Object.values(outputs).flatMap(({ cell, basis }) => (cell.is === 'none' ? [] : [basis])),
  ...bounds.map(({ basis }) => basis),
  ...rungs.map(({ basis }) => basis),
]

const isAssumed = (field: Field): boolean => field.state === 'assumed' || (isUsual(field) && field.origin === undefined)

/** What stands beside a field that is empty decides nothing. */
function matters({ input: { whenEmpty } }: Field, fields: readonly Field[]): boolean {
  const beside = whenEmpty.do === 'assume' ? whenEmpty.beside : undefined
  return beside === undefined || fields.some(({ key, text }) => key === beside && text.trim() !== '')
}

function assumedIn(jobs: readonly Job[]): readonly SheetAssumption[] {
  const found = new Map<string, { field: Field; contacts: string[] }>()
  for (const { fields, contacts } of jobs) {
    for (const field of fields.filter(isAssumed)) {
      if (!matters(field, fields)) continue
      const key = JSON.stringify([field.input.fact, field.assumed?.text ?? field.text])
      const one = found.get(key) ?? { field, contacts: [] }
      one.contacts.push(...contacts.filter((id) => !one.contacts.includes(id)))
      found.set(key, one)
    }
  }
  return [...found.values()]
}

/** What nobody entered, by the name of its field. */
function absentIn(jobs: readonly Job[]): SheetGrounds['absent'] {
  const found = new Map<string, string[]>()
  for (const { fields, contacts } of jobs) {
    for (const field of fields) {
      if (field.text.trim() !== '' || isAssumed(field)) continue
      found.set(field.input.label, [...(found.get(field.input.label) ?? []), ...contacts])
    }
  }
  return [...found].map(([label, contacts]) => ({ label, contacts }))
}
