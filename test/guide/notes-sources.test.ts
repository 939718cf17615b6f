/** A note that prints a figure of the reference says who says so: the basis of every such figure is among its sources. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { FIELD_NOTES } from '../../src/guide/notes.ts'
import { BOND_NOTE } from '../../src/reference/constructions.ts'
import * as fieldFigures from '../../src/reference/field-figures.ts'
import * as busEnds from '../../src/reference/line-kinds/bus-ends.ts'
import type { Citation } from '../../src/reference/line-kinds.ts'
import { lineKindById } from '../../src/reference/line-kinds.ts'
import { bandById } from '../../src/reference/radio-bands.ts'

const GUIDE = join(import.meta.dirname, '../../src/guide')
const NOTES = readdirSync(join(GUIDE, 'notes')).map((name) => join(GUIDE, 'notes', name))

type Code = ReadonlyMap<string, string>

/** Code of every declaration of the notes and their helpers, and of every note by itself, without the sources it names. */
function codeOf(paths: readonly string[]): { readonly declared: Code; readonly notes: Code } {
  const declared = new Map<string, string>()
  const notes = new Map<string, string>()
  for (const text of paths.map((path) => readFileSync(path, 'utf8').replaceAll(/\/\*\*.*?\*\//gsu, '')))
    for (const chunk of text.split(/\n(?=(?:export )?(?:const|function) )/u)) {
      const name = /^(?:export )?(?:const|function) (\[[^\]]+\]|\w+)/u.exec(chunk)?.[1] ?? ''
      if (name.endsWith('_NOTES'))
        for (const note of chunk.split(/\n(?= {4}id: ')/u).slice(1))
          notes.set(/id: '([^']+)'/u.exec(note)?.[1] ?? '', note.slice(0, note.indexOf('\n    sources: [')))
      else for (const one of name.match(/\w+/gu) ?? []) declared.set(one, chunk)
    }
  return { declared, notes }
}

const { declared, notes } = codeOf([...NOTES, join(GUIDE, 'figures.ts')])

/** Everything a text is worked out from: names in it, and in what those are declared by. */
function namesIn(code: string, known = new Set<string>()): ReadonlySet<string> {
  for (const name of code.match(/\b[A-Za-z]\w+\b/gu) ?? [])
    if (!known.has(name)) {
      known.add(name)
      namesIn(declared.get(name) ?? '', known)
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

const FIGURES: Readonly<Record<string, object>> = { ...fieldFigures, ...busEnds, BOND_NOTE }

/** What the code of a note stands on. */
function expectedOf(code: string): readonly Citation[] {
  const names = namesIn(code)
  const all = [code, ...[...names].map((name) => declared.get(name) ?? '')].join('\n')
  const figures = Object.entries(FIGURES).flatMap(([name, figure]) => (names.has(name) ? citationsOf(figure, all) : []))
  const bands = [...all.matchAll(/(?:bandById|channelHz)\('([^']+)'\)/gu)].map(([, id = '']) => bandById(id).source)
  const supplies = [...all.matchAll(/nominalV\('([^']+)'\)/gu)].flatMap(
    ([, id = '']) => lineKindById(id)?.supply?.source ?? [],
  )
  return [...figures, ...bands, ...supplies]
}

const words = ({ id, clause, standing }: Citation): string => [id, clause ?? '', standing].join(' | ')

describe('the sources of a note', () => {
  it('are looked for in every note', () => {
    expect([...notes.keys()].sort()).toEqual(FIELD_NOTES.map(({ id }) => id).sort())
    const found = [...notes.values()].filter((code) => expectedOf(code).length > 0)
    expect(found.length).toBeGreaterThan(15)
  })

  it.each(FIELD_NOTES)('$id: name the basis of every figure in it, each once', ({ id, sources }) => {
    const named = sources.map((source) => words(source))
    const missing = expectedOf(notes.get(id) ?? '').map(words)
    expect(missing.filter((one) => !named.includes(one))).toEqual([])
    expect(named).toHaveLength(new Set(named).size)
  })
})
