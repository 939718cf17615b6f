/** How the tests find things on a screen: by role, name and the contract of addresses, never by look or layout. */
import type { Locator, Page } from 'playwright-core'
import { isEvidence, nodeById, optionsOf, replay } from '../../../src/guide/engine.ts'
import { GUIDE } from '../../../src/guide/guide.ts'
import type { Outcome } from '../../../src/guide/types.ts'

export const heading = (page: Page): Locator => page.getByRole('heading', { level: 1 })

/** A field of a check by its key. */
export const field = (page: Page, key: string): Locator => page.locator(`form [name="${key}"]`)

/** The text of a field: typed, chosen or picked. */
export async function textOf(page: Page, key: string): Promise<string> {
  if ((await field(page, key).count()) === 0) await unfold(page, key)
  const chosen = page.locator(`form input[type="radio"][name="${key}"]:checked`)
  const shown = (await chosen.count()) > 0 ? chosen : field(page, key).first()
  return shown.evaluate((one) => {
    if (one instanceof HTMLInputElement && one.type === 'checkbox') return String(one.checked)
    return one instanceof HTMLInputElement || one instanceof HTMLButtonElement ? one.value : ''
  })
}

/** Opens the folds a field may stand in. */
export async function unfold(page: Page, key: string): Promise<void> {
  await settled(page)
  // a group of fields is drawn when it is opened: those that do not hold it are shut again
  for (const group of await page.locator('form details.group').all()) {
    if ((await page.locator(`form [name="${key}"]`).count()) > 0) break
    if ((await group.getAttribute('open')) !== null) continue
    await group.locator('> summary').click()
    await group.locator('.field').first().waitFor()
    if ((await group.locator(`[name="${key}"]`).count()) === 0) await group.locator('> summary').click()
  }
  const fold = page.locator(`form details:not([open]):has([name="${key}"])`)
  if ((await fold.count()) > 0) await fold.locator('summary').first().click()
}

/** Opens every group of fields. */
export async function unfoldGroups(page: Page): Promise<void> {
  // one that is opened is no longer among those that are shut
  const shut = page.locator('form details.group:not([open]) > summary')
  while ((await shut.count()) > 0) await shut.first().click()
}

/** A result of a check page by its key. */
export const output = (page: Page, key: string): Locator => page.locator(`output#${key}`)

/** Waits until the start page says what was going on, which comes a moment after its heading. */
export const startStands = (page: Page): Promise<void> => page.locator('[data-going-on="true"]').waitFor()

/** Goes to a place as a link would, without loading the page again. */
export async function follow(page: Page, hash: string): Promise<void> {
  await page.evaluate((wanted) => {
    location.hash = wanted
  }, hash)
}

/** Waits for a result and gives its full-precision number. */
export async function si(page: Page, key: string): Promise<number> {
  const text = await output(page, key).getAttribute('data-si')
  return text === null || text === '' ? Number.NaN : Number(text)
}

/** Everything the app says, folds included. */
export const appText = (page: Page): Promise<string> =>
  page.evaluate(() => document.getElementById('app')?.textContent ?? '')

/**
 * Opens a place by its address and waits until it stands: a check moves its fields when its first answer comes, and a finger
 * that was put down before that lifts from something else.
 */
export async function openPlace(page: Page, address: string): Promise<void> {
  await page.goto(address)
  await heading(page).waitFor()
  if (/#\/(check\/.|log\/[^/]+\/(?!connector\/)[^/]+\/.)/u.test(address)) await settled(page)
}

/** Waits until the answer on a check page belongs to its fields. */
export async function settled(page: Page): Promise<void> {
  await page.getByRole('region', { name: 'Answer', exact: true }).first().waitFor()
  // parts out of sight follow the answer: several may be on their way
  await page.locator('[aria-busy="true"], .loading').first().waitFor({ state: 'detached' })
}

/** Label of an answer in the guide. */
export function labelOf(nodeId: string, optionId: string): string {
  const node = nodeById(GUIDE, nodeId)
  const option = node && isEvidence(node) ? optionsOf(node).find(({ id }) => id === optionId) : undefined
  if (option === undefined) throw new Error(`The guide has no answer ${optionId} to ${nodeId}.`)
  return option.label
}

/** Text of a question, or headline of an outcome. */
export function titleOf(nodeId: string): string {
  const node = nodeById(GUIDE, nodeId)
  if (node === undefined) throw new Error(`The guide has no ${nodeId}.`)
  return isEvidence(node) ? node.text : node.headline
}

/** An outcome of the guide. */
export function outcomeOf(outcomeId: string): Outcome {
  const node = nodeById(GUIDE, outcomeId)
  if (node === undefined || isEvidence(node)) throw new Error(`The guide has no outcome ${outcomeId}.`)
  return node
}

const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)

/** A figure keeps its unit by a space that does not break; a name tells it as any other. */
export const anySpace = (text: string): string => escaped(text).replace(/\s/g, String.raw`\s`)

/** The button of an answer, by the words on it; its hint follows in the same name. */
export const answerButton = (page: Page, nodeId: string, optionId: string): Locator =>
  page
    .getByRole('main')
    .getByRole('button', { name: new RegExp(`^${anySpace(labelOf(nodeId, optionId))}`) })
    .first()

export type Step = readonly [nodeId: string, optionId: string]

export const CLEAR_GATE: readonly Step[] = [
  ['gate-danger', 'none'],
  ['gate-lines', 'none'],
]

/** The items in the order the guide asks them, each with its answer; what is not given is not known. */
export function stepsOf(answers: Readonly<Record<string, string>>): readonly Step[] {
  const steps: Step[] = []
  let given: Readonly<Record<string, string>> = {}
  for (;;) {
    const { current } = replay(GUIDE, given)
    if (!isEvidence(current)) return steps
    const answer = answers[current.id] ?? 'dont-know'
    steps.push([current.id, answer])
    given = { ...given, [current.id]: answer }
  }
}

/** Both safety questions answered with none. */
export const CLEAR = Object.fromEntries(CLEAR_GATE)

/** A new box that must stand noise on its cable: a design question that ends in a filter in line. */
export const TO_A_FILTER: readonly Step[] = stepsOf({
  ...CLEAR,
  wrong: 'plan',
  'plan-direction': 'stand',
  bond: 'good',
  'shield-ends': 'good',
  mode: 'common',
  kind: 'synchro',
  frequency: 'vhf',
  box: 'no',
})

/** Noise in weather, with an open bond found: ends in "will not cure". */
export const TO_WEATHER: readonly Step[] = stepsOf({
  ...CLEAR,
  wrong: 'noise',
  volume: 'gone',
  squelch: 'weak',
  when: 'weather',
  extent: 'several',
  'clear-air': 'no',
  'antenna-port': 'yes',
  'antenna-load': 'antenna',
  'static-bonds': 'found',
})

/** Waits until a question or an outcome is on the screen. */
export const shown = (page: Page, nodeId: string): Promise<void> =>
  page.getByRole('heading', { level: 1, name: titleOf(nodeId), exact: true }).waitFor()

/**
 * Presses a button as a keyboard or a reader would. A click of the mouse waits until the browser has drawn two frames alike;
 * where a test is about what a place shows, no more is asked of it than the place needs.
 */
export async function press(button: Locator): Promise<void> {
  await button.waitFor()
  await button.evaluate((one) => {
    if (one instanceof HTMLElement) one.click()
  })
}

/** Answers questions one after the other: by click, by tap where the screen is touched, or by a press. */
export async function answerAll(
  page: Page,
  steps: readonly Step[],
  by: 'tap' | 'click' | 'press' = 'click',
): Promise<void> {
  for (const [nodeId, optionId] of steps) {
    await shown(page, nodeId)
    const button = answerButton(page, nodeId, optionId)
    await (by === 'press' ? press(button) : button[by]())
  }
}
