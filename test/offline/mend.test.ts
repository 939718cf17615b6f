/** A file that the browser threw out of the offline copy, had from the host again. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { mended } from '../../src/offline/worker/mend.ts'

const SCOPE = 'https://h.example/app/'
const MISSING = { key: `${SCOPE}a.js?rev=1`, address: `${SCOPE}a.js`, integrity: 'sha256-x' }
const held = new Map<string, string>()
const asked = vi.fn(async (_address: string, _how: RequestInit) => new Response('say(1)'))
let put = async (key: string, response: Response) => void held.set(key, await response.text())

beforeEach(() => {
  held.clear()
  asked.mockClear()
  put = async (key, response) => void held.set(key, await response.text())
  vi.stubGlobal('fetch', asked)
  vi.stubGlobal('caches', {
    keys: async () => ['other', `x-precache-v2-${SCOPE}`],
    open: async () => ({ put: (key: string, response: Response) => put(key, response) }),
  })
})
afterEach(() => vi.unstubAllGlobals())

it('is given and put back into the copy, by its hash only', async () => {
  expect(await (await mended(MISSING, SCOPE))?.text()).toBe('say(1)')
  expect([...held]).toEqual([[MISSING.key, 'say(1)']])
  expect(asked).toHaveBeenCalledWith(MISSING.address, { integrity: 'sha256-x', cache: 'no-cache' })
  expect(await mended({ ...MISSING, integrity: undefined }, SCOPE)).toBeUndefined()
  expect(asked).toHaveBeenCalledTimes(1)
})

it('is given all the same where there is no room to put it back', async () => {
  put = () => Promise.reject(new DOMException('full', 'QuotaExceededError'))
  expect(await (await mended(MISSING, SCOPE))?.text()).toBe('say(1)')
})

it('is not given where the host has none, or other bytes', async () => {
  asked.mockResolvedValueOnce(new Response('gone', { status: 404 }))
  expect(await mended(MISSING, SCOPE)).toBeUndefined()
  asked.mockRejectedValueOnce(new TypeError('integrity'))
  expect(await mended(MISSING, SCOPE)).toBeUndefined()
})
