/**
 * Installs what is needed and runs every check there is: types, lint, the unit tests with golden and architecture,
 * the long searches, the adversary, the speed ratios, the build with its size gate, build and browser tests. Ends with the minutes
 * each took and one line: N passed, N failed. Anything skipped counts as failed.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findChromium } from './chromium.mjs'
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

/**
 * Runs one vitest project and counts its tests from the report, so that nothing can pass by not running.
 * @param {'unit' | 'long' | 'adversary' | 'bench' | 'site'} project
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
  // A file that does not load has no tests to count, and an empty run is no pass either.
  if (numPassedTests === 0 || (!isGood && numFailedTests === 0)) record(`${project} run`, false)
}

/** Finds Chromium; on Debian as root installs it. */
function haveChromium() {
  if (findChromium() !== undefined) return true
  const canInstall = existsSync('/etc/debian_version') && process.getuid?.() === 0 && !process.env['CHROMIUM_PATH']
  if (canInstall) {
    console.log('\nNo Chromium found; installing it with apt-get …')
    const apt = (/** @type {string[]} */ ...args) =>
      spawnSync('apt-get', args, { stdio: 'inherit', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } })
        .status === 0
    if (apt('update') && apt('install', '-y', '--no-install-recommends', 'chromium'))
      return findChromium() !== undefined
  }
  console.error(
    'No Chromium found, so the browser tests cannot run. Install one (Debian or Ubuntu: sudo apt-get install chromium;\n' +
      'others: Chromium or Chrome from your package manager) or set CHROMIUM_PATH to its program file.',
  )
  return false
}

install()
for (const project of ['tsconfig.json', 'tsconfig.pure.json', 'tsconfig.worker.json', 'tsconfig.test.json'])
  step(`types ${project}`, TOOLS.tsc, ['-p', project])
step('lint', TOOLS.biome, ['check', '--error-on-warnings', '.'])
for (const project of /** @type {const} */ (['unit', 'long', 'adversary', 'bench'])) tests(project)
const isBuilt = step('build', TOOLS.vite, ['build'])
if (!isBuilt) record('site tests: nothing to test without a build', false)
else if (haveChromium()) tests('site')
else record('site tests: no Chromium', false)

console.log(`\n${times.join('\n')}`)
for (const line of complaints) console.log(`failed: ${line}`)
console.log(`\n${count.passed} passed, ${count.failed} failed`)
process.exitCode = count.failed === 0 ? 0 : 1
