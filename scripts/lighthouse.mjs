/**
 * Lighthouse on eight pages of the build, as on a slow phone with a slow network (simulated): the median of three runs a
 * page, and what it finds fault with. Run alone, on demand: other work on the machine costs points. Served over HTTP/2, as
 * a host does that follows deploy/, with a certificate that openssl makes for this run, from texts packed beforehand: packing
 * them beside the browser cost a page up to four points on two cores.
 *   node scripts/lighthouse.mjs [--runs 3] [--only window] [--slower 4]
 * Each page's line ends with the index by which Lighthouse tells how fast the machine was meanwhile: where others share its
 * cores it falls, and the scores with it. --slower 8 asks for a phone half as fast as the one Lighthouse means.
 * Lighthouse is installed into a folder of its own beside the system's temporary files, and kept there.
 */
import { execFile, execFileSync } from 'node:child_process'
import { createHash, createPublicKey } from 'node:crypto'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { loadavg, tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseArgs, promisify } from 'node:util'
import { CHROMIUM_FLAGS, findHeadless } from './chromium.mjs'
import { onDemand } from './on-demand.mjs'
import { DIST, startServer } from './static-server.mjs'

const VERSION = '12.2.3'
/** A run that takes longer hangs. */
const MOST_MS = 120_000
const CATEGORIES = /** @type {const} */ (['performance', 'accessibility', 'best-practices', 'seo'])
/**
 * Its launcher turns RenderDocument off, which every browser in use has on; without it this Chromium draws a page in a new
 * tab once a second until its first frame was seen, and the first painting is told up to two seconds late.
 */
const LIKE_A_BROWSER = '--disable-features=Translate,OptimizationHints,MediaRouter'
/** What each category must come to. */
const LEAST = { performance: 98, accessibility: 100, 'best-practices': 100, seo: 100 }

const PAGES = {
  start: '#/ask',
  question: '#/ask/gate-danger',
  checks: '#/check',
  window: '#/check/window?lineKind=arinc-429-high&frequencyHz=12M&neededDb=20&sourceOhm=150&loadOhm=12k',
  surge:
    '#/check/surge?waveform=wf4&level=3&lineKind=power-28-vdc&supplyCategory=do160-a&standoffV=40&ratedPulseW=1500&withstandV=100&loadOhm=1k',
  log: '#/log',
  book: '#/notes',
  note: '#/notes/on-off-on',
}

const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '3' },
    only: { type: 'string' },
    slower: { type: 'string', default: '4' },
  },
})
const runs = Number(values.runs)
const slower = Number(values.slower)
const chromium = findHeadless()
if (chromium === undefined || !existsSync(DIST) || !(runs >= 1 && slower >= 1)) {
  console.error(
    'Needs Chromium (CHROMIUM_PATH), openssl, a build (npx vite build), a number of runs, and how many times slower.',
  )
  process.exit(1)
}

const { folder, program } = onDemand('lighthouse', VERSION, 'cli/index.js')

/** @typedef {{ score: number | null, title: string }} Audit */
/** @typedef {{ score: number, auditRefs: { id: string, weight: number }[] }} Category */

/**
 * One run in a browser of its own.
 * @param {string} address
 * @returns {Promise<{ categories: Record<string, Category>, audits: Record<string, Audit & { numericValue?: number }>, environment: { benchmarkIndex: number } }>}
 */
async function run(address) {
  const report = join(folder, 'report.json')
  const flags = ['--headless', ...CHROMIUM_FLAGS, LIKE_A_BROWSER, trusting].join(' ')
  const options = [
    '--quiet',
    '--no-enable-error-reporting',
    '--output=json',
    `--output-path=${report}`,
    `--throttling.cpuSlowdownMultiplier=${slower}`,
  ]
  // the server answers from this process: nothing may hold it up meanwhile
  await promisify(execFile)(
    process.execPath,
    [program, address, ...options, `--only-categories=${CATEGORIES.join(',')}`, `--chrome-flags=${flags}`],
    { env: { ...process.env, CHROME_PATH: chromium }, timeout: MOST_MS },
  )
  return JSON.parse(readFileSync(report, 'utf8'))
}

/** @param {readonly number[]} all */
const middle = (all) => all.toSorted((a, b) => a - b)[all.length >> 1] ?? Number.NaN

/** A key and a certificate for localhost, for as long as this run. */
function makeCertificate() {
  const made = mkdtempSync(join(tmpdir(), 'stillpin-certificate-'))
  const [key, cert] = [join(made, 'key.pem'), join(made, 'cert.pem')]
  const kind = ['-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', '-subj', '/CN=localhost']
  execFileSync('openssl', ['req', ...kind, '-keyout', key, '-out', cert], { stdio: 'ignore' })
  const secure = { key: readFileSync(key, 'utf8'), cert: readFileSync(cert, 'utf8') }
  const publicKey = createPublicKey(secure.cert).export({ type: 'spki', format: 'der' })
  rmSync(made, { recursive: true })
  // trusted by its key: where errors of certificates are let pass nothing is kept in the browser's cache, and what a worker
  // shares with the page comes twice
  const hash = createHash('sha256').update(publicKey).digest('base64')
  return { secure, trusting: `--ignore-certificate-errors-spki-list=${hash}` }
}

const { secure, trusting } = makeCertificate()
const server = await startServer({ root: DIST, secure, isPacked: true })
/** @type {string[]} */
const short = []
console.log(
  `load of the machine ${loadavg()
    .map((load) => load.toFixed(1))
    .join(' ')}, ${runs} runs a page, ${slower} times slower`,
)
console.log(
  `${'page'.padEnd(10)}${CATEGORIES.map((name) => name.padStart(16)).join('')}${'blocked ms'.padStart(12)}${'machine'.padStart(10)}`,
)
for (const [name, hash] of Object.entries(PAGES)) {
  if (values.only !== undefined && values.only !== name) continue
  /** @type {Awaited<ReturnType<typeof run>>[]} */
  const results = []
  for (let turn = 0; turn < runs; turn++) results.push(await run(`${server.address}${hash}`))
  const scores = CATEGORIES.map((category) =>
    Math.round(100 * middle(results.map(({ categories }) => categories[category]?.score ?? 0))),
  )
  const blockedMs = middle(results.map(({ audits }) => audits['total-blocking-time']?.numericValue ?? Number.NaN))
  const index = middle(results.map(({ environment }) => environment.benchmarkIndex))
  console.log(
    `${name.padEnd(10)}${scores.map((score) => String(score).padStart(16)).join('')}${blockedMs.toFixed(0).padStart(12)}${index.toFixed(0).padStart(10)}`,
  )
  for (const [i, category] of CATEGORIES.entries()) {
    if ((scores[i] ?? 0) >= LEAST[category]) continue
    const { categories = {}, audits = {} } = results[0] ?? {}
    const bad = (categories[category]?.auditRefs ?? []).filter(
      ({ id, weight }) => weight > 0 && (audits[id]?.score ?? 1) < 0.9,
    )
    short.push(`${name}, ${category} ${scores[i]}: ${bad.map(({ id }) => audits[id]?.title ?? id).join('; ')}`)
  }
}
await server.close()
console.log(
  `load of the machine ${loadavg()
    .map((load) => load.toFixed(1))
    .join(' ')}`,
)
for (const line of short) console.log(`short of it: ${line}`)
process.exitCode = short.length === 0 ? 0 : 1
