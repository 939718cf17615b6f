/** What a key in a field costs until its answer is painted: time of the processor, the workers' counted too. */
import type { Page } from 'playwright-core'
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

/** What laying out the sample costs on the desk the bounds are set for, while nothing else runs on it. */
const DESK_SAMPLE_MS = 5.8
const SAMPLES = 6

/** A text that is put into the page, laid out and taken off: work of the kind a key causes, the same on every page. */
async function laySample(page: Page): Promise<void> {
  await page.evaluate(() => {
    performance.mark('sample')
    const box = document.body.appendChild(document.createElement('div'))
    box.style.cssText = 'position:fixed;inset-block-start:-9999px;inline-size:300px'
    for (let line = 0; line < 120; line++) {
      const paragraph = box.appendChild(document.createElement('p'))
      for (let word = 0; word < 5; word++) {
        const part = paragraph.appendChild(document.createElement('span'))
        part.textContent = `${line * word} words of some length `
      }
    }
    if (!(box.offsetHeight > 0)) throw new Error('nothing was laid out')
    box.remove()
  })
}

/** How much slower than that desk this machine is at the moment: programs that share its caches make all work dearer. */
function slowness({ turns, marks }: Traced): number {
  const samples = marks
    .filter(({ name }) => name === 'sample')
    .flatMap(({ atMs }) => turns.filter(({ by, fromMs, toMs }) => by === 'page' && fromMs <= atMs && atMs <= toMs))
  return Math.min(...samples.map(({ workedMs }) => workedMs)) / DESK_SAMPLE_MS
}

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
    for (let sample = 0; sample < SAMPLES; sample++) await laySample(page)
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
