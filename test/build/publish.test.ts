/** A build goes up in an order that never leaves half of it, and two builds of one tree are the same. */
import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { afterAll, describe, expect, it } from 'vitest'
import { publish, publishOrder } from '../../deploy/publish.mjs'
import { DIST } from '../../scripts/static-server.mjs'
import { build } from '../e2e/support/built-site.ts'

const folders = mkdtempSync(join(tmpdir(), 'stillpin-publish-'))
afterAll(() => rmSync(folders, { recursive: true, force: true }))

const hashesOf = (root: string): Readonly<Record<string, string>> =>
  Object.fromEntries(
    readdirSync(root, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map(({ parentPath, name }) => join(parentPath, name))
      .sort()
      .map((path) => [path.slice(root.length + 1), createHash('sha256').update(readFileSync(path)).digest('hex')]),
  )

describe('publish', () => {
  it('puts assets first, the page after everything else, and the worker last', () => {
    const order = publishOrder(['sw.js', 'index.html', 'worker.js', 'assets/b.js', 'icons/icon.svg', 'assets/a.js'])
    expect(order).toEqual(['assets/a.js', 'assets/b.js', 'icons/icon.svg', 'index.html', 'worker.js', 'sw.js'])
  })

  it('copies every file whole, in that order, and leaves what is there already', () => {
    const to = join(folders, 'host')
    publish(DIST, to)
    writeFileSync(join(to, 'assets', 'old-asset.js'), 'still wanted')
    const seen: string[] = []
    publish(DIST, to, (path) => seen.push(path))
    expect(seen.slice(-3)).toEqual(['index.html', 'worker.js', 'sw.js'])
    expect(seen.findIndex((path) => !path.startsWith('assets/'))).toBe(
      seen.filter((path) => path.startsWith('assets/')).length,
    )
    const { [join('assets', 'old-asset.js')]: old, ...rest } = hashesOf(to)
    expect(old).toBeDefined()
    const plain = Object.entries(rest).filter(([path]) => !/\.(br|gz)$/.test(path))
    expect(Object.fromEntries(plain)).toEqual(hashesOf(DIST))
  })

  it('lays packed copies beside scripts and styles under their hash, and beside nothing else', () => {
    const to = join(folders, 'packed')
    publish(DIST, to)
    const paths = Object.keys(hashesOf(to))
    const packed = paths.filter((path) => path.endsWith('.br'))
    expect(packed.map((path) => path.replace(/\.br$/, ''))).toEqual(
      paths.filter((path) => /^assets.*\.(js|css)$/.test(path)),
    )
    for (const path of packed) {
      const name = join(to, path.replace(/\.br$/, ''))
      expect(brotliDecompressSync(readFileSync(`${name}.br`)).equals(readFileSync(name)), name).toBe(true)
      expect(gunzipSync(readFileSync(`${name}.gz`)).equals(readFileSync(name)), name).toBe(true)
    }
  })

  it('refuses a folder without a finished build', () => {
    expect(() => publish(folders, join(folders, 'nowhere'))).toThrow('npm run build')
  })
})

describe('the build', () => {
  it('comes out the same twice', { timeout: 120_000 }, () => {
    const again = join(folders, 'again')
    build({ STILLPIN_OUT: again })
    expect(hashesOf(again)).toEqual(hashesOf(DIST))
  })
})
