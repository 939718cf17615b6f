// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { isCopyMissing, isNetworkGone, offlineReady, updateReady } from '../../src/offline/updates.ts'
import { App } from '../../src/ui/app.tsx'
import { OfflineReady } from '../../src/ui/shell/offline-ready.tsx'
import { allBy, by, eventually, settle, show, tap, until } from './support.ts'

async function goTo(hash: string): Promise<void> {
  location.hash = hash
  window.dispatchEvent(new Event('hashchange'))
  await settle()
}

describe('the shell', () => {
  beforeEach(async () => {
    localStorage.clear()
    offlineReady.value = false
    updateReady.value = false
    location.hash = '#/log'
    show(<App />)
    await until('h1')
  })

  it('has one main, one heading and the four places, with the present one marked', async () => {
    expect(document.querySelectorAll('main')).toHaveLength(1)
    expect(document.querySelectorAll('h1')).toHaveLength(1)
    const places = [...document.querySelectorAll('nav a')].map((link) => link.textContent)
    expect(places).toEqual(['Ask', 'Check', 'Log', 'Book'])
    expect(document.querySelector('nav [aria-current=page]')?.textContent).toBe('Log')
  })

  it('moves focus to the heading of the next screen and names it in the title', async () => {
    // with its part at hand the screen follows at once, however busy the machine
    await import('../../src/ui/screens/book/book.tsx')
    await goTo('#/notes')
    const heading = await eventually('the book', () => {
      const found = document.querySelector<HTMLElement>('h1')
      return found?.textContent === 'Book' ? found : undefined
    })
    expect(document.activeElement).toBe(heading)
    expect(document.title).toBe('Book · Stillpin')
  })

  it('names an address it does not know and gives ways on', async () => {
    await goTo('#/elsewhere/7')
    expect(by('heading', 'No such page')).toBeDefined()
    expect(document.querySelector('main code')?.textContent).toBe('/elsewhere/7')
    expect(allBy('link', /^(Ask|Check|Log|Book):/u)).toHaveLength(4)
  })

  it('opens About with version, theme and the screening statement', async () => {
    await tap(by('button', 'About, theme and offline state'))
    const sheet = await until('dialog[open]')
    expect(sheet.textContent).toContain('test edition')
    expect([...sheet.querySelectorAll('input[name=theme]')].map((radio) => radio.getAttribute('value'))).toEqual([
      'auto',
      'day',
      'dark',
      'night',
      'glare',
    ])
    expect(sheet.textContent).toContain('not approved data')
  })

  it('says once that it works offline: until the first touch once there was time to read it', async () => {
    offlineReady.value = true
    await settle()
    expect(document.querySelector('.notices')?.textContent).toContain('without a network')
    offlineReady.value = false
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    const place = show(<OfflineReady />)
    const send = (name: string) => act(() => void dispatchEvent(new Event(name)))
    const touch = () => {
      send('pointerdown')
      // what a finger is put on may not move before it is lifted
      expect(place.textContent).toContain('without a network')
      send('click')
    }
    // neither a touch at once nor a long time without one tells that it was read
    touch()
    expect(place.textContent).toContain('without a network')
    act(() => void vi.advanceTimersByTime(3_600_000))
    expect(place.textContent).toContain('without a network')
    touch()
    vi.useRealTimers()
    expect(place.textContent).toBe('')
    expect(show(<OfflineReady />).textContent).toBe('')
  })

  it('says that there is no way to reload only where there is neither network nor copy, and can be closed', async () => {
    const said = () => document.querySelector('.notices')?.textContent ?? ''
    isCopyMissing.value = true
    await settle()
    expect(said()).toBe('')
    isNetworkGone.value = true
    await settle()
    expect(said()).toContain('no offline copy on this device')
    await tap(by('button', 'Put this notice away'))
    expect(said()).toBe('')
    isNetworkGone.value = false
    await settle()
    isNetworkGone.value = true
    await settle()
    expect(said()).toContain('no offline copy on this device')
    isCopyMissing.value = false
    await settle()
    expect(said()).toBe('')
    isNetworkGone.value = false
  })

  it('offers an update and does nothing by itself', async () => {
    updateReady.value = true
    await settle()
    expect(by('button', 'Update now')).toBeDefined()
    expect(document.querySelector('.notices')?.textContent).toContain('Your text is kept')
  })
})
