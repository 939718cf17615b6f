/**
 * Day, dark, night-red.
 *
 * `themeChoice`        auto | day | dark | night, as chosen
 * `theme`              day | dark | night, as shown; also `data-theme` on the html element
 * `setTheme(choice)`   shows it at once and remembers it
 * `startTheme()`       once at start
 *
 * The choice lives in the store. A copy in localStorage lets public/first-paint.js set it before anything is painted.
 */
import { computed, effect, type ReadonlySignal, signal } from '@preact/signals'
import { keepSmallText, smallText } from '../store/browser-storage.ts'
import { readTheme, type ThemeChoice, writeTheme } from '../store/meta.ts'
import { StoreError } from '../store/trouble.ts'
import { enqueue } from './save-queue.ts'

export type { ThemeChoice }
export type Theme = 'day' | 'dark' | 'night'

const COPY = 'theme'
const CHOICES: readonly ThemeChoice[] = ['auto', 'day', 'dark', 'night']

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

/** Shows a theme and remembers it. */
export function setTheme(value: ThemeChoice): void {
  choice.value = value
  copy(value)
  void enqueue(() => writeTheme(value), 'theme')
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
  try {
    const stored = await readTheme()
    // A quick thumb may have been faster than the storage.
    if (choice.value === before) choice.value = stored
    copy(choice.value)
  } catch (error) {
    if (!(error instanceof StoreError)) throw error
  }
}
