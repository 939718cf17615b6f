// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest'
import { licenceOf, licencesText, packagesOf } from '../../scripts/licences.mjs'
import { Licences } from '../../src/ui/screens/licences.tsx'
import { settle, show } from './support.ts'

afterEach(() => {
  vi.unstubAllGlobals()
})

async function unfolded(answer: Response): Promise<string> {
  vi.stubGlobal('fetch', async () => answer.clone())
  const place = show(<Licences />)
  const fold = place.querySelector('details')
  if (fold) fold.open = true
  fold?.dispatchEvent(new Event('toggle'))
  await settle()
  return place.textContent ?? ''
}

describe('the licences', () => {
  it('are read when they are unfolded, and are in full', async () => {
    const said = licencesText(['preact', 'mathjs', 'idb'].map(licenceOf))
    const shown = await unfolded(new Response(said, { headers: { 'content-type': 'text/plain' } }))
    for (const name of ['preact', 'mathjs', 'idb']) expect(shown).toContain(licenceOf(name).text.slice(0, 200))
  })

  it('say so where a start page came in their place', async () => {
    const page = new Response('<!doctype html>', { headers: { 'content-type': 'text/html' } })
    expect(await unfolded(page)).toContain('could not be read')
  })

  it('are of the packages whose files are in the build, the inner one of two', () => {
    expect(
      packagesOf([
        '/x/node_modules/preact/dist/preact.mjs',
        'C:\\x\\node_modules\\@preact\\signals\\dist\\signals.mjs',
        '/x/node_modules/workbox-window/node_modules/workbox-core/a.js',
        '/x/src/main.tsx',
        '\0vite/preload-helper.js',
      ]),
    ).toEqual(['@preact/signals', 'preact', 'workbox-core'])
  })

  it('share a text that is the same letter for letter, and may not be missing', () => {
    const one = { name: 'one', version: '1.0.0', licence: 'MIT', text: 'Do what you like.' }
    const text = licencesText([one, { ...one, name: 'other' }])
    expect(text.match(/Do what you like\./g)).toHaveLength(1)
    expect(text).toContain('one 1.0.0 (MIT)\nother 1.0.0 (MIT)')
    expect(() => licenceOf('@types')).toThrow()
  })
})
