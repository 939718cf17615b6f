/**
 * The guide's content, loaded when first needed.
 *
 * `guide`         the content, undefined until loaded
 * `guideNotice`   sentence to show when the stored guide could not be used, else undefined
 * `loadGuide()`   loads it once; later calls give the same content
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import type { Guide } from '../guide/types.ts'
import { nextTurn } from './next-turn.ts'

const content = signal<Guide | undefined>(undefined)
const notice = signal<string | undefined>(undefined)
export const guide: ReadonlySignal<Guide | undefined> = content
export const guideNotice: ReadonlySignal<string | undefined> = notice

let loading: Promise<Guide> | undefined

async function load(): Promise<Guide> {
  const [{ default: bundled }, { guideShape }, { loadStoredGuide }] = await Promise.all([
    import('./built-guide.ts?built'),
    import('../guide/shape.ts'),
    import('../store/guide-store.ts'),
  ])
  const loaded = await loadStoredGuide(bundled, { shape: guideShape, pause: nextTurn })
  await nextTurn()
  content.value = loaded.guide
  notice.value = loaded.notice
  return loaded.guide
}

/** Loads the guide; may be tried again after a failure to load the app's own part. */
export function loadGuide(): Promise<Guide> {
  loading ??= load().catch((error: unknown) => {
    loading = undefined
    throw error
  })
  return loading
}
