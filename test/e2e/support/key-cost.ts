/** What a key in a field costs until its answer is painted: time of the processor, the workers' counted too. */
import type { Page } from 'playwright-core'
import { laySamples, slowness } from './slowness.ts'
import { type Traced, type Turn, tracedDuring } from './turns.ts'

export type KeyCost = {
  readonly field: string
  /** of the page, until the frame that shows the field */
  readonly dimmedMs: number
  /** page and workers, until the frame that shows the answer to this key */
  readonly answeredMs: number
  /** of that, what workers did */
  readonly workersMs: number
  /** the longest turn of the page from this key until the next, saving and what follows a pause included */
  readonly longestMs: number
}

export type Typing = {
  readonly keys: readonly KeyCost[]
  /** how much slower than a desk left alone this machine was */
  readonly slower: number
}

declare global {
  interface Window {
    /** resolves when the last key is answered on the screen */
    answered?: Promise<void>
  }
}

/**
 * Lets a page note each key and when its answer is painted: a message that is sent in a frame's animation callbacks
 * arrives when that frame has been drawn.
 */
export async function noteKeys(page: Page): Promise<void> {
  await page.addInitScript(() => {
    let count = 0
    const onKey = () => {
      const mine = ++count
      performance.mark(`key ${mine}`)
      window.answered = new Promise((done) => {
        const { port1, port2 } = new MessageChannel()
        port1.onmessage = ({ data }) => {
          performance.mark(`${data} ${mine}`)
          if (data === 'answered') done()
        }
        let frames = 0
        const look = () => {
          frames += 1
          if (frames === 1) port2.postMessage('dimmed')
          if (document.querySelector('.answer[aria-busy="true"]') === null) port2.postMessage('answered')
          else requestAnimationFrame(look)
        }
        addEventListener('input', () => requestAnimationFrame(look), { capture: true, once: true })
      })
    }
    addEventListener('keydown', onKey, true)
  })
}

/** A key that is typed into a field and taken off again; `at`: before or behind what stands there. */
export type Keystroke = { readonly field: string; readonly key: string; readonly at: 'front' | 'end' }

/**
 * Types each key and takes it off again, as fast as the answers come, in several rounds, in milliseconds of that desk. Of
 * every key the least disturbed round counts: other programs make a turn dearer, never cheaper.
 */
export async function typeInto(page: Page, keystrokes: readonly Keystroke[], rounds: number): Promise<Typing> {
  const all: Typing[] = []
  for (let round = 0; round < rounds; round++) all.push(await oneRound(page, keystrokes))
  const [first] = all
  if (first === undefined) throw new Error('nothing was typed')
  const least = (of: (round: Typing) => number): number => Math.min(...all.map(of))
  return {
    keys: first.keys.map(({ field }, i) => {
      const cheapest = all.flatMap(({ keys }) => keys[i] ?? []).toSorted((a, b) => a.answeredMs - b.answeredMs)[0]
      return {
        field,
        answeredMs: Number.NaN,
        workersMs: Number.NaN,
        ...cheapest,
        dimmedMs: least(({ keys }) => keys[i]?.dimmedMs ?? Number.NaN),
        longestMs: least(({ keys }) => keys[i]?.longestMs ?? Number.NaN),
      }
    }),
    slower: least(({ slower }) => slower),
  }
}

async function oneRound(page: Page, keystrokes: readonly Keystroke[]): Promise<Typing> {
  const fields: string[] = []
  const traced = await tracedDuring(page, async () => {
    await laySamples(page)
    for (const { field: name, key: typed, at } of keystrokes) {
      const box = page.locator(`form [name="${name}"]`)
      await box.evaluate((one: HTMLInputElement, at) => {
        const caret = at === 'front' ? 0 : one.value.length
        one.focus()
        one.setSelectionRange(caret, caret)
      }, at)
      for (const key of [typed, 'Backspace']) {
        await page.keyboard.press(key)
        await page.evaluate(() => window.answered)
        fields.push(name)
      }
    }
  })
  const slower = slowness(traced)
  const first = traced.marks.find(({ name }) => name.startsWith('key '))
  const offset = Number(first?.name.slice('key '.length) ?? Number.NaN)
  return {
    keys: fields.map((field, i) => {
      const turns = turnsUntil(traced, `key ${offset + i}`, `answered ${offset + i}`)
      return {
        field,
        dimmedMs:
          sum(turnsUntil(traced, `key ${offset + i}`, `dimmed ${offset + i}`).filter(({ by }) => by === 'page')) /
          slower,
        answeredMs: sum(turns) / slower,
        workersMs: sum(turns.filter(({ by }) => by === 'worker')) / slower,
        longestMs: longestAfter(traced, offset + i) / slower,
      }
    }),
    slower,
  }
}

/** The longest turn of the page from a key until the next one, saving and what follows a pause included. */
function longestAfter({ turns, marks }: Traced, key: number): number {
  const at = (name: string): number | undefined => marks.find((mark) => mark.name === name)?.atMs
  const fromMs = at(`key ${key}`) ?? Number.NaN
  const untilMs = at(`key ${key + 1}`) ?? Number.POSITIVE_INFINITY
  const own = turns.filter(({ by, toMs, ...turn }) => by === 'page' && toMs > fromMs && turn.fromMs < untilMs)
  return Math.max(...own.map(({ workedMs }) => workedMs))
}

const sum = (turns: readonly Turn[]): number => turns.reduce((total, { workedMs }) => total + workedMs, 0)

/** From the turn that took the key to the last one that ended before the mark. */
function turnsUntil({ turns, marks }: Traced, from: string, to: string): readonly Turn[] {
  const at = (wanted: string): number => marks.find(({ name }) => name === wanted)?.atMs ?? Number.NaN
  const [fromMs, toMs] = [at(from), at(to)]
  if (!(toMs >= fromMs)) throw new Error(`${to} was never noted`)
  return turns.filter((turn) => turn.toMs > fromMs && turn.toMs <= toMs)
}
