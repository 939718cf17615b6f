/** Reads the recipes of DEVELOPERS.md: their titles and the files they name. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { ROOT } from './install.mjs'

/**
 * @typedef {{ readonly title: string, readonly files: readonly string[] }} Recipe a file may hold a `<placeholder>`
 */

/** A path from the root in backticks: it ends in a file name, and has a slash unless it is this very document. */
const FILE = /`(DEVELOPERS\.md|[\w./<>-]+\/[\w.<>-]+\.[a-z]+)`/g

/** Every recipe, in order. @param {string} [text] @returns {readonly Recipe[]} */
export function recipesOf(text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8')) {
  const chapter = /^## Recipes\n([\s\S]*?)^## /m.exec(text)?.[1] ?? ''
  return chapter
    .split(/^- (?=\*\*)/m)
    .slice(1)
    .map((item) => ({
      title: /^\*\*([^*]+)\*\*/.exec(item)?.[1] ?? '',
      files: [...item.matchAll(FILE)].map((match) => match[1] ?? ''),
    }))
}

/** Whether a path is the one a recipe names, placeholders filled in. @param {string} named @param {string} path */
export function isNamed(named, path) {
  const escaped = named.replace(/[.*+?^${}()|[\]\\]/g, '\\$&').replace(/<[^>]+>/g, '[\\w.-]+')
  return new RegExp(`^${escaped}$`).test(path)
}
