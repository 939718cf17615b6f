import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, describe, expect, it, vi } from 'vitest'
import {
  askToKeepStorage,
  databases,
  keepSmallText,
  openChannel,
  smallNames,
  smallText,
} from '../../src/store/browser-storage.ts'
import { bytesKept, isStorageKept } from '../../src/store/browser-storage-facts.ts'
import { markOpen, openNames } from '../../src/store/open-windows.ts'

const SRC = join(import.meta.dirname, '..', '..', 'src')
const NAMED =
  /\b(localStorage|sessionStorage|indexedDB|BroadcastChannel|caches|cookieStore|document\.cookie)\b|navigator\.(storage|locks)/

const NAMES = ['localStorage', 'indexedDB', 'caches', 'navigator'] as const

afterEach(() => vi.unstubAllGlobals())

describe('the guard in front of the storage of the browser', () => {
  it('is the only file of the app that names its interfaces; the worker and its removal keep to the caches', () => {
    const code = (text: string) => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$|'(?:[^'\\\n]|\\.)*'/gm, '')
    const naming = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.tsx?$/.test(path))
      .filter((path) => NAMED.test(code(readFileSync(join(SRC, path), 'utf8'))))
    expect(naming.filter((path) => !path.startsWith('offline/'))).toEqual([
      'store/browser-storage-facts.ts',
      'store/browser-storage.ts',
      'store/open-windows.ts',
    ])
  })

  it('throws nothing where the browser throws at everything', async () => {
    const before = NAMES.map((name) => [name, Object.getOwnPropertyDescriptor(globalThis, name)] as const)
    for (const name of NAMES)
      Object.defineProperty(globalThis, name, {
        configurable: true,
        get: () => {
          throw new DOMException('The operation is insecure.', 'SecurityError')
        },
      })
    vi.stubGlobal(
      'BroadcastChannel',
      class {
        constructor() {
          throw new DOMException('The operation is insecure.', 'SecurityError')
        }
      },
    )
    keepSmallText('theme', 'dark')
    openChannel('log', () => undefined).send({ is: 'triage' })
    expect([smallText('theme'), smallNames(), databases()]).toEqual([undefined, [], undefined])
    expect([await askToKeepStorage(), await bytesKept(), await isStorageKept()]).toEqual([
      undefined,
      undefined,
      undefined,
    ])
    expect([await markOpen('window'), await openNames()]).toEqual([false, []])
    for (const [name, descriptor] of before)
      if (descriptor === undefined) Reflect.deleteProperty(globalThis, name)
      else Object.defineProperty(globalThis, name, descriptor)
  })
})
