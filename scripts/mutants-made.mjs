/**
 * Which mutants there are: what Stryker's instrumenter (9) makes of `src/calc` and `src/store`, some of them drawn by a
 * seed, and the files with those built in, each switched off.
 */
import { pathToFileURL } from 'node:url'
import { onDemand } from './on-demand.mjs'

const VERSION = '9.6.1'

/** @typedef {{ line: number, column: number }} Place both counted from 0 */
/** @typedef {{ id: string, fileName: string, mutatorName: string, replacement: string, location: { start: Place, end: Place } }} Mutant */
/** @typedef {{ name: string, content: string, mutate: boolean | { start: Place, end: Place }[] }} Source */
/** @typedef {{ instrument(files: readonly Source[], options: object): Promise<{ files: readonly Source[], mutants: readonly Mutant[] }> }} Instrumenter */

/** Stryker's instrumenter, installed when it is asked for. @returns {Promise<Instrumenter>} */
async function instrumenter() {
  const { program } = onDemand('@stryker-mutator/instrumenter', VERSION, 'dist/src/index.js')
  const nothing = () => undefined
  const silent = { debug: nothing, info: nothing, warn: nothing, error: nothing, isDebugEnabled: () => false }
  const { Instrumenter } = await import(pathToFileURL(program).href)
  return new Instrumenter(silent)
}

const OPTIONS = { plugins: null, excludedMutations: [], ignorers: [] }

/** Chance that can be repeated (mulberry32). @param {number} seed */
function chance(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** @param {Mutant} mutant */
const nameOf = ({ fileName, mutatorName, replacement, location: { start, end } }) =>
  [fileName, start.line, start.column, end.line, end.column, mutatorName, replacement].join('\0')

/**
 * `count` mutants of these sources, each as likely as any other, and the sources they stand in with all of them built in.
 * @param {readonly { name: string, content: string }[]} sources
 * @param {number} count
 * @param {number} seed
 */
export async function drawMutants(sources, count, seed) {
  const stryker = await instrumenter()
  const all = [
    ...(
      await stryker.instrument(
        sources.map((one) => ({ ...one, mutate: true })),
        OPTIONS,
      )
    ).mutants,
  ]
  const next = chance(seed)
  const drawn = Array.from({ length: Math.min(count, all.length) }, () =>
    all.splice(Math.floor(next() * all.length), 1),
  ).flat()
  // only where one was drawn, so that the rest runs as fast as ever
  const marked = sources.flatMap((one) => {
    const here = drawn.filter(({ fileName }) => fileName === one.name)
    return here.length === 0 ? [] : [{ ...one, mutate: here.map(({ location }) => location) }]
  })
  const { files, mutants } = await stryker.instrument(marked, OPTIONS)
  // what stands within a drawn one is built in along with it; those are never switched on
  const ids = new Map(mutants.map((mutant) => [nameOf(mutant), mutant.id]))
  const chosen = drawn.map(({ fileName, mutatorName, replacement, location }, i) => {
    const id = ids.get(nameOf({ id: '', fileName, mutatorName, replacement, location }))
    if (id === undefined) throw new Error(`${fileName} ${location.start.line + 1}: drawn, and not built in`)
    return { number: i + 1, id, fileName, mutatorName, replacement, location }
  })
  return { of: all.length + drawn.length, chosen, files: files.map(({ name, content }) => ({ name, content })) }
}

/**
 * What stands in the place of a mutant, on one line.
 * @param {string} content
 * @param {Mutant['location']} location
 */
export function originalOf(content, { start, end }) {
  const lines = content.split('\n').slice(start.line, end.line + 1)
  lines.push((lines.pop() ?? '').slice(0, end.column))
  const first = lines.shift() ?? ''
  return [first.slice(start.column), ...lines].join(' ').replace(/\s+/g, ' ')
}
