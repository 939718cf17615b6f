// @vitest-environment happy-dom
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { readTheme, writeTheme } from '../../src/store/meta.ts'
import { freshStore } from '../store/fresh-store.ts'

beforeEach(async () => {
  freshStore()
  localStorage.clear()
  delete document.documentElement.dataset['theme']
})

async function start() {
  vi.resetModules()
  const model = await import('../../src/state/theme.ts')
  await model.startTheme()
  return model
}

describe('the theme', () => {
  it('follows the system until one is chosen', async () => {
    const { themeChoice, theme } = await start()
    expect([themeChoice.value, theme.value, document.documentElement.dataset['theme']]).toEqual(['auto', 'day', 'day'])
  })

  it('shows a choice at once and remembers it, with a copy for the first paint', async () => {
    const { setTheme } = await start()
    setTheme('night')
    expect(document.documentElement.dataset['theme']).toBe('night')
    expect(localStorage.getItem('stillpin-theme')).toBe('night')
    await vi.waitFor(async () => expect(await readTheme()).toBe('night'))
    expect((await start()).themeChoice.value).toBe('night')
  })

  it('trusts the store, not the copy', async () => {
    localStorage.setItem('stillpin-theme', 'day')
    await writeTheme('dark')
    const { theme } = await start()
    expect([theme.value, localStorage.getItem('stillpin-theme')]).toEqual(['dark', 'dark'])
  })
})
