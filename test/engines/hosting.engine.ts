/** The settings for nginx that are shipped: headers, what is missing, packing, an offline copy and an update behind it. */
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { publish } from '../../deploy/publish.mjs'
import { CSP_HEADER } from '../../scripts/csp.mjs'
import { DIST } from '../../scripts/static-server.mjs'
import { build } from '../e2e/support/built-site.ts'
import { workedHash } from '../e2e/support/worked-checks.ts'
import { startDriven } from './support/driven.ts'
import { tapWords, there, until } from './support/engine.ts'
import { type Host, SHIPPED, startNginx } from './support/nginx.ts'
import { isWanted } from './support/wanted.ts'

describe.runIf(isWanted('nginx'))('behind nginx', () => {
  const folders = mkdtempSync(join(tmpdir(), 'stillpin-hosted-'))
  const next = join(folders, 'next')
  let host: Host
  beforeAll(async () => {
    build({ STILLPIN_OUT: next, STILLPIN_VERSION: '77.7.7' })
    host = await startNginx()
    publish(DIST, host.root)
  }, 120_000)
  afterAll(async () => {
    await host?.close()
    rmSync(folders, { recursive: true, force: true })
  })
  const ask = (path: string, accept = '*/*', packing = 'gzip') =>
    fetch(`${host.address}${path}`, { headers: { Accept: accept, 'Accept-Encoding': packing }, redirect: 'manual' })

  it('sends the policy of the app, and nothing that may be sniffed', async () => {
    expect(readFileSync(SHIPPED, 'utf8')).toContain(`"${CSP_HEADER}"`)
    const page = /assets\/[\w-]+\.js/.exec(readFileSync(join(DIST, 'index.html'), 'utf8'))?.[0] ?? ''
    for (const path of ['', page, 'sw.js', 'manifest.webmanifest', 'not-there.js']) {
      const answer = await ask(path)
      expect(answer.headers.get('content-security-policy'), path).toBe(CSP_HEADER)
      expect(answer.headers.get('x-content-type-options'), path).toBe('nosniff')
      expect(answer.headers.get('referrer-policy'), path).toBe('no-referrer')
    }
  })

  it('lets assets be kept for good and has everything else asked for anew', async () => {
    const asset = /assets\/[\w-]+\.js/.exec(readFileSync(join(DIST, 'index.html'), 'utf8'))?.[0] ?? ''
    expect((await ask(asset)).headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
    for (const path of ['', 'sw.js', 'worker.js', 'first-paint.js', 'manifest.webmanifest'])
      expect((await ask(path)).headers.get('cache-control'), path).toBe('no-cache')
  })

  it('says 404 for files that are not there, and leads a page that is not there to the start page', async () => {
    const gone = await ask('assets/not-there.js', 'text/html')
    expect([gone.status, gone.headers.get('cache-control')]).toEqual([404, 'no-cache'])
    expect((await ask('not-there.js')).status).toBe(404)
    const page = await ask('some/deep/link', 'text/html')
    expect([page.status, new URL(page.headers.get('location') ?? '', host.address).pathname]).toEqual([302, '/'])
  })

  it('packs text and names every kind of file', async () => {
    const asset = /assets\/[\w-]+\.js/.exec(readFileSync(join(DIST, 'index.html'), 'utf8'))?.[0] ?? ''
    const script = await ask(asset)
    expect(script.headers.get('content-encoding')).toBe('gzip')
    expect(script.headers.get('content-type')).toMatch(/^text\/javascript/)
    expect((await ask('manifest.webmanifest')).headers.get('content-type')).toMatch(/^application\/manifest\+json/)
  })

  it('serves scripts and styles as they were packed beforehand, and the same text whichever way', async () => {
    const page = readFileSync(join(DIST, 'index.html'), 'utf8')
    for (const path of [...page.matchAll(/assets\/[\w-]+\.(js|css)/g)].map(([found]) => found)) {
      const plain = readFileSync(join(DIST, path))
      for (const packing of ['br', 'gzip'] as const) {
        const answer = await ask(path, '*/*', packing === 'br' ? 'gzip, deflate, br' : packing)
        expect(answer.headers.get('content-encoding'), path).toBe(packing)
        // one copy on the way serves nobody who cannot read it
        expect(answer.headers.get('vary'), path).toMatch(/accept-encoding/i)
        expect(answer.headers.get('content-type'), path).toMatch(/^text\/(javascript|css)/)
        expect(answer.headers.get('cache-control'), path).toContain('immutable')
        expect(answer.headers.get('content-security-policy'), path).toBe(CSP_HEADER)
        expect(Number(answer.headers.get('content-length')), path).toBe(
          statSync(join(host.root, `${path}${packing === 'br' ? '.br' : '.gz'}`)).size,
        )
        expect(Buffer.from(await answer.arrayBuffer()).equals(plain), `${path} ${packing}`).toBe(true)
      }
    }
    // under a lasting name a packed copy might be older than its file
    expect((await ask('', 'text/html', 'gzip, br')).headers.get('content-encoding')).toBe('gzip')
  })

  it('carries the app offline and through an update that is put there file by file', async () => {
    const engine = await startDriven('chromium')
    try {
      await engine.go(host.address)
      await there(engine, 'h1')
      await until(engine, 'navigator.serviceWorker.controller', 'the worker in charge')
      await engine.go(`${host.address}#/check/need`)
      await there(engine, 'form [name="measuredDb"]')
      await engine.type('form [name="measuredDb"]', '63.7')
      publish(next, host.root)
      await engine.read(`(async () => {
        const registration = await navigator.serviceWorker.ready
        while (registration.waiting === null) {
          await registration.update()
          await new Promise((done) => setTimeout(done, 100))
        }
        return true
      })()`)
      await tapWords(engine, 'Update now')
      await until(engine, `document.documentElement.dataset.version === '77.7.7'`, 'the next version')
      await until(engine, `document.querySelector('form [name="measuredDb"]')?.value === '63.7'`, 'the typed text')
      await host.close()
      await engine.go(`${host.address}${workedHash('filter')}`)
      await until(engine, `document.querySelector('output#insertionLossDb')`, 'an answer offline')
    } finally {
      await engine.close()
    }
    host = await startNginx()
  })
})
