/** What a key in a field costs until its answer is painted: time of the processor, the workers' counted too. */
import type { Page } from 'playwright-core'
import { middle, slownessAt, takeSamples } from './slowness.ts'
import { type Traced, type Turn, tracedDuring } from './turns.ts'

export type KeyCost = {
  readonly field: string
  /** of the page, until the frame that shows the field */
  readonly dimmedMs: number
  /** page and workers, until the frame that shows the answer to this key */
  readonly answeredMs: number
  /** of that, what workers did */
  readonly workersMs: number
  /** the longest turn of the page from this key until the next one or a sample, saving included */
  readonly longestMs: number
}

/** keys between two samples: some 0.4 s */
const SAMPLE_EVERY = 4

export type Typing = {
  readonly keys: readonly KeyCost[]
  /** how much slower than a desk left alone this machine was */
  readonly slower: number
}

declare global {
  interface Window {
    /** tells this test which key is answered on the screen: asked by a script in the page, that would count as its work */
    tellAnswered?: (key: string) => void
  }
}

/** What waits for the page's next answered key. */
const waiting = new WeakMap<Page, () => void>()

/**
 * Lets a page note each key and when its answer is painted: a message that is sent in a frame's animation callbacks
 * arrives when that frame has been drawn.
 */
export async function noteKeys(page: Page): Promise<void> {
  const cdp = await page.context().newCDPSession(page)
  await cdp.send('Runtime.enable')
  await cdp.send('Runtime.addBinding', { name: 'tellAnswered' })
  cdp.on('Runtime.bindingCalled', () => waiting.get(page)?.())
  await page.addInitScript(() => {
    let count = 0
    const onKey = () => {
      const mine = ++count
      performance.mark(`key ${mine}`)
      const { port1, port2 } = new MessageChannel()
      port1.onmessage = ({ data }) => {
        performance.mark(`${data} ${mine}`)
        if (data === 'answered') window.tellAnswered?.(`${mine}`)
      }
      const isBusy = () => document.querySelector('.answer[aria-busy="true"]') !== null
      // asked for at every frame, the answer would make frames that nobody else draws
      const answers = new MutationObserver(() => {
        if (isBusy()) return
        answers.disconnect()
        requestAnimationFrame(() => port2.postMessage('answered'))
      })
      const look = () => {
        port2.postMessage('dimmed')
        if (isBusy()) answers.observe(document.body, { subtree: true, childList: true, attributeFilter: ['aria-busy'] })
        else port2.postMessage('answered')
      }
      addEventListener('input', () => requestAnimationFrame(look), { capture: true, once: true })
    }
    addEventListener('keydown', onKey, true)
  })
}

/** A key that is typed into a field and taken off again; `at`: before or behind what stands there. */
export type Keystroke = { readonly field: string; readonly key: string; readonly at: 'front' | 'end' }

/**
 * Types each key and takes it off again, as fast as the answers come, in several rounds, in milliseconds of that desk. Of
 * every key the least disturbed round counts: other programs make a turn dearer, never cheaper. What the others make dear
 * for longer than some rounds is typed on, `more` rounds at most, until it is within `most` or shown to be dear itself; what
 * is within it already would not change by that.
 */
export async function typeInto(
  page: Page,
  keystrokes: readonly Keystroke[],
  {
    rounds,
    more,
    most,
  }: { readonly rounds: number; readonly more: number; readonly most: Pick<KeyCost, 'answeredMs' | 'longestMs'> },
): Promise<Typing> {
  const all: Typing[] = []
  for (let round = 0; round < rounds; round++) all.push(await oneRound(page, keystrokes))
  // typed and taken off again: two keys of each
  const least = keystrokes.map((_, i) => [leastOf(all, 2 * i), leastOf(all, 2 * i + 1)])
  const isDear = (cost: KeyCost): boolean => cost.answeredMs > most.answeredMs || cost.longestMs > most.longestMs
  for (let round = 0; round < more; round++) {
    const dear = keystrokes.flatMap((keystroke, i) => (least[i]?.some(isDear) ? [{ keystroke, i }] : []))
    if (dear.length === 0) break
    const again = await oneRound(
      page,
      dear.map(({ keystroke }) => keystroke),
    )
    for (const [at, { i }] of dear.entries())
      least[i] = [0, 1].flatMap((which) => {
        const costs = [least[i]?.[which], again.keys[2 * at + which]].flatMap((cost) => cost ?? [])
        return costs.length === 0 ? [] : [leastIn(costs)]
      })
  }
  return { keys: least.flat(), slower: middle(all.map(({ slower }) => slower)) }
}

const leastOf = (rounds: readonly Typing[], key: number): KeyCost =>
  leastIn(rounds.flatMap(({ keys }) => keys[key] ?? []))

function leastIn(costs: readonly KeyCost[]): KeyCost {
  const [cheapest] = costs.toSorted((a, b) => a.answeredMs - b.answeredMs)
  if (cheapest === undefined) throw new Error('nothing was typed')
  const least = (part: 'dimmedMs' | 'longestMs'): number => Math.min(...costs.map((cost) => cost[part]))
  return { ...cheapest, dimmedMs: least('dimmedMs'), longestMs: least('longestMs') }
}

async function oneRound(page: Page, keystrokes: readonly Keystroke[]): Promise<Typing> {
  const fields: string[] = []
  const traced = await tracedDuring(page, async () => {
    await takeSamples(page, 2)
    for (const [i, { field: name, key: typed, at }] of keystrokes.entries()) {
      if (i % SAMPLE_EVERY === 0) await takeSamples(page, 1)
      const box = page.locator(`form [name="${name}"]`)
      await box.evaluate((one: HTMLInputElement, at) => {
        const caret = at === 'front' ? 0 : one.value.length
        one.focus()
        one.setSelectionRange(caret, caret)
      }, at)
      for (const key of [typed, 'Backspace']) {
        const answered = new Promise<void>((done) => waiting.set(page, done))
        await page.keyboard.press(key)
        await answered
        fields.push(name)
      }
    }
    await takeSamples(page, 2)
  })
  const first = traced.marks.find(({ name }) => name.startsWith('key '))
  const offset = Number(first?.name.slice('key '.length) ?? Number.NaN)
  const keys = fields.map((field, i) => costOf(traced, field, offset + i))
  return { keys: keys.map(({ cost }) => cost), slower: middle(keys.map(({ slower }) => slower)) }
}

/** In milliseconds of that desk, by how slow the machine was while the key was typed. */
function costOf(traced: Traced, field: string, key: number): { readonly cost: KeyCost; readonly slower: number } {
  const slower = slownessAt(traced, timeOf(traced, `key ${key}`))
  const untilAnswered = turnsUntil(traced, `key ${key}`, `answered ${key}`)
  const untilDimmed = turnsUntil(traced, `key ${key}`, `dimmed ${key}`)
  return {
    cost: {
      field,
      dimmedMs: sum(untilDimmed.filter(({ by }) => by === 'page')) / slower,
      answeredMs: sum(untilAnswered) / slower,
      workersMs: sum(untilAnswered.filter(({ by }) => by === 'worker')) / slower,
      longestMs: longestAfter(traced, key) / slower,
    },
    slower,
  }
}

const timeOf = ({ marks }: Traced, mark: string): number => marks.find(({ name }) => name === mark)?.atMs ?? Number.NaN

/** The longest turn of the page from a key until the next one or a sample, saving included. */
function longestAfter(traced: Traced, key: number): number {
  const { turns, marks } = traced
  const fromMs = timeOf(traced, `key ${key}`)
  const next = marks.find(({ name, atMs }) => atMs > fromMs && (name.startsWith('key ') || name === 'sampling'))
  const untilMs = next?.atMs ?? Number.POSITIVE_INFINITY
  const own = turns.filter(({ by, toMs, ...turn }) => by === 'page' && toMs > fromMs && turn.fromMs < untilMs)
  return Math.max(...own.map(({ workedMs }) => workedMs))
}

const sum = (turns: readonly Turn[]): number => turns.reduce((total, { workedMs }) => total + workedMs, 0)

/** From the turn that took the key to the last one that ended before the mark. */
function turnsUntil(traced: Traced, from: string, to: string): readonly Turn[] {
  const [fromMs, toMs] = [timeOf(traced, from), timeOf(traced, to)]
  if (!(toMs >= fromMs)) throw new Error(`${to} was never noted`)
  return traced.turns.filter((turn) => turn.toMs > fromMs && turn.toMs <= toMs)
}
