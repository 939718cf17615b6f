/**
 * Installs what is needed and runs every check there is: types, lint, dead code, the unit tests with golden and architecture,
 * the long searches, the adversary, the torture, the speed ratios, the build with its size gate, build and browser tests, the same stories in three
 * engines (`--engines chromium` names those there are). Ends with the minutes
 * each took and one line: N passed, N failed. Anything skipped counts as failed.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { stripVTControlCharacters } from 'node:util'
import { findChromium, findHeadless, HEADLESS, onPath } from './chromium.mjs'
import { ENGINE_PACKAGES, findFirefox, findNginx, findWebkit } from './engines.mjs'
import { install, runTool, TOOLS } from './install.mjs'

const count = { passed: 0, failed: 0 }
/** @type {string[]} */
const complaints = []
/** @type {string[]} */
const times = []

/**
 * Runs one part of the whole and notes how long it took.
 * @template T
 * @param {string} name
 * @param {() => T} part
 */
function timed(name, part) {
  console.log(`\n=== ${name}`)
  const from = performance.now()
  const result = part()
  times.push(`${name} ${((performance.now() - from) / 60_000).toFixed(1)} min`)
  return result
}

/**
 * @param {string} name
 * @param {boolean} isGood
 */
function record(name, isGood) {
  count[isGood ? 'passed' : 'failed']++
  if (!isGood) complaints.push(name)
}

/**
 * @param {string} name
 * @param {string} tool
 * @param {readonly string[]} args
 */
function step(name, tool, args) {
  const isGood = timed(name, () => runTool(tool, args))
  record(name, isGood)
  return isGood
}

/** @typedef {{ status: string, fullName: string, failureMessages: readonly string[] }} Outcome */
/** @typedef {{ name: string, status: string, message: string, assertionResults: readonly Outcome[] }} FileOutcome */

/** @param {string} text */
const firstLine = (text) => stripVTControlCharacters(text).split('\n')[0] ?? ''

/**
 * What failed, by file and name with the first line of why, so that the end of a long record says it all.
 * @param {readonly FileOutcome[]} files
 * @param {string} project
 */
function failuresOf(files, project) {
  return files.flatMap(({ name, status, message, assertionResults }) => {
    const failed = assertionResults.filter((test) => test.status === 'failed')
    const file = `${project}: ${relative(process.cwd(), name)}`
    if (failed.length === 0) return status === 'failed' ? [`${file}: ${firstLine(message)}`] : []
    return failed.map((test) => `${file}: ${test.fullName}: ${firstLine(test.failureMessages[0] ?? '')}`)
  })
}

/**
 * Runs one vitest project and counts its tests from the report, so that nothing can pass by not running.
 * @param {'unit' | 'kept' | 'long' | 'adversary' | 'torture' | 'bench' | 'site' | 'engines'} project
 */
function tests(project) {
  const folder = mkdtempSync(join(tmpdir(), 'stillpin-test-'))
  const report = join(folder, 'report.json')
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
  const isGood = timed(`${project} tests`, () => runTool(TOOLS.vitest, ['run', '--project', project, ...reporters]))
  const result = existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : undefined
  rmSync(folder, { recursive: true })
  const { numPassedTests = 0, numFailedTests = 0, numPendingTests = 0, numTodoTests = 0 } = result ?? {}
  count.passed += numPassedTests
  count.failed += numFailedTests + numPendingTests + numTodoTests
  if (numPendingTests + numTodoTests > 0) complaints.push(`${project}: ${numPendingTests + numTodoTests} skipped`)
  if (numFailedTests > 0) complaints.push(`${project}: ${numFailedTests} failed`)
  complaints.push(...failuresOf(result?.testResults ?? [], project))
  // A file that does not load has no tests to count, and an empty run is no pass either.
  if (numPassedTests === 0 || (!isGood && numFailedTests === 0)) record(`${project} run`, false)
}

/** Engines that were asked for: all, or those after --engines, divided by commas. */
const NAMED = process.argv.includes('--engines') ? (process.argv[process.argv.indexOf('--engines') + 1] ?? '') : ''
const ENGINES = Object.keys(ENGINE_PACKAGES).filter((name) => NAMED === '' || NAMED.split(',').includes(name))
const FINDERS = { chromium: findChromium, firefox: findFirefox, webkit: findWebkit, nginx: findNginx }

const CAN_INSTALL = existsSync('/etc/debian_version') && process.getuid?.() === 0 && !process.env['CHROMIUM_PATH']

/** @param {readonly string[]} packages */
function aptInstall(packages) {
  const apt = (/** @type {string[]} */ ...args) =>
    spawnSync('apt-get', args, {
      stdio: 'inherit',
      env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive', RUNLEVEL: '1' },
    }).status === 0
  return apt('update') && apt('install', '-y', '--no-install-recommends', ...packages)
}

/**
 * Finds an engine; on Debian as root installs it.
 * @param {keyof typeof FINDERS} name
 */
function haveEngine(name) {
  const find = FINDERS[name]
  if (find() !== undefined) return true
  const packages = ENGINE_PACKAGES[name] ?? []
  if (CAN_INSTALL) {
    console.log(`\nNo ${name} found; installing it with apt-get …`)
    if (aptInstall(packages)) return find() !== undefined
  }
  console.error(
    `No ${name} found, so its tests cannot run. Install it (Debian or Ubuntu: sudo apt-get install ${packages.join(' ')};\n` +
      'Chromium and Firefox also by CHROMIUM_PATH or FIREFOX_PATH), or name the engines there are: --engines chromium',
  )
  return false
}

/** The browser tests run in whichever there is; without the lighter one they take twice the time. */
function quickenBrowserTests() {
  if (CAN_INSTALL && onPath(HEADLESS) === undefined) aptInstall([HEADLESS])
  console.log(`\nBrowser tests run in ${findHeadless()}`)
}

install()
for (const project of ['tsconfig.json', 'tsconfig.pure.json', 'tsconfig.worker.json', 'tsconfig.test.json'])
  step(`types ${project}`, TOOLS.tsc, ['-p', project])
step('lint', TOOLS.biome, ['check', '--error-on-warnings', '.'])
step('dead code', TOOLS.knip, [])
// the ratios of speed are taken in a browser too
const hasChromium = haveEngine('chromium')
if (hasChromium) quickenBrowserTests()
for (const project of /** @type {const} */ (['unit', 'kept', 'long', 'adversary', 'torture', 'bench'])) tests(project)
const isBuilt = step('build', TOOLS.vite, ['build'])
if (!isBuilt) record('site tests: nothing to test without a build', false)
else if (hasChromium) tests('site')
else record('site tests: no chromium', false)
if (isBuilt) {
  const missing = /** @type {(keyof typeof FINDERS)[]} */ (ENGINES).filter((name) => !haveEngine(name))
  for (const name of missing) record(`engine tests: no ${name}`, false)
  process.env['STILLPIN_ENGINES'] = ENGINES.filter((name) => !missing.some((one) => one === name)).join(',')
  if (process.env['STILLPIN_ENGINES'] !== '') tests('engines')
}

console.log(`\n${times.join('\n')}`)
for (const line of complaints) console.log(`failed: ${line}`)
console.log(`\n${count.passed} passed, ${count.failed} failed`)
process.exitCode = count.failed === 0 ? 0 : 1
