import { deflateRawSync } from 'node:zlib'
import { afterEach, expect, it, vi } from 'vitest'
import { entriesHere, packedAddress, unpacked } from '../../src/offline/worker/unpacked.ts'

const ENTRIES = [
  { url: 'assets/chart-4f.js.z', revision: null, integrity: 'sha384-a' },
  { url: 'licences.txt.z', revision: '7b', integrity: 'sha384-b' },
  { url: 'index.html', revision: '9c', integrity: 'sha384-c' },
]

afterEach(() => vi.unstubAllGlobals())

it('holds what was packed where it can be unpacked, hashes and all', () => {
  expect(entriesHere(ENTRIES)).toEqual(ENTRIES)
})

it.each([
  ['there is no stream that unpacks', undefined],
  [
    'the stream does not know the format',
    class {
      constructor(format: string) {
        if (format !== 'gzip') throw new TypeError(`Unsupported: ${format}`)
      }
    },
  ],
])('holds the files themselves where %s: offline they can be read all the same', (_where, stream) => {
  vi.stubGlobal('DecompressionStream', stream)
  expect(entriesHere(ENTRIES)).toEqual([
    { url: 'assets/chart-4f.js', revision: null },
    { url: 'licences.txt', revision: '7b' },
    { url: 'index.html', revision: '9c', integrity: 'sha384-c' },
  ])
})

it('gives back, byte for byte and as what it is, a file that was packed; another as it stands', async () => {
  const address = packedAddress(new URL('https://h.example/app/assets/chart-4f.js?x=1'))[0]?.href ?? ''
  expect(address).toBe('https://h.example/app/assets/chart-4f.js.z')
  const text = 'export const widthPx = 7 // µ\n'.repeat(400)
  const whole = unpacked(new Response(new Uint8Array(deflateRawSync(text))), address)
  expect([whole.headers.get('content-type'), await whole.text()]).toEqual(['text/javascript', text])
  const plain = new Response('as it is')
  expect(unpacked(plain, 'https://h.example/app/index.html')).toBe(plain)
})
