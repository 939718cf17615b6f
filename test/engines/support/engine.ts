/** What the tests ask of a browser, whichever engine it is. */

export type EngineName = 'chromium' | 'firefox' | 'webkit'

export type Engine = {
  readonly name: EngineName
  readonly go: (address: string) => Promise<void>
  readonly reload: () => Promise<void>
  /** the value of an expression in the page; a promise is waited for */
  readonly read: <T>(expression: string) => Promise<T>
  /** taps the first element that matches */
  readonly tap: (selector: string) => Promise<void>
  /** types over what stands in a field, key by key */
  readonly type: (selector: string, text: string) => Promise<void>
  /** width of the page as near to this as the engine goes; the width that it has then */
  readonly widen: (widthPx: number) => Promise<number>
  readonly picture: () => Promise<Buffer>
  /** the same browser, with what it kept, after it was closed or killed; absent where nothing is kept */
  readonly restart?: (how: 'close' | 'kill') => Promise<void>
  readonly close: () => Promise<void>
}

/** How long anything may take on a small machine that does other work. */
const PATIENCE_MS = 30_000

/** What stands on the page instead of what was waited for. */
const wordsOf = (engine: Engine): Promise<string> =>
  engine
    .read<string>(`location.hash + ' says: ' + document.body.innerText.slice(0, 400)`)
    .catch((error: unknown) => `the page does not answer: ${error}`)

/** Waits until an expression in the page holds. Fails with what was waited for. */
export async function until(engine: Engine, expression: string, what = expression): Promise<void> {
  const endMs = Date.now() + PATIENCE_MS
  let holds = false
  while (!holds) {
    // a page on its way elsewhere has no answer yet
    holds = await engine.read<boolean>(`Boolean(${expression})`).catch(() => false)
    if (holds) return
    if (Date.now() > endMs) throw new Error(`${engine.name}: waited in vain for ${what}; ${await wordsOf(engine)}`)
    await new Promise((done) => setTimeout(done, 50))
  }
}

const quoted = JSON.stringify

/** Waits until something stands on the page. */
export const there = (engine: Engine, selector: string): Promise<void> =>
  until(engine, `document.querySelector(${quoted(selector)})`, selector)

/** Waits until the page says this. */
export const says = (engine: Engine, words: string): Promise<void> =>
  until(engine, `document.body.innerText.includes(${quoted(words)})`, `“${words}”`)

/** Taps the button or link that bears these words. */
export async function tapWords(engine: Engine, words: string): Promise<void> {
  const found = `[...document.querySelectorAll('button, a, summary')].find((one) => one.textContent.includes(${quoted(words)}))`
  await until(engine, found, `a button “${words}”`)
  await engine.read(`(${found}).setAttribute('data-wanted', '') ?? true`)
  await engine.tap('[data-wanted]')
  await engine.read(`document.querySelector('[data-wanted]')?.removeAttribute('data-wanted') ?? true`)
}
