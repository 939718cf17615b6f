/**
 * Tables of words and figures travel packed: a module that exports nothing but data is worked out by the build, and what
 * it exports stands deflated in the chunk, at a third of its size as code. Only in the production build: tests and the
 * development server read the sources.
 */
import { readdirSync } from 'node:fs'
import { join, relative } from 'node:path'
import { isDeepStrictEqual } from 'node:util'
import { deflateRawSync } from 'node:zlib'
import { runnerImport } from 'vite'
import { ROOT } from './install.mjs'
import { SIGNS, unpack } from './unpack.mjs'

/** What is loaded together is packed together; the first pattern that fits a file counts. */
const PACKS = {
  evidence: /^guide\/(evidence|suspects)\/(?!define|evidence|suspects)|^guide\/chapters\/safety/,
  chapters: /^guide\/chapters\//,
  drawings: /^guide\/drawings\/(finding|fitting|measuring)/,
  notes: /^(guide\/notes\/|reference\/noise-signatures)/,
  lines: /^reference\/line-kinds\/(?!cite|usual)/,
  sources: /^reference\/sources-|^reference\/sources\.ts/,
  // Leaves only: what puts the fields of a check together stays code, so that checks go on sharing them.
  checks:
    /^reference\/waveforms\/(?!types)|^calc\/checks\/(surge\/(pulse|part|filter)|choke|dielectric|element|noise|rule|signal|spread)-inputs/,
  meanings: /^calc\/fact-meanings/,
}

const SRC = join(ROOT, 'src')
const PACK = '\0packed:'
const RUNTIME = join(ROOT, 'scripts', 'unpack.mjs')

/** @param {string} file relative to src */
const packOf = (file) => Object.entries(PACKS).find(([, pattern]) => pattern.test(file))?.[0]

/**
 * Data as text of printable signs: deflated, 13 bits in two signs.
 * @param {unknown} data
 */
export function pack(data) {
  const whole = Buffer.from(JSON.stringify(data))
  const packed = deflateRawSync(whole, { level: 9, memLevel: 9 })
  let text = ''
  let held = 0
  let bits = 0
  const put = () => {
    const two = held & 8191
    text += SIGNS.charAt(Math.floor(two / 91)) + SIGNS.charAt(two % 91)
    held >>>= 13
    bits -= 13
  }
  for (const byte of packed) {
    held |= byte << bits
    bits += 8
    if (bits >= 13) put()
  }
  if (bits > 0) put()
  return { text, packedBytes: packed.length, wholeBytes: whole.length }
}

/**
 * What the modules of all packs export, by pack and file; a module with anything but data in it stands in none.
 * @returns {Promise<Record<string, Record<string, Record<string, unknown>>>>}
 */
async function readTables() {
  const files = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
    .map((file) => file.replaceAll('\\', '/'))
    .filter((file) => /(?<!\.d)\.ts$/.test(file) && packOf(file) !== undefined)
    .sort()
  const all = '\0all-tables'
  const { module } = await runnerImport(all, {
    configFile: false,
    logLevel: 'error',
    plugins: [
      {
        name: 'all-tables',
        resolveId: (id) => (id === all ? id : null),
        load: (id) =>
          id === all
            ? files.map((file, i) => `export * as m${i} from ${JSON.stringify(join(SRC, file))}`).join('\n')
            : null,
      },
    ],
  })
  /** @type {Record<string, Record<string, Record<string, unknown>>>} */
  const tables = {}
  for (const [i, file] of files.entries()) {
    const held = { ...module[`m${i}`] }
    const name = packOf(file)
    if (name === undefined || Object.keys(held).length === 0) continue
    if (Object.values(held).some((value) => typeof value === 'function')) continue
    if (!isDeepStrictEqual(JSON.parse(JSON.stringify(held)), held)) continue
    tables[name] = { ...tables[name], [file]: held }
  }
  return tables
}

/** @returns {import('vite').Plugin} */
export function packedTables() {
  /** @type {Awaited<ReturnType<typeof readTables>>} */
  let tables = {}
  return {
    name: 'stillpin-packed-tables',
    apply: 'build',
    enforce: 'pre',
    async buildStart() {
      tables = await readTables()
    },
    resolveId: (id) => (id.startsWith(PACK) ? id : null),
    load(id) {
      if (id.startsWith(PACK)) {
        const held = Object.values(tables[id.slice(PACK.length)] ?? {})
        const { text, packedBytes, wholeBytes } = pack(held)
        if (!isDeepStrictEqual(unpack(text, packedBytes, wholeBytes), held))
          throw new Error(`${id.slice(1)} does not come out of its pack as it went in.`)
        return `import { unpack } from ${JSON.stringify(RUNTIME)}
export default /* @__PURE__ */ unpack('${text}', ${packedBytes}, ${wholeBytes})`
      }
      const file = relative(SRC, id).replaceAll('\\', '/')
      const name = packOf(file)
      const at = name === undefined ? -1 : Object.keys(tables[name] ?? {}).indexOf(file)
      if (name === undefined || at < 0) return null
      const exported = Object.keys(tables[name]?.[file] ?? {})
      return [
        `import tables from ${JSON.stringify(PACK + name)}`,
        ...exported.map((key) => `export const ${key} = /* @__PURE__ */ (() => tables[${at}].${key})()`),
      ].join('\n')
    },
  }
}
