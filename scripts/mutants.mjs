/**
 * Mutation testing, on demand: mutants of `src/calc` and `src/store`, drawn by a seed, each held against the tests of
 * `unit` and `kept` that come past it. Prints the score and whoever survived; those are judged in `test/mutants.md`.
 *   node scripts/mutants.mjs [--count 300] [--seed 1] [--only 7,12] [--minutes 90] [--most-seconds 240] [--show]
 * Works in a copy beside the system's temporary files and keeps there what is known, so that Ctrl-C loses nothing: started
 * again it goes on. New or changed tests are tried on survivors, changed sources begin anew.
 */
import { fork, spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { parseArgs } from 'node:util'
import { ROOT } from './install.mjs'
import { drawMutants, originalOf } from './mutants-made.mjs'

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '300' },
    seed: { type: 'string', default: '1' },
    only: { type: 'string' },
    minutes: { type: 'string', default: '100000' },
    'most-seconds': { type: 'string', default: '240' },
    show: { type: 'boolean', default: false },
  },
})
const count = Number(values.count)
const seed = Number(values.seed)
const untilMs = Date.now() + 60_000 * Number(values.minutes)
/** A survivor is held against further tests for this long, in time of the processor. */
const mostMs = 1000 * Number(values['most-seconds'])
const only = values.only?.split(',').map(Number)
if (!(count >= 1) || !Number.isInteger(seed) || !existsSync(join(ROOT, 'node_modules/vitest'))) {
  console.error('Needs installed packages (npm ci), a count of at least 1 and a whole number as seed.')
  process.exit(1)
}

/** @typedef {import('./mutants-run.mjs').Job} Job */
/** @typedef {import('./mutants-run.mjs').Outcome} Outcome */
/** @typedef {import('./mutants-made.mjs').Mutant & { number: number }} Chosen */
/** @typedef {{ hash: string, cpuMs: number, broken: boolean, atLoad: string[], byTest: Record<string, string[]> }} Reach what one file of tests comes past */
/** @typedef {{ is: 'killed' | 'hung' | 'survived' | 'unreached', by?: string, tried: string[], left: number }} Result */

const listed = spawnSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
  cwd: ROOT,
  encoding: 'utf8',
  maxBuffer: 1e8,
})
// a linked node_modules is no folder, so that .gitignore does not cover it
const paths = listed.stdout.split('\0').filter((path) => path !== 'node_modules' && existsSync(join(ROOT, path || '-')))
/** @param {string} text */
const hash = (text) => createHash('sha1').update(text).digest('hex')
/** @param {string} path */
const textOf = (path) => readFileSync(join(ROOT, path), 'utf8')
const sources = paths
  .filter((path) => /^src\/(calc|store)\/.*\.ts$/.test(path) && !path.endsWith('.d.ts'))
  .map((name) => ({ name, content: textOf(name) }))

const state = hash(sources.map(({ name, content }) => name + content).join('\0')).slice(0, 8)
const folder = join(tmpdir(), `stillpin-mutants-${count}-${seed}-${state}`)
const tree = join(folder, 'tree')
mkdirSync(tree, { recursive: true })

/** Two runs in one folder would switch each other's mutants. */
const holder = join(folder, 'held-by')
const other = existsSync(holder) ? Number(readFileSync(holder, 'utf8')) : undefined
if (other !== undefined && isRunning(other)) {
  console.error(`Process ${other} works in ${folder}: stop it first.`)
  process.exit(1)
}
writeFileSync(holder, String(process.pid))
process.on('exit', () => rmSync(holder, { force: true }))

/** @param {number} id */
function isRunning(id) {
  try {
    return process.kill(id, 0)
  } catch {
    return false
  }
}

/** @template T @param {string} name @param {T} otherwise @returns {T} */
function kept(name, otherwise) {
  const path = join(folder, name)
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : otherwise
}
/** @param {string} name @param {unknown} content */
const keep = (name, content) => writeFileSync(join(folder, name), JSON.stringify(content))

/** @type {Awaited<ReturnType<typeof drawMutants>> | undefined} */
let drawn = kept('drawn.json', undefined)
if (drawn === undefined) {
  console.log(`drawing ${count} mutants of ${sources.length} files, seed ${seed} …`)
  drawn = await drawMutants(sources, count, seed)
  keep('drawn.json', drawn)
}
const { chosen, files, of } = drawn
console.log(`${chosen.length} of ${of} mutants, in ${folder}`)

const mutated = new Map(files.map(({ name, content }) => [name, content]))
for (const path of paths) {
  const to = join(tree, path)
  mkdirSync(dirname(to), { recursive: true })
  const content = mutated.get(path)
  if (content === undefined) cpSync(join(ROOT, path), to)
  else if (!existsSync(to)) writeFileSync(to, content)
}
rmSync(join(tree, 'node_modules'), { force: true })
symlinkSync(join(ROOT, 'node_modules'), join(tree, 'node_modules'))

/** @type {Record<string, Reach>} */
const reach = kept('reach.json', {})
/** @type {Record<string, Result>} */
const results = kept('results.json', {})

/** @type {import('node:child_process').ChildProcess | undefined} */
let runner
/** @type {readonly string[]} */
let testFiles = []

/** @returns {Promise<import('node:child_process').ChildProcess>} */
async function started() {
  if (runner !== undefined) return runner
  const fresh = fork(join(ROOT, 'scripts/mutants-run.mjs'), [tree, folder], {
    stdio: ['ignore', 'ignore', 'pipe', 'ipc'],
  })
  fresh.stderr?.on('data', (said) => writeFileSync(join(folder, 'stderr.txt'), said, { flag: 'a' }))
  testFiles = await new Promise((resolve, reject) => {
    fresh.once('message', (message) => resolve(/** @type {string[]} */ (message)))
    fresh.once('exit', () => reject(new Error(`The tests do not start, see ${join(folder, 'stderr.txt')}.`)))
  })
  fresh.removeAllListeners('exit')
  runner = fresh
  return fresh
}

/** @param {Job} job @returns {Promise<Outcome | undefined>} undefined: it did not come to an end */
async function ask(job) {
  const process = await started()
  return new Promise((resolve) => {
    const ended = () => {
      runner = undefined
      resolve(undefined)
    }
    process.once('exit', ended)
    process.once('message', (message) => {
      process.off('exit', ended)
      resolve(/** @type {Outcome} */ (message))
    })
    process.send(job)
  })
}

process.on('SIGINT', () => {
  runner?.kill('SIGKILL')
  console.log('\nstopped; the same command goes on from here')
  process.exit(130)
})

const isLate = () => Date.now() > untilMs

/** Which tests come past which mutant: every file of tests once, with all mutants switched off. */
async function learnReach() {
  await started()
  const open = testFiles.filter((file) => reach[file]?.hash !== hash(textOf(file)))
  for (const [i, file] of open.entries()) {
    if (isLate()) return
    const outcome = await ask({ mutant: 'none', file, testIds: undefined, mostCpuMs: 600_000 })
    const { static: atLoad = {}, perTest = {} } = outcome?.passed ?? {}
    reach[file] = {
      hash: hash(textOf(file)),
      cpuMs: outcome?.cpuMs ?? 0,
      broken: outcome === undefined || outcome.failed.length > 0,
      atLoad: Object.keys(atLoad),
      byTest: Object.fromEntries(Object.entries(perTest).map(([test, ids]) => [test, Object.keys(ids)])),
    }
    keep('reach.json', reach)
    const faults = outcome?.failed.slice(0, 1).join('') ?? 'does not end'
    console.log(`reach ${i + 1}/${open.length} ${file}${reach[file].broken ? ` left out: ${faults}` : ''}`)
  }
}

/** How near a file of tests stands to a source: what tests it by name comes first. @param {string} file @param {string} source */
function nearness(file, source) {
  const [test, own] = [file.split('/').slice(1), source.split('/').slice(1)]
  const shared = own.findIndex((part, i) => part !== test[i])
  const stem = (own.at(-1) ?? '').replace(/\.ts$/, '')
  return 8 ** shared * ((test.at(-1) ?? '').startsWith(`${stem}.`) ? 8 : 1)
}

/** @param {Chosen} mutant @param {Reach} known how its tests are asked: undefined: all of them, a list: those, false: none reaches it */
function testsPast({ id }, { atLoad, byTest, cpuMs }) {
  if (atLoad.includes(id)) return { ids: undefined }
  const ids = Object.keys(byTest).filter((test) => byTest[test]?.includes(id))
  if (ids.length === 0) return undefined
  // one test may lean on what an earlier one has left behind: picked out only where the whole file takes long
  return { ids: cpuMs > 4000 && ids.length * 2 < Object.keys(byTest).length ? ids : undefined }
}

/** @param {Chosen} mutant */
async function hold(mutant) {
  const open = Object.entries(reach).flatMap(([file, known]) => {
    const past = known.broken || !testFiles.includes(file) ? undefined : testsPast(mutant, known)
    if (past === undefined) return []
    const tag = `${file} ${known.hash}`
    return [{ file, tag, ids: past.ids, cpuMs: known.cpuMs, order: known.cpuMs / nearness(file, mutant.fileName) }]
  })
  open.sort((a, b) => a.order - b.order)
  const before = results[mutant.number]
  const tried = before?.is === 'survived' ? before.tried : []
  const jobs = open.filter(({ tag }) => !tried.includes(tag))
  if (before !== undefined && (jobs.length === 0 || before.is === 'killed' || before.is === 'hung')) return before
  /** @type {Result} */
  const result = { is: open.length === 0 ? 'unreached' : 'survived', tried: [...tried], left: jobs.length }
  let spentMs = 0
  for (const { file, tag, ids, cpuMs } of jobs) {
    if (spentMs > mostMs || isLate()) break
    const outcome = await ask({ mutant: mutant.id, file, testIds: ids, mostCpuMs: 15_000 + 6 * cpuMs })
    if (outcome === undefined) return { ...result, is: /** @type {const} */ ('hung'), by: file }
    if (outcome.failed.length > 0)
      return { ...result, is: /** @type {const} */ ('killed'), by: `${file}: ${outcome.failed[0]}` }
    spentMs += outcome.cpuMs
    result.tried.push(tag)
    result.left--
  }
  return result
}

/** @param {Chosen} mutant */
function lineOf({ fileName, location, replacement, mutatorName }) {
  const original = originalOf(textOf(fileName), location)
  const short = (/** @type {string} */ text) =>
    text.replace(/\s+/g, ' ').length > 90 ? `${text.replace(/\s+/g, ' ').slice(0, 87)}…` : text.replace(/\s+/g, ' ')
  return `\`${fileName}\` ${mutatorName} \`${short(original)}\` → \`${short(replacement)}\``
}

if (!values.show) {
  await learnReach()
  for (const mutant of chosen) {
    if (isLate()) break
    if (only !== undefined && !only.includes(mutant.number)) continue
    const before = results[mutant.number]
    const result = await hold(mutant)
    if (result === before) continue
    results[mutant.number] = result
    keep('results.json', results)
    console.log(`${mutant.number}/${chosen.length} ${result.is} ${lineOf(mutant)} ${result.by ?? ''}`)
  }
  runner?.kill('SIGKILL')
}

const judged = existsSync(join(ROOT, 'test/mutants.md')) ? textOf('test/mutants.md') : ''
const done = chosen.flatMap((mutant) => {
  const result = results[mutant.number]
  return result === undefined ? [] : [{ mutant, result }]
})
/** @param {readonly Result['is'][]} kinds */
const many = (...kinds) => done.filter(({ result }) => kinds.includes(result.is)).length
console.log('')
for (const { mutant, result } of done) {
  if (result.is === 'killed' || result.is === 'hung') continue
  const line = lineOf(mutant)
  const tests = `${result.tried.length} files of tests${result.left > 0 ? `, ${result.left} not tried` : ''}`
  console.log(
    `${mutant.number} line ${mutant.location.start.line + 1} ${line} (${tests})${judged.includes(line) ? ' judged' : ''}`,
  )
}
const killed = many('killed', 'hung')
const score = done.length === 0 ? 'none yet' : `${((100 * killed) / done.length).toFixed(1)} %`
console.log(
  `\n${done.length} of ${chosen.length} mutants tried (seed ${seed}): ${many('killed')} killed, ${many('hung')} hung, ` +
    `${many('survived')} survived, ${many('unreached')} reached by no test: score ${score}`,
)
