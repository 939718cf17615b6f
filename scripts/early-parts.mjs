/**
 * Asks for the parts of the place an address opens as soon as the page is read, beside the app itself: otherwise they
 * would be asked for only when that has arrived and runs, a round trip later. The build writes into `first-paint.js`
 * which files each place needs.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { chunksOf, firstLoadFiles, withModules } from './build-plugins.mjs'

/** The script every page runs first, and the place in it that the build fills in. */
const SCRIPT = 'first-paint.js'
const OPEN = "/* filled in by the build */ { names: '', places: {} }"

const STORED = ['/src/state/resume.ts', '/src/state/theme-store.ts']
const BOOK = '/src/ui/screens/book/book.tsx'

/** The checks that provide facts come with it. */
const CHECK = ['/src/ui/screens/check.tsx', ...STORED]

/** What works its first answer out: otherwise its worker would be asked for when the check runs, in two more round trips. */
const workerOf = (/** @type {string} */ job) => [`/src/worker/${job}.ts`, '/src/state/early-worker.ts']

/** A check with the words of its answer. */
const words = (/** @type {string} */ id) => `/src/calc/checks/${id}/check.ts`

/** What each place asks for by itself, by how its address starts behind `#/`; of several the longest counts. */
const PLACES = {
  'ask/': ['/src/ui/screens/ask.tsx', '/src/state/built-guide.ts?built', ...STORED],
  ...Object.fromEntries(['need', 'loop', 'trial', 'trace'].map((id) => [`check/${id}`, [...CHECK, words(id)]])),
  'check/window': [...CHECK, words('window'), ...workerOf('window')],
  'check/surge': [...CHECK, words('surge'), ...workerOf('surge')],
  'check/': [...CHECK, '/src/calc/plain-checks.ts'],
  // the start page, the lists and the Log ask for themselves: each name here costs the first load
  // a note has no prefix, the pages and lists of the other shelves have
  notes: [BOOK],
  'notes/': [BOOK, '/src/guide/book/notes/notes.ts?built'],
  ...Object.fromEntries(['line', 'sound', 'test', 'drawing', 'table', 'case'].map((shelf) => [`notes/${shelf}`, []])),
}

/**
 * The script as it is sent: before anything is seen, every word of it is waited for.
 * @param {string} script
 */
const short = (script) => script.replace(/^\s*\/\/.*\n/gm, '').replace(/^\s+/gm, '')

/** @returns {import('vite').Plugin} */
export function earlyParts() {
  return {
    name: 'stillpin-early-parts',
    apply: 'build',
    enforce: 'post',
    writeBundle(options, bundle) {
      const folder = options.dir ?? 'dist'
      if (!('index.html' in bundle)) return
      const chunks = chunksOf(bundle)
      const first = firstLoadFiles(readFileSync(join(folder, 'index.html'), 'utf8'), chunks)
      /** @type {string[]} */
      const names = []
      /** @param {string} name */
      const numbered = (name) => (names.includes(name) ? names.indexOf(name) : names.push(name) - 1)
      const places = Object.fromEntries(
        Object.entries(PLACES).map(([place, modules]) => [
          place,
          withModules(first, chunks, modules)
            .filter((name) => !first.includes(name))
            .map((name) => numbered(name.replace(/^assets\/(.*)\.js$/, '$1'))),
        ]),
      )
      const script = readFileSync(join(folder, SCRIPT), 'utf8')
      if (!script.includes(OPEN)) this.error(`${SCRIPT} has no place for the parts of each place.`)
      writeFileSync(
        join(folder, SCRIPT),
        short(script).replace(OPEN, JSON.stringify({ names: names.join(' '), places })),
      )
    },
  }
}
