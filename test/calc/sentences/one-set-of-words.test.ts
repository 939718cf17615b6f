/**
 * One set of verdict words. Whatever a check or a screen says of an answer is yes, with care, no or not known; another
 * word for the same ("fits", "exceeded", "permitted") would leave the reader with two answers. Prose is read out of the
 * source: texts of more than one word, and what is written for a verdict by its id.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

const ROOT = join(import.meta.dirname, '../../..')
const SPOKEN =
  /^src\/(?:calc\/(?:checks|explain)\/.*\.ts|calc\/line\/evaluate\.ts|ui\/parts\/(?:answer|verdict|strip|table|ladder|plot|line-window|refusals)[^/]*|ui\/screens\/(?:check|kept)[^/]*)$/u
/** A source works into a load, and a part fails short: what a thing does is no verdict on it. */
const SECOND_WORDS =
  /(?<![\p{L}\d-])(?:fits|works(?! (?:in|against))|exceed(?:s|ed)|permitted|marginal|fails(?! short)|overloaded|shut)(?![\p{L}\d-])/iu

type Prose = { readonly file: string; readonly text: string }

/** A comment, or a text in quotes: whichever comes first, so that neither is looked for inside the other. */
const PIECES = /\/\*[\s\S]*?\*\/|\/\/[^\n]*|'((?:[^'\\\n]|\\.)*)'|`((?:[^`\\]|\\.)*)`|"((?:[^"\\\n]|\\.)*)"/gu
/** What is written between tags. */
const BETWEEN_TAGS = />([^<>{}`'"=;]+)[<{]/gu
const ATTRIBUTE_OR_IMPORT = /(?:class=[^>\n]*|class:\s*|from\s+|import\()$/u

/** Texts of more than one word, without what is put into them. */
function proseIn(file: string): readonly Prose[] {
  const source = readFileSync(join(ROOT, file), 'utf8')
  const quoted = [...source.matchAll(PIECES)].flatMap((piece): readonly string[] => {
    const text = piece[1] ?? piece[2] ?? piece[3]
    return text === undefined || ATTRIBUTE_OR_IMPORT.test(source.slice(0, piece.index)) ? [] : [text]
  })
  const between = file.endsWith('.tsx')
    ? [...source.replace(PIECES, '').matchAll(BETWEEN_TAGS)].map(([, text]) => text ?? '')
    : []
  return [...quoted, ...between]
    .map((text) =>
      text
        .replace(/'[\w-]+'/gu, '…')
        .replace(/\$\{[^{}]*(?:\{[^{}]*\}[^{}]*)*\}/gu, '…')
        .replace(/\s+/gu, ' ')
        .trim(),
    )
    .filter((text) => /\S \S/u.test(text))
    .map((text) => ({ file, text }))
}

const SOURCES = readdirSync(join(ROOT, 'src'), { recursive: true })
  .map((file) => `src/${String(file)}`)
  .filter((file) => /\.tsx?$/u.test(file))
  .toSorted()
const files = SOURCES.filter((file) => SPOKEN.test(file))

it('reads the texts of checks and screens', () => {
  expect(files.length).toBeGreaterThan(60)
  expect(files.flatMap(proseIn).length).toBeGreaterThan(600)
})

it('finds no second word for a verdict in them', () => {
  const second = files.flatMap(proseIn).filter(({ text }) => SECOND_WORDS.test(text))
  expect(second.map(({ file, text }) => `${file}: ${text}`)).toEqual([])
})

it('has one table of words by verdict', () => {
  const tables = SOURCES.filter((file) => /Record<Verdict, string>/u.test(readFileSync(join(ROOT, file), 'utf8')))
  expect(tables).toEqual(['src/calc/verdict.ts'])
})
