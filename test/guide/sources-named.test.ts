/** A note or an outcome that prints a figure of the reference says who says so: the basis of every such figure is among its sources. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { GUIDE } from '../../src/guide/guide.ts'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { BOND_NOTE } from '../../src/reference/constructions.ts'
import * as fieldFigures from '../../src/reference/field-figures.ts'
import * as busEnds from '../../src/reference/line-kinds/bus-ends.ts'
import type { Citation } from '../../src/reference/line-kinds.ts'
import { lineKindById } from '../../src/reference/line-kinds.ts'
import { bandById } from '../../src/reference/radio-bands.ts'
import * as surgeCases from '../../src/reference/surge-cases.ts'
import { textsOfCode } from '../support/texts-in-code.ts'

const ROOM = join(import.meta.dirname, '../../src/guide')
const roomOf = (room: string): readonly string[] => readdirSync(join(ROOM, room)).map((name) => join(ROOM, room, name))
const FIGURES_TS = join(ROOM, 'figures.ts')

type Code = ReadonlyMap<string, string>

/** The code of a file without its comments and its sentences: a word of a text is no name. */
const withoutTexts = (code: string): string =>
  textsOfCode(code)
    .filter((text) => text.includes(' ') && /\p{L}{2}/u.test(text))
    .sort((a, b) => b.length - a.length)
    .reduce((left, text) => left.replaceAll(text, ' '), code.replaceAll(/\/\*\*.*?\*\//gsu, ''))

/** The sources an entry names, from where they begin to the end of their list. */
const NAMED = /\n {4}sources: \[[^\]]*(?:\[[^\]]*\][^\]]*)*\],/u

/** Code of every declaration of some files and their helpers, and of every entry by itself, without the sources it names. */
function codeOf(paths: readonly string[]): { readonly declared: Code; readonly entries: Code } {
  const declared = new Map<string, string>()
  const entries = new Map<string, string>()
  for (const path of paths)
    for (const chunk of withoutTexts(readFileSync(path, 'utf8')).split(/\n(?=(?:export )?(?:const|function) )/u)) {
      const name = /^(?:export )?(?:const|function) (\[[^\]]+\]|\w+)/u.exec(chunk)?.[1] ?? ''
      if (/_(?:NOTES|OUTCOMES|LINES)$/u.test(name))
        for (const entry of chunk.split(/\n(?= {4}id: ')/u).slice(1))
          entries.set(/id: '([^']+)'/u.exec(entry)?.[1] ?? '', entry.replace(NAMED, ''))
      else for (const one of name.match(/\w+/gu) ?? []) declared.set(one, chunk)
    }
  return { declared, entries }
}

const NOTES = codeOf([...roomOf('notes'), FIGURES_TS])
const OUTCOMES = codeOf([...roomOf('chapters'), FIGURES_TS])

/** The code without its words in quotes, which are no names, and without keys. */
const codeOnly = (code: string): string => code.replaceAll(/'(?:[^'\\\n]|\\.)*'/gu, "''").replaceAll(/\b\w+:/gu, '')

/** Everything a text is worked out from: names in it, and in what those are declared by. */
function namesIn(code: string, declared: Code, known = new Set<string>()): ReadonlySet<string> {
  for (const name of codeOnly(code).match(/\b[A-Za-z]\w+\b/gu) ?? [])
    if (!known.has(name)) {
      known.add(name)
      namesIn(declared.get(name) ?? '', declared, known)
    }
  return known
}

const isCitation = (value: unknown): value is Citation =>
  typeof value === 'object' && value !== null && 'standing' in value && 'id' in value

/** Citations a figure carries; a field with a basis of its own (`fixtureOhm`, `fixtureBasis`) is asked for where it is used. */
function citationsOf(figure: object, code: string): readonly Citation[] {
  return Object.entries(figure).flatMap(([key, value]): readonly Citation[] => {
    if (Array.isArray(value)) return value.filter(isCitation)
    if (!isCitation(value)) return typeof value === 'object' && value !== null ? citationsOf(value, code) : []
    const [stem] = key.split('Basis')
    const own = Object.keys(figure).filter((other) => other !== key && other.startsWith(stem ?? ''))
    const shared = Object.keys(figure).filter((other) => {
      const isOwned = Object.keys(figure).some(
        (basis) => basis.endsWith('Basis') && other.startsWith(basis.slice(0, -5)),
      )
      return !isOwned && other !== 'basis'
    })
    const used = key === 'basis' ? shared : own
    return used.some((other) => code.includes(other)) ? [value] : []
  })
}

const FIGURES: Readonly<Record<string, object>> = { ...fieldFigures, ...busEnds, ...surgeCases, BOND_NOTE }

/** What the code of a note stands on. */
function expectedOf(code: string, declared: Code): readonly Citation[] {
  const names = namesIn(code, declared)
  const all = [code, ...[...names].map((name) => declared.get(name) ?? '')].join('\n')
  const figures = Object.entries(FIGURES).flatMap(([name, figure]) => (names.has(name) ? citationsOf(figure, all) : []))
  const bands = [...all.matchAll(/(?:bandById|channelHz)\('([^']+)'\)/gu)].map(([, id = '']) => bandById(id).source)
  const supplies = [...all.matchAll(/nominalV\('([^']+)'\)/gu)].flatMap(
    ([, id = '']) => lineKindById(id)?.supply?.source ?? [],
  )
  return [...figures, ...bands, ...supplies]
}

const words = ({ id, clause, standing }: Citation): string => [id, clause ?? '', standing].join(' | ')

/** What is named, each once, and what is missing of it. */
function expectNamed(sources: readonly Citation[], expected: readonly Citation[]): void {
  const named = sources.map(words)
  expect(expected.map(words).filter((one) => !named.includes(one))).toEqual([])
  expect(named).toHaveLength(new Set(named).size)
}

describe('the sources of a note', () => {
  const { declared, entries } = NOTES

  it('are looked for in every note', () => {
    expect([...entries.keys()].sort()).toEqual(FIELD_NOTES.map(({ id }) => id).sort())
    expect([...entries.values()].filter((code) => expectedOf(code, declared).length > 0).length).toBeGreaterThan(15)
  })

  it.each(FIELD_NOTES)('$id: name the basis of every figure in it, each once', ({ id, sources }) => {
    expectNamed(sources, expectedOf(entries.get(id) ?? '', declared))
  })
})

describe('the sources of an outcome', () => {
  const { declared, entries } = OUTCOMES
  // a stop is named by its line; a place is part of an id that is put together
  const own = GUIDE.outcomes.filter(({ id }) => entries.has(id.replace(/^stop-/u, '')))

  it('are looked for in every outcome that is written out by itself', () => {
    const others = GUIDE.outcomes.filter((outcome) => !own.includes(outcome)).map(({ id }) => id)
    expect(others.filter((id) => !/^(?:filter-(?:victim|source)|stop)-/u.test(id))).toEqual([])
    expect(
      own.filter(({ id }) => expectedOf(entries.get(id.replace(/^stop-/u, '')) ?? '', declared).length > 0).length,
    ).toBeGreaterThan(20)
  })

  it.each(own)('$id: name the basis of every figure in it, each once', ({ id, sources }) => {
    expectNamed(sources, expectedOf(entries.get(id.replace(/^stop-/u, '')) ?? '', declared))
  })
})
