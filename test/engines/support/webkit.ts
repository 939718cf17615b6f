/** WebKit on a display of its own, driven over plain HTTP by the W3C WebDriver protocol. It keeps storage for one session only. */
import { type ChildProcess, spawn } from 'node:child_process'
import { createServer } from 'node:net'
import { findWebkit } from '../../../scripts/engines.mjs'
import type { Engine } from './engine.ts'

/** The name under which the protocol hands over an element. */
const ELEMENT = 'element-6066-11e4-a52e-4f735466cecf'

async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const bound = server.address()
  await new Promise((done) => server.close(done))
  if (bound === null || typeof bound === 'string') throw new Error('no port')
  return bound.port
}

/** Starts a display and gives its number, which it writes into a pipe as soon as it can be used. */
async function startDisplay(program: string): Promise<{ readonly process: ChildProcess; readonly name: string }> {
  const process = spawn(program, ['-displayfd', '3', '-screen', '0', '1400x1000x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe'],
  })
  const pipe = process.stdio[3]
  const name = await new Promise<string>((done, failed) => {
    process.once('exit', () => failed(new Error('The display did not start.')))
    pipe?.once('data', (text: Buffer) => done(`:${text.toString().trim()}`))
  })
  return { process, name }
}

type Ask = (method: 'GET' | 'POST' | 'DELETE', path: string, body?: unknown) => Promise<unknown>

const askAt =
  (base: string): Ask =>
  async (method, path, body) => {
    const answer = await fetch(`${base}${path}`, {
      method,
      ...(method === 'POST' ? { body: JSON.stringify(body ?? {}) } : {}),
    })
    const { value } = (await answer.json()) as { readonly value: unknown }
    if (!answer.ok) throw new Error(`webkit ${method} ${path}: ${JSON.stringify(value).slice(0, 400)}`)
    return value
  }

async function untilReady(ask: Ask): Promise<void> {
  for (let turn = 0; turn < 200; turn++) {
    const state = await ask('GET', '/status').catch(() => undefined)
    if (state !== undefined) return
    await new Promise((done) => setTimeout(done, 50))
  }
  throw new Error('The driver of WebKit does not answer.')
}

/** Starts WebKit with nothing kept from before. */
export async function startWebkit(): Promise<Engine> {
  const found = findWebkit()
  if (found === undefined) throw new Error('No WebKit found.')
  const display = await startDisplay(found.display)
  const port = await freePort()
  const driver = spawn(found.driver, [`--port=${port}`], {
    stdio: 'ignore',
    env: { ...process.env, DISPLAY: display.name, WEBKIT_DISABLE_COMPOSITING_MODE: '1', LIBGL_ALWAYS_SOFTWARE: '1' },
  })
  const plain = askAt(`http://127.0.0.1:${port}`)
  await untilReady(plain)
  const options = { binary: found.browser, args: ['--automation'] }
  const session = (await plain('POST', '/session', {
    capabilities: { alwaysMatch: { 'webkitgtk:browserOptions': options } },
  })) as { readonly sessionId: string }
  const ask = askAt(`http://127.0.0.1:${port}/session/${session.sessionId}`)
  await ask('POST', '/timeouts', { script: 30_000, pageLoad: 60_000, implicit: 0 })
  const read = async <T>(expression: string) => {
    const script = `const done = arguments[arguments.length - 1]
      Promise.resolve().then(() => (${expression})).then((value) => done({ value }), (error) => done({ error: String(error) }))`
    const answer = (await ask('POST', '/execute/async', { script, args: [] })) as { value?: T; error?: string }
    if (answer.error !== undefined) throw new Error(answer.error)
    return answer.value as T
  }
  const element = async (selector: string) => {
    const hit = (await ask('POST', '/element', { using: 'css selector', value: selector })) as Record<string, string>
    return `/element/${hit[ELEMENT]}`
  }
  return {
    name: 'webkit',
    go: async (url) => {
      await ask('POST', '/url', { url })
    },
    reload: async () => {
      await ask('POST', '/refresh')
    },
    read,
    tap: async (selector) => {
      await ask('POST', `${await element(selector)}/click`)
    },
    type: async (selector, text) => {
      await read(`document.querySelector(${JSON.stringify(selector)}).select() ?? true`)
      await ask('POST', `${await element(selector)}/value`, { text })
    },
    widen: async (width) => {
      await ask('POST', '/window/rect', { x: 0, y: 0, width, height: 900 })
      return await read<number>('innerWidth')
    },
    picture: async () => Buffer.from(String(await ask('GET', '/screenshot')), 'base64'),
    close: async () => {
      await ask('DELETE', '').catch(() => undefined)
      driver.kill()
      display.process.kill()
    },
  }
}
