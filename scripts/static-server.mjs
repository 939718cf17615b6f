/** The static server that `serve` and the browser tests share: a strict stand-in for any plain web host. */
import { createReadStream, readdirSync, readFileSync } from 'node:fs'
import { stat } from 'node:fs/promises'
import { createServer } from 'node:http'
import { createSecureServer } from 'node:http2'
import { extname, join, resolve, sep } from 'node:path'
import { createGzip, gzipSync } from 'node:zlib'
import { isPackedBefore, PACKINGS } from '../deploy/pack.mjs'
import { CSP_HEADER } from './csp.mjs'

/** @type {Readonly<Record<string, string>>} */
const MIME = {
  '.css': 'text/css; charset=utf-8',
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.png': 'image/png',
  '.svg': 'image/svg+xml',
  '.txt': 'text/plain; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.woff2': 'font/woff2',
}

/**
 * Path below the base, decoded, or undefined when it is outside the base or tries to leave the folder.
 * @param {string} url
 * @param {string} basePath
 */
export function safePath(url, basePath) {
  let path
  try {
    path = decodeURIComponent(url.split(/[?#]/, 1)[0] ?? '')
  } catch {
    return undefined
  }
  if (!path.startsWith(basePath)) return undefined
  const below = path.slice(basePath.length)
  if (/[\0\\]/.test(below) || below.split('/').some((part) => part.startsWith('.'))) return undefined
  return below
}

/** @param {string} path */
async function isFile(path) {
  try {
    return (await stat(path)).isFile()
  } catch {
    return false
  }
}

const typeOf = (/** @type {string} */ path) => MIME[extname(path)] ?? 'application/octet-stream'

const isText = (/** @type {string} */ path) => !/^(image\/png|font|application\/octet)/.test(typeOf(path))

/** A file as it goes over the wire: the name of its packing, and its bytes. @typedef {{ encoding: string, bytes: Buffer }} Packed */

/**
 * Every text file of a folder, packed beforehand as a host does that follows deploy/: it packs on a machine of its own, and what
 * measures a page must not pack beside it.
 * @param {string} root
 * @returns {ReadonlyMap<string, readonly Packed[]>} by path, the smaller first
 */
function packedTexts(root) {
  const files = readdirSync(root, { recursive: true, withFileTypes: true }).filter((file) => file.isFile())
  const paths = files.map((file) => join(file.parentPath, file.name)).filter(isText)
  return new Map(
    paths.map((path) => {
      const bytes = readFileSync(path)
      const below = path.slice(root.length + 1).replaceAll(sep, '/')
      const packings = isPackedBefore(below) ? PACKINGS : [{ encoding: 'gzip', pack: gzipSync }]
      return [path, packings.map(({ encoding, pack }) => ({ encoding, bytes: pack(bytes) }))]
    }),
  )
}

/**
 * @param {string} root folder to serve
 * @param {ReadonlyMap<string, readonly Packed[]>} packed
 * @param {string} basePath address of the folder, starting and ending with a slash
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 */
async function answer(root, packed, basePath, request, response) {
  response.setHeader('Content-Security-Policy', CSP_HEADER)
  response.setHeader('X-Content-Type-Options', 'nosniff')
  response.setHeader('Referrer-Policy', 'no-referrer')
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405, 'Method not allowed')
  const below = safePath(request.url ?? '', basePath)
  if (below === undefined) return refuse(response, 404, 'Not found')
  const path = resolve(root, below === '' ? 'index.html' : below)
  const inside = path.startsWith(resolve(root) + sep)
  if (inside && (await isFile(path))) return send(request, response, path, packed, below.startsWith('assets/'))
  const wantsPage = (request.headers.accept ?? '').includes('text/html')
  if (!wantsPage || below.startsWith('assets/')) return refuse(response, 404, 'Not found')
  // A redirect, not the page itself: the build uses relative addresses, and browsers keep the #fragment.
  response.writeHead(302, { Location: basePath, 'Cache-Control': 'no-cache' }).end()
}

/**
 * @param {import('node:http').ServerResponse} response
 * @param {number} status
 * @param {string} text
 */
function refuse(response, status, text) {
  response.writeHead(status, { 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-cache' }).end(text)
}

/**
 * @param {import('node:http').IncomingMessage} request
 * @param {import('node:http').ServerResponse} response
 * @param {string} path
 * @param {ReadonlyMap<string, readonly Packed[]>} packed
 * @param {boolean} immutable
 */
function send(request, response, path, packed, immutable) {
  const taken = String(request.headers['accept-encoding'] ?? '').split(/[\s,;]+/)
  const ready = packed.get(path)?.find(({ encoding }) => taken.includes(encoding))
  const zip = ready === undefined && isText(path) && taken.includes('gzip')
  const encoding = ready?.encoding ?? (zip ? 'gzip' : undefined)
  response.writeHead(200, {
    'Content-Type': typeOf(path),
    'Cache-Control': immutable ? 'public, max-age=31536000, immutable' : 'no-cache',
    Vary: 'Accept-Encoding',
    ...(encoding === undefined ? {} : { 'Content-Encoding': encoding }),
  })
  if (request.method === 'HEAD') {
    response.end()
    return
  }
  if (ready !== undefined) {
    response.end(ready.bytes)
    return
  }
  const failed = () => response.destroy()
  const file = createReadStream(path).on('error', failed)
  if (zip) file.pipe(createGzip()).on('error', failed).pipe(response)
  else file.pipe(response)
}

/**
 * Serves a built folder on localhost.
 * @param {{ root: string, port?: number, basePath?: string, secure?: { key: string, cert: string }, isPacked?: boolean }} options
 *   port 0 picks a free one; `secure`: HTTP/2 over TLS, as hosts in use; `isPacked`: texts are packed once, before the first request
 * @returns {Promise<{ address: string, port: number, deploy: (root: string) => void, close: () => Promise<void> }>}
 *   `deploy` puts another folder at the same address; requests under way are answered from the folder they came to
 */
export async function startServer({ root, port = 0, basePath = '/', secure, isPacked = false }) {
  const packed = isPacked ? packedTexts(resolve(root)) : new Map()
  let served = root
  const serve = (
    /** @type {import('node:http').IncomingMessage} */ request,
    /** @type {import('node:http').ServerResponse} */ response,
  ) => {
    answer(served, packed, basePath, request, response).catch(() => response.destroy())
  }
  // a request of HTTP/2 is handled by what handles one of HTTP/1.1: Node gives it the same face
  const server =
    secure === undefined
      ? createServer(serve)
      : createSecureServer({ ...secure, allowHTTP1: true }, /** @type {never} */ (serve))
  await new Promise((done, failed) => {
    server.once('error', failed)
    server.listen(port, 'localhost', () => done(undefined))
  })
  const bound = server.address()
  if (bound === null || typeof bound === 'string') throw new Error('The server has no port.')
  const close = () =>
    new Promise((/** @type {(value: void) => void} */ done) => {
      server.close(() => done())
      if ('closeAllConnections' in server) server.closeAllConnections()
    })
  const deploy = (/** @type {string} */ next) => {
    served = next
  }
  const scheme = secure === undefined ? 'http' : 'https'
  return { address: `${scheme}://localhost:${bound.port}${basePath}`, port: bound.port, deploy, close }
}

export const DIST = join(import.meta.dirname, '..', 'dist')
