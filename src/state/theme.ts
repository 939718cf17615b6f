/**
 * Day, dark, night-red, glare.
 *
 * `themeChoice`        auto | day | dark | night | glare, as chosen
 * `theme`              day | dark | night | glare, as shown; also `data-theme` on the html element
 * `setTheme(choice)`   shows it at once and remembers it
 * `startTheme()`       once at start
 *
 * The choice lives in the store. A copy in localStorage lets public/first-paint.js set it before anything is painted;
 * the store itself is fetched after that.
 */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import { keepSmallText, smallText } from '../store/browser-storage.ts'
import type { ThemeChoice } from '../store/meta.ts'

export type { ThemeChoice }
export type Theme = 'day' | 'dark' | 'night' | 'glare'

const COPY = 'theme'
const CHOICES: readonly ThemeChoice[] = ['auto', 'day', 'dark', 'night', 'glare']

const choice = signal<ThemeChoice>('auto')
const systemIsDark = signal(false)
export const themeChoice: ReadonlySignal<ThemeChoice> = choice
export const theme: ReadonlySignal<Theme> = computed(() =>
  choice.value === 'auto' ? (systemIsDark.value ? 'dark' : 'day') : choice.value,
)

/** Only the first moment of the next start depends on it. */
function copy(value: ThemeChoice): void {
  keepSmallText(COPY, value)
}

/** Shows a theme and remembers it. Where the part that stores it cannot be fetched, the copy does. */
export function setTheme(value: ThemeChoice): void {
  choice.value = value
  copy(value)
  void import('./theme-store.ts').then(
    ({ keepTheme }) => keepTheme(value),
    () => undefined,
  )
}

/** The colour of the browser's own bars follows the page, whatever its tokens say. */
function paintBars(): void {
  const colour = getComputedStyle(document.documentElement).backgroundColor
  const isPainted = colour !== '' && colour !== 'rgba(0, 0, 0, 0)'
  if (isPainted) document.querySelector('meta[name="theme-color"]')?.setAttribute('content', colour)
}

/** What the last visit showed, as first-paint.js has just used it. */
function copied(): ThemeChoice {
  const text = smallText(COPY)
  return CHOICES.find((known) => known === text) ?? 'auto'
}

/** Follows the system and the stored choice; the copy serves until the storage has answered. */
export async function startTheme(): Promise<void> {
  const system = matchMedia('(prefers-color-scheme: dark)')
  systemIsDark.value = system.matches
  system.addEventListener('change', () => {
    systemIsDark.value = system.matches
  })
  const before = copied()
  choice.value = before
  effect(() => {
    document.documentElement.dataset['theme'] = theme.value
    paintBars()
  })
  const part = await import('./theme-store.ts').catch(() => undefined)
  const stored = await part?.storedTheme()
  if (stored === undefined) return
  // A quick thumb may have been faster than the storage.
  if (choice.value === before) choice.value = stored
  copy(choice.value)
}
