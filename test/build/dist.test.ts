import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join, relative } from 'node:path'
import { Script } from 'node:vm'
import { gzipSync, inflateRawSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import {
  FIRST_LOAD_LIMIT_BYTES,
  firstLoadFiles,
  integrityOf,
  QUESTION_LIMIT_BYTES,
} from '../../scripts/build-plugins.mjs'
import { CSP_HEADER, CSP_META } from '../../scripts/csp.mjs'
import { ROOT } from '../../scripts/install.mjs'
import { LICENCES_FILE } from '../../scripts/licences.mjs'
import { DIST } from '../../scripts/static-server.mjs'

function filesOf(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(folder, name)).isFile())
    .map((name) => relative('.', name).replaceAll('\\', '/'))
}

const read = (name: string) => readFileSync(join(DIST, name), 'utf8')
const files = filesOf(DIST)
const html = read('index.html')
const worker = read('sw.js')
const precached = [...worker.matchAll(/["']?url["']?:\s*["'`]([^"'`]+)["'`]/g)].map((match) => match[1] ?? '')

const entries = [...worker.matchAll(/\{[^{}]*["']?url["']?:\s*["'`][^{}]*\}/g)].map(([entry]) => entry)

/** Addresses that name a format or a licence and are never fetched. */
const NAMES_ONLY =
  /^https?:\/\/(json-schema\.org\/|www\.w3\.org\/|localhost|bit\.ly|github\.com\/|preactjs\.com|mathjs\.org|.*\.md$)/

/** What each script imports before it runs. */
const imports: Record<string, { imports: string[] }> = {}
for (const name of files.filter((file) => file.endsWith('.js'))) {
  const found = [...read(name).matchAll(/(?:^|[;}\s])import\s*(?:[^"'`;()]*from\s*)?["'`]\.\/([^"'`]+)["'`]/g)]
  imports[name] = { imports: found.map((match) => `assets/${match[1]}`) }
}

/** What each place asks for beside the app, as the build wrote it into the first script. */
const { names, places } = JSON.parse(/\{"names":.*\}/.exec(read('first-paint.js'))?.[0] ?? '{}') as {
  names: string
  places: Record<string, number[]>
}
const askedBeside = (place: string) => (places[place] ?? []).map((at) => `assets/${names.split(' ')[at]}.js`)

const gzipBytes = (scripts: readonly string[]): number =>
  scripts.reduce((sum, name) => sum + gzipSync(readFileSync(join(DIST, name)), { level: 9 }).length, 0)

describe('the built site', () => {
  it('has every file in the precache, and the worker itself not', () => {
    const itself = ['sw.js', 'worker.js']
    const keptAsCopy = files.filter((name) => files.includes(`${name}.z`))
    const expected = files.filter((name) => ![...itself, ...keptAsCopy].includes(name))
    expect(precached.toSorted()).toEqual(expected.toSorted())
  })

  it('gives every file of the precache the hash of its bytes', () => {
    const hashes = Object.fromEntries(
      entries.map((entry) => [
        /url["']?:\s*["'`]([^"'`]+)/.exec(entry)?.[1] ?? entry,
        /integrity["']?:\s*["'`]([^"'`]+)/.exec(entry)?.[1],
      ]),
    )
    expect(hashes).toEqual(
      Object.fromEntries(precached.map((name) => [name, integrityOf(readFileSync(join(DIST, name)))])),
    )
  })

  it('lists hashed files without a revision and all others with one', () => {
    expect(entries).toHaveLength(precached.length)
    for (const entry of entries) expect(/revision["']?:\s*["'`]/.test(entry)).toBe(!entry.includes('assets/'))
  })

  it('has a worker that tells it is whole in its very last words, so that no cut one does', () => {
    const said = worker.lastIndexOf('stillpinIsWhole')
    expect(worker.slice(said)).toMatch(/^stillpinIsWhole=!0\}\)\(\);?\s*$/)
    expect(worker.indexOf('stillpinIsWhole')).toBe(said)
    const isProgram = (text: string) => {
      try {
        return new Script(text) !== undefined
      } catch {
        return false
      }
    }
    expect(isProgram(worker)).toBe(true)
    const lengths = Array.from({ length: 200 }, (_, i) => Math.round(((i + 1) / 201) * said))
    expect(lengths.filter((length) => isProgram(worker.slice(0, length)))).toEqual([])
  })

  it('carries the policy in the page, and it forbids anything inline or foreign', () => {
    const inPage = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(html)?.[1]
    expect(inPage?.replaceAll('&#39;', "'")).toBe(CSP_META)
    expect(CSP_HEADER).toContain("frame-ancestors 'none'")
    for (const policy of [CSP_HEADER, CSP_META]) expect(policy).not.toMatch(/unsafe|https?:|\*/)
  })

  it('has no inline script or style in the page', () => {
    expect(html).not.toMatch(/<script(?![^>]*\bsrc=)|<style|\son\w+=|\sstyle=/)
  })

  it('names no other host', () => {
    const addresses = files
      .filter((name) => /\.(js|css|html|svg|webmanifest)$/.test(name))
      .flatMap((name) =>
        [...read(name).matchAll(/\bhttps?:\/\/[^\s"'`)<>\\]*/g)].map(([address]) => `${name} ${address}`),
      )
    expect(addresses.filter((line) => !NAMES_ONLY.test(line.slice(line.indexOf(' ') + 1)))).toEqual([])
  })

  it('uses relative addresses only, so that it can live in any folder of a host', () => {
    expect(html.match(/(?:src|href)="\/[^"]*"/g)).toBeNull()
    const manifest: unknown = JSON.parse(read('manifest.webmanifest'))
    expect(manifest).toMatchObject({ id: 'stillpin', scope: './', start_url: './' })
    expect(JSON.stringify(manifest)).not.toMatch(/"\/[a-z]/)
  })

  it('has the icons an installation needs', () => {
    for (const [name, size] of [
      ['icons/icon-192.png', 192],
      ['icons/icon-512.png', 512],
      ['icons/maskable-512.png', 512],
    ] as const) {
      const png = readFileSync(join(DIST, name))
      expect([png.readUInt32BE(16), png.readUInt32BE(20)]).toEqual([size, size])
    }
  })

  it('keeps first-load script within its limit', () => {
    const loaded = firstLoadFiles(html, imports)
    expect(loaded).toContain('first-paint.js')
    expect(gzipBytes(loaded)).toBeLessThanOrEqual(FIRST_LOAD_LIMIT_BYTES)
  })

  it('keeps what the first question asks for beside it within its limit', () => {
    const asked = askedBeside('ask/')
    expect(asked.some((name) => /\/guide-[\w-]{7}\.js$/.test(name))).toBe(true)
    expect(gzipBytes([...firstLoadFiles(html, imports), ...asked])).toBeLessThanOrEqual(QUESTION_LIMIT_BYTES)
  })

  it('asks for the parts of an opened place beside the app: all that its screen loads, and no file that is not there', () => {
    expect(
      Object.keys(places)
        .flatMap(askedBeside)
        .filter((name) => !files.includes(name)),
    ).toEqual([])
    const first = firstLoadFiles(html, imports)
    const screens = {
      'ask/': 'ask',
      'check/': 'check',
      notes: 'book',
    }
    for (const [place, screen] of Object.entries(screens)) {
      const entry = askedBeside(place).filter((name) => new RegExp(`/${screen}-[\\w-]{7}\\.js$`).test(name))
      expect(entry, place).toHaveLength(1)
      const loaded = new Set(entry)
      for (const name of loaded) for (const next of imports[name]?.imports ?? []) loaded.add(next)
      expect([...loaded].filter((name) => !first.includes(name) && !askedBeside(place).includes(name))).toEqual([])
    }
  })

  it('gives a worker nothing of the page to load', () => {
    const workers = files.filter((name) => /^assets\/work-[\w-]+\.js$/.test(name))
    expect(workers.length).toBeGreaterThan(5)
    for (const one of workers) {
      const loaded = new Set([one])
      for (const name of loaded) for (const next of imports[name]?.imports ?? []) loaded.add(next)
      expect([...loaded].filter((name) => /\/(first|store|parts|desk|check)-/.test(name))).toEqual([])
    }
  })

  it('fits its offline copy into 1,229 KiB', () => {
    const bytes = precached.reduce((sum, name) => sum + statSync(join(DIST, name)).size, 0)
    expect(bytes / 1024).toBeLessThanOrEqual(1229)
    // Far below, as long as what no start waits for is kept deflated.
    const raw = files
      .filter((name) => name.endsWith('.js'))
      .reduce((sum, name) => sum + statSync(join(DIST, name)).size, 0)
    expect(bytes).toBeLessThan(raw)
  })

  it('keeps a deflated copy of what no start waits for, which is that file', () => {
    const copies = files.filter((name) => name.endsWith('.z'))
    expect(copies.length).toBeGreaterThan(20)
    expect(precached.filter((name) => name.endsWith('.z')).toSorted()).toEqual(copies.toSorted())
    for (const copy of copies) {
      const whole = copy.slice(0, -2)
      expect(inflateRawSync(readFileSync(join(DIST, copy))).equals(readFileSync(join(DIST, whole))), copy).toBe(true)
      expect(html).not.toContain(whole)
    }
    expect(precached.some((name) => name.startsWith('assets/store-') && name.endsWith('.js'))).toBe(true)
  })

  it('gives a worker the chunks of the page: nothing is computed by a second copy', () => {
    const scripts = files.filter((name) => name.startsWith('assets/') && name.endsWith('.js'))
    const jobs = scripts.filter((name) => name.startsWith('assets/work-check-'))
    expect(jobs).toHaveLength(1)
    const job = read(jobs[0] ?? '')
    expect(job.length).toBeLessThan(3000)
    const shared = [...job.matchAll(/from\s*["'`]\.\/([^"'`]+)["'`]/g)].map((match) => match[1] ?? '')
    expect(shared.length).toBeGreaterThan(0)
    // Its address is named where it is started, and no page runs it as a part of its own.
    const named = scripts.filter((name) => read(name).includes(jobs[0]?.slice('assets/'.length) ?? ''))
    expect(named).toHaveLength(1)
    expect(read(named[0] ?? '')).toMatch(/new URL\(["'`]work-check-[^)]*import\.meta\.url/)
    expect(precached.some((name) => name === jobs[0] || name === `${jobs[0]}.z`)).toBe(true)
  })

  it('precaches woff2 fonts and no older form of them', () => {
    expect(files.filter((name) => /\.(woff|ttf|eot|otf)$/.test(name))).toEqual([])
  })
})

describe('the licences', () => {
  const text = read(LICENCES_FILE)
  const { dependencies } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8'))

  it('are there for every dependency, fonts among them, what those bring along, and the worker', () => {
    const shipped = [...Object.keys(dependencies), '@preact/signals-core', '@babel/runtime', 'workbox-precaching']
    expect(shipped.length).toBeGreaterThan(8)
    for (const name of shipped) {
      const { version } = JSON.parse(readFileSync(join(ROOT, 'node_modules', name, 'package.json'), 'utf8'))
      expect(text).toContain(`${name} ${version} (`)
    }
  })

  it('stand in full, word for word', () => {
    for (const file of ['preact/LICENSE', 'mathjs/LICENSE', 'mathjs/NOTICE', '@fontsource/b612/LICENSE', 'idb/LICENSE'])
      expect(text).toContain(
        readFileSync(join(ROOT, 'node_modules', file), 'utf8')
          .replaceAll('\r\n', '\n')
          .trim(),
      )
  })

  it('can be read without a network', () => {
    expect(precached).toContain(`${LICENCES_FILE}.z`)
  })
})
