// @vitest-environment happy-dom
import { afterEach, expect, it } from 'vitest'
import { offlineReady, updatedElsewhere, updateReady } from '../../src/offline/updates.ts'
import { About } from '../../src/ui/screens/about.tsx'
import { show } from './support.ts'

afterEach(() => {
  for (const one of [offlineReady, updateReady, updatedElsewhere]) one.value = false
})

it.each([
  ['not yet complete', []],
  ['complete: works without a network', [offlineReady]],
  ['complete; a newer version is ready', [offlineReady, updateReady]],
  ['complete; a newer version is ready', [updatedElsewhere]],
])('About says of the offline copy: %s', (words, told) => {
  for (const one of told) one.value = true
  expect(show(<About />).textContent).toContain(words)
})
