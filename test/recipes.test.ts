import { existsSync, readdirSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { isNamed, recipesOf } from '../scripts/recipe-text.mjs'

const ROOT = join(import.meta.dirname, '..')

const files = ['src', 'test', 'scripts'].flatMap((folder) =>
  readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' })
    .map((path) => `${folder}/${path.replaceAll('\\', '/')}`)
    .filter((path) => statSync(join(ROOT, path)).isFile()),
)

/** The recipes that `node scripts/recipes.mjs` carries out literally. */
const CARRIED_OUT = ['Add a check', 'Add a line kind', 'Add a suspect', 'Add a waveform', 'Add a stored field']

describe('the recipes of DEVELOPERS.md', () => {
  it('are there, and each names its files', () => {
    const recipes = recipesOf()
    for (const title of CARRIED_OUT)
      expect(recipes.find((recipe) => recipe.title === title)?.files.length).toBeGreaterThan(0)
  })

  it('name no file that is not there', () => {
    const gone = recipesOf().flatMap(({ title, files: named }) =>
      named
        .filter(
          (name) => !(name.includes('<') ? files.some((path) => isNamed(name, path)) : existsSync(join(ROOT, name))),
        )
        .map((name) => `${title}: ${name}`),
    )
    expect(gone).toEqual([])
  })
})
