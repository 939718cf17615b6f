/** A page with nothing but a text field: what a browser takes for a key by itself. */
import type { Page } from 'playwright-core'
import type { Visit } from './site.ts'

/** Puts a text into the bare field and waits for its letters. */
export async function fillBare(bare: Page, text: string): Promise<void> {
  await bare.getByRole('textbox', { name: 'Note' }).evaluate((field: HTMLTextAreaElement, all) => {
    field.value = all
  }, text)
  await bare.evaluate(() => document.fonts.ready)
}

/** The bare field with this text, in a page of its own; it breaks its lines where the note on the screen does. */
export async function openBare({ context, page, at }: Visit, text: string): Promise<Page> {
  const look = await page.getByRole('textbox', { name: 'Note' }).evaluate((field) => {
    const style = getComputedStyle(field)
    const names = ['box-sizing', 'width', 'padding', 'border', 'font', 'line-height']
    return names.map((name) => `${name}:${style.getPropertyValue(name)}`).join(';')
  })
  const letters = await page.evaluate(() => {
    const fetched = performance.getEntriesByType('resource').map(({ name }) => name)
    return fetched.find((name) => /b612-latin-400.*\.woff2$/.test(name))
  })
  if (letters === undefined) throw new Error('the app has fetched no letters')
  const address = at('bare')
  const body = `<!doctype html><style>@font-face{font-family:B612;src:url(${letters})}textarea{${look.replaceAll('"', "'")}}</style>
    <label>Note <textarea></textarea></label>`
  await context.route(address, (route) => route.fulfill({ contentType: 'text/html', body }))
  const bare = await context.newPage()
  await bare.goto(address)
  await fillBare(bare, text)
  return bare
}
