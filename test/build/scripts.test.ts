import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { firstLoadFiles } from '../../scripts/build-plugins.mjs'
import { isInstalled } from '../../scripts/install.mjs'
import { DIST, safePath, startServer } from '../../scripts/static-server.mjs'

let root: Awaited<ReturnType<typeof startServer>>
let nested: Awaited<ReturnType<typeof startServer>>
beforeAll(async () => {
  root = await startServer({ root: DIST })
  nested = await startServer({ root: DIST, basePath: '/tools/stillpin/' })
})
afterAll(async () => {
  await root.close()
  await nested.close()
})

const get = (address: string, accept = '*/*') => fetch(address, { headers: { accept }, redirect: 'manual' })
const firstAsset = /assets\/[^"]+\.js/.exec(readFileSync(join(DIST, 'index.html'), 'utf8'))?.[0] ?? ''

describe('the static server', () => {
  it('serves the page with the policy and asks browsers to check it every time', async () => {
    const { status, headers } = await get(root.address)
    expect(status).toBe(200)
    expect(headers.get('content-type')).toBe('text/html; charset=utf-8')
    expect(headers.get('cache-control')).toBe('no-cache')
    expect(headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(headers.get('x-content-type-options')).toBe('nosniff')
  })

  it('lets browsers keep hashed files for good, and nothing else', async () => {
    expect((await get(root.address + firstAsset)).headers.get('cache-control')).toBe(
      'public, max-age=31536000, immutable',
    )
    for (const name of ['sw.js', 'manifest.webmanifest', 'first-paint.js'])
      expect((await get(root.address + name)).headers.get('cache-control')).toBe('no-cache')
  })

  it('sends text compressed and pictures as they are', async () => {
    const encoding = async (name: string) => (await get(root.address + name)).headers.get('content-encoding')
    expect(await Promise.all([firstAsset, 'icons/icon.svg', 'icons/icon-192.png'].map(encoding))).toEqual([
      'gzip',
      'gzip',
      null,
    ])
    expect(await (await get(root.address)).text()).toBe(readFileSync(join(DIST, 'index.html'), 'utf8'))
  })

  it('answers a missing asset with 404, never with the page', async () => {
    expect((await get(`${root.address}assets/gone-1a2b3c.js`, 'text/html')).status).toBe(404)
    expect((await get(`${root.address}missing.png`)).status).toBe(404)
  })

  it('sends any other page address to the start page', async () => {
    const { status, headers } = await get(`${nested.address}some/deep/link`, 'text/html')
    expect([status, headers.get('location')]).toEqual([302, '/tools/stillpin/'])
  })

  it('serves the same build in a folder', async () => {
    expect((await get(nested.address)).status).toBe(200)
    expect((await get(nested.address + firstAsset)).status).toBe(200)
    expect((await get(`http://localhost:${nested.port}/`)).status).toBe(404)
  })

  it.each([
    '/../package.json',
    '/%2e%2e/package.json',
    '/..%2fpackage.json',
    '/%00',
    '/.git/config',
    '/a/..\\..\\x',
    '/%zz',
  ])('does not leave its folder: %s', (path) => {
    expect(safePath(path, '/')).toBeUndefined()
  })
})

describe('the size gate', () => {
  it('counts what is named in the page and everything that imports statically', () => {
    const html =
      '<script src="./first.js"></script><script type="module" src="./assets/a.js"></script><link rel="modulepreload" href="./assets/b.js"><link rel="icon" href="./x.js">'
    const chunks = {
      'assets/a.js': { imports: ['assets/c.js'] },
      'assets/c.js': { imports: ['assets/d.js', 'assets/a.js'] },
    }
    expect(firstLoadFiles(html, chunks)).toEqual([
      'first.js',
      'assets/a.js',
      'assets/b.js',
      'assets/c.js',
      'assets/d.js',
    ])
  })
})

describe('the install step', () => {
  it('sees that the packages of the lock file are there', () => {
    expect(isInstalled()).toBe(true)
  })
})
