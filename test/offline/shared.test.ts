/** What another app shares is kept by the worker until it was looked at, and found by the page. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { countShared, dropShared, sharedFiles } from '../../src/offline/shared-files.ts'
import { isSharedHere, keepShared } from '../../src/offline/worker/share-target.ts'

const SCOPE = 'https://h.example/app/'
const stores = new Map<string, Map<string, Response>>()

/** As much of a cache as is asked for. */
function storeOf(name: string) {
  const held = stores.get(name) ?? new Map<string, Response>()
  stores.set(name, held)
  return {
    put: async (key: string, response: Response) => void held.set(key, response),
    match: async (key: string) => held.get(key)?.clone(),
    keys: async () => [...held.keys()].map((key) => new Request(key)),
    delete: async (key: string) => held.delete(key),
  }
}

beforeEach(() => {
  stores.clear()
  vi.stubGlobal('caches', {
    open: async (name: string) => storeOf(name),
    has: async (name: string) => stores.has(name),
  })
  vi.stubGlobal('document', { baseURI: `${SCOPE}?x#/log` })
})
afterEach(() => vi.unstubAllGlobals())

const posted = (form: FormData): Request => new Request(`${SCOPE}bring-in`, { method: 'POST', body: form })

it('keeps every file with its name, whatever signs that has, and leads to the Log', async () => {
  const form = new FormData()
  form.append('file', new File(['{"a":1}'], 'Fühler “A”.json', { type: 'application/json' }))
  form.append('file', new File(['{"b":2}'], 'b.txt'))
  const answer = await keepShared(posted(form), SCOPE)
  expect([answer.status, answer.headers.get('location')]).toEqual([303, `${SCOPE}?shared=2#/log`])
  expect(await countShared()).toBe(2)
  const all = await sharedFiles()
  expect(all.map(({ name }) => name)).toEqual(['Fühler “A”.json', 'b.txt'])
  expect(await Promise.all(all.map(({ file }) => file.text()))).toEqual(['{"a":1}', '{"b":2}'])
  await dropShared(all[0]?.key ?? '')
  expect((await sharedFiles()).map(({ name }) => name)).toEqual(['b.txt'])
  expect(await countShared()).toBe(1)
})

it('keeps a text that was shared in place of a file', async () => {
  const form = new FormData()
  form.append('text', '{"format":"stillpin-complaints"}')
  expect((await keepShared(posted(form), SCOPE)).headers.get('location')).toContain('shared=1')
  expect(await (await sharedFiles())[0]?.file.text()).toBe('{"format":"stillpin-complaints"}')
})

it('says that nothing was kept where nothing came, or there is no room', async () => {
  expect((await keepShared(posted(new FormData()), SCOPE)).headers.get('location')).toContain('shared=0')
  vi.stubGlobal('caches', { open: () => Promise.reject(new DOMException('full', 'QuotaExceededError')) })
  const form = new FormData()
  form.append('file', new File(['{}'], 'a.json'))
  expect((await keepShared(posted(form), SCOPE)).headers.get('location')).toContain('shared=0')
  expect(await sharedFiles()).toEqual([])
  expect(await countShared()).toBe(0)
})

it('says so where there was room for some only, and keeps those', async () => {
  const room = storeOf('room')
  const put = vi
    .fn(room.put)
    .mockImplementationOnce(room.put)
    .mockRejectedValueOnce(new DOMException('full', 'QuotaExceededError'))
  vi.stubGlobal('caches', { open: async () => ({ ...room, put }), has: async () => true })
  const form = new FormData()
  for (const name of ['a.json', 'b.json']) form.append('file', new File(['{}'], name))
  expect((await keepShared(posted(form), SCOPE)).headers.get('location')).toContain('shared=0')
  expect((await sharedFiles()).map(({ name }) => name)).toEqual(['a.json'])
})

it('takes only what is posted to its own place', () => {
  expect(isSharedHere(new URL(`${SCOPE}bring-in`), SCOPE)).toBe(true)
  expect(isSharedHere(new URL('https://h.example/bring-in'), SCOPE)).toBe(false)
  expect(isSharedHere(new URL(SCOPE), SCOPE)).toBe(false)
})
