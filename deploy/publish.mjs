/**
 * Copies a built site into the folder a host serves, in the order that never leaves a visitor with half of it:
 * `assets/`, everything else, the page, and the worker last. Old assets stay: a window that is open may still want them.
 * Scripts and styles get packed copies beside them, for a host that serves those.
 *
 *   node deploy/publish.mjs dist /var/www/stillpin
 */
import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { isPackedBefore, PACKINGS } from './pack.mjs'

/** Which comes first. @param {string} path */
const rank = (path) =>
  path.startsWith('assets/') ? 0 : path === 'index.html' ? 2 : path === 'worker.js' ? 3 : path === 'sw.js' ? 4 : 1

/** The files of a build in the order they go up. @param {readonly string[]} paths with slashes */
export function publishOrder(paths) {
  return [...paths].sort((a, b) => rank(a) - rank(b) || a.localeCompare(b))
}

/**
 * Each file is written beside its place and then put there whole.
 * @param {string} from
 * @param {string} to
 * @param {(path: string) => void} [done] told of every file that is in its place
 */
export function publish(from, to, done = () => undefined) {
  if (!existsSync(join(from, 'sw.js'))) throw new Error(`${from} holds no finished build: run npm run build first.`)
  const files = readdirSync(from, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
  const paths = files.map(({ parentPath, name }) =>
    join(parentPath, name)
      .slice(from.length + 1)
      .replaceAll('\\', '/'),
  )
  for (const path of publishOrder(paths)) {
    const place = join(to, path)
    mkdirSync(dirname(place), { recursive: true })
    if (isPackedBefore(path)) packBeside(place, readFileSync(join(from, path)))
    copyFileSync(join(from, path), `${place}.new`)
    renameSync(`${place}.new`, place)
    done(path)
  }
}

/**
 * The packed copies of a file, where they are not there yet.
 * @param {string} place
 * @param {Buffer} bytes
 */
function packBeside(place, bytes) {
  for (const { ending, pack } of PACKINGS) {
    if (existsSync(`${place}${ending}`)) continue
    writeFileSync(`${place}.new`, pack(bytes))
    renameSync(`${place}.new`, `${place}${ending}`)
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [from, to] = process.argv.slice(2).map((path) => path.replace(/[\\/]+$/, ''))
  if (from === undefined || to === undefined) {
    console.error('Say from where to where: node deploy/publish.mjs dist /var/www/stillpin')
    process.exitCode = 1
  } else publish(from, to, (path) => console.log(path))
}
