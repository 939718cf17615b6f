/** Build plugins of our own: policy and manifest in the page, hashes in the precache, the gate on first-load script size. */
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { gzipSync } from 'node:zlib'
import { CSP_META } from './csp.mjs'
import { MANIFEST } from './manifest.mjs'

/** Most script, gzipped, that the start page may load until it stands and can be used. */
export const FIRST_LOAD_LIMIT_BYTES = 20_000
/** The same with what it fetches after that: the store, and what was going on. */
export const COMPLETE_LIMIT_BYTES = 35_000
/** The same with the first question of the guide: its screen and the guide itself, the largest part of it. */
export const QUESTION_LIMIT_BYTES = 130_000

/** @returns {import('vite').Plugin} */
export function policyInPage() {
  return {
    name: 'stillpin-policy',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'meta', attrs: { 'http-equiv': 'Content-Security-Policy', content: CSP_META }, injectTo: 'head-prepend' },
    ],
  }
}

const MANIFEST_FILE = 'manifest.webmanifest'

/**
 * The web app manifest as a file of the build like any other, so that the precache carries its hash too.
 * @returns {import('vite').Plugin}
 */
export function webManifest() {
  return {
    name: 'stillpin-manifest',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: MANIFEST_FILE, source: `${JSON.stringify(MANIFEST)}\n` })
    },
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: `./${MANIFEST_FILE}` }, injectTo: 'head' },
    ],
  }
}

/**
 * The hash a browser compares before it takes a file into the offline copy.
 * @param {Uint8Array} bytes
 */
export const integrityOf = (bytes) => `sha384-${createHash('sha384').update(bytes).digest('base64')}`

/**
 * Gives every entry of the precache the hash of its file. Of a deploy that is old in one part and new in another
 * (an edge cache that still sends the old page) the install then fails, and the copy before it lives on.
 * @param {string} folder the folder that was built into
 * @returns {import('workbox-build').ManifestTransform}
 */
export const withIntegrity = (folder) => (entries) => ({
  manifest: entries.map((entry) => ({ ...entry, integrity: integrityOf(readFileSync(join(folder, entry.url))) })),
})

/**
 * The scripts of a build by the names of their files.
 * @param {import('rolldown').OutputBundle} bundle
 */
export function chunksOf(bundle) {
  /** @type {Record<string, import('rolldown').OutputChunk>} */
  const chunks = {}
  for (const [name, file] of Object.entries(bundle)) if (file.type === 'chunk') chunks[name] = file
  return chunks
}

/**
 * Every script the page asks for before it runs: those named in the HTML, and all they import statically.
 * @param {string} html
 * @param {Readonly<Record<string, { imports: readonly string[] }>>} chunks imports by file name
 */
export function firstLoadFiles(html, chunks) {
  const tags = html.match(/<(?:script|link)\b[^>]*>/g) ?? []
  const named = tags
    .filter((tag) => tag.startsWith('<script') || /rel="modulepreload"/.test(tag))
    .map((tag) => /(?:src|href)="(?:\.?\/)?([^"]+\.js)"/.exec(tag)?.[1])
    .filter((name) => name !== undefined)
  const found = new Set(named)
  for (const name of found) for (const next of chunks[name]?.imports ?? []) found.add(next)
  return [...found]
}

/**
 * The files a page has loaded once these modules run too: their chunks, and all that those import statically.
 * @param {readonly string[]} loaded
 * @param {Readonly<Record<string, { imports: readonly string[], moduleIds: readonly string[] }>>} chunks
 * @param {readonly string[]} modules ends of module paths
 */
export function withModules(loaded, chunks, modules) {
  const found = new Set(loaded)
  for (const [name, { moduleIds }] of Object.entries(chunks))
    if (modules.some((end) => moduleIds.some((id) => id.endsWith(end)))) found.add(name)
  for (const name of found) for (const next of chunks[name]?.imports ?? []) found.add(next)
  return [...found]
}

/** The start page's own screen; its frame and it together are the first load. */
const START_PAGE = ['/src/ui/screens/ask-start.tsx']
/** What comes after it by itself. */
const COMPLETE = [
  ...START_PAGE,
  '/src/state/resume.ts',
  '/src/state/theme-store.ts',
  '/src/ui/screens/going-on.tsx',
  '/src/ui/shell/work-notices.tsx',
]
/** What the first question asks for on top. */
const FIRST_QUESTION = [...COMPLETE, '/src/ui/screens/ask.tsx', '/src/state/built-guide.ts?built']

/**
 * The scripts every start runs.
 * @param {string} folder
 * @param {import('rolldown').OutputBundle} bundle
 */
export function startFiles(folder, bundle) {
  const chunks = chunksOf(bundle)
  return withModules(firstLoadFiles(readFileSync(join(folder, 'index.html'), 'utf8'), chunks), chunks, COMPLETE)
}

/** @param {readonly Uint8Array[]} files */
const gzipBytes = (files) => files.reduce((sum, file) => sum + gzipSync(file, { level: 9 }).length, 0)

/** @returns {import('vite').Plugin} */
export function sizeGate() {
  return {
    name: 'stillpin-size-gate',
    apply: 'build',
    enforce: 'post',
    writeBundle(options, bundle) {
      const folder = options.dir ?? 'dist'
      if (!('index.html' in bundle)) return
      const chunks = chunksOf(bundle)
      const read = (/** @type {string} */ name) => readFileSync(join(folder, name))
      const html = read('index.html')
      const scripts = firstLoadFiles(html.toString('utf8'), chunks)
      const styles = [...html.toString('utf8').matchAll(/<link rel="stylesheet"[^>]*href="\.?\/?([^"]+)"/g)]
      const scriptBytes = gzipBytes(withModules(scripts, chunks, START_PAGE).map(read))
      const pageBytes = scriptBytes + gzipBytes([html, ...styles.map((match) => read(match[1] ?? ''))])
      const completeBytes = gzipBytes(withModules(scripts, chunks, COMPLETE).map(read))
      const questionBytes = gzipBytes(withModules(scripts, chunks, FIRST_QUESTION).map(read))
      const line =
        `first-load script ${scriptBytes} B gzip of ${FIRST_LOAD_LIMIT_BYTES} B, with page and styles ${pageBytes} B; ` +
        `script with what was stored ${completeBytes} B gzip of ${COMPLETE_LIMIT_BYTES} B, ` +
        `up to the first question ${questionBytes} B gzip of ${QUESTION_LIMIT_BYTES} B (without fonts)`
      const isOver =
        scriptBytes > FIRST_LOAD_LIMIT_BYTES ||
        completeBytes > COMPLETE_LIMIT_BYTES ||
        questionBytes > QUESTION_LIMIT_BYTES
      if (isOver) this.error(`Too much script for the first screen: ${line}`)
      console.log(line)
    },
  }
}
