/**
 * The same stories in three engines: first visit, computing with the digits Chromium prints, a typed expression, the Log,
 * a reload, a server that is gone, an update, looks. What an engine cannot do is named by the test.
 */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { DIST, startServer } from '../../scripts/static-server.mjs'
import { CHECKS } from '../../src/calc/registry.ts'
import { build } from '../e2e/support/built-site.ts'
import { WORKED, workedHash } from '../e2e/support/worked-checks.ts'
import { startDriven } from './support/driven.ts'
import { type Engine, says, tapWords, there, until } from './support/engine.ts'
import { wantedEngines } from './support/wanted.ts'
import { startWebkit } from './support/webkit.ts'

const START = { chromium: () => startDriven('chromium'), firefox: () => startDriven('firefox'), webkit: startWebkit }

const folders = mkdtempSync(join(tmpdir(), 'stillpin-engines-'))
const next = join(folders, 'next')
const pictures = process.env['STILLPIN_PICTURES']
beforeAll(() => build({ STILLPIN_OUT: next, STILLPIN_VERSION: '77.7.7' }), 120_000)
afterAll(() => rmSync(folders, { recursive: true, force: true }))

type Figure = { readonly key: string; readonly si: string; readonly text: string }

const FIGURES = `[...document.querySelectorAll('output[id][data-si]')].map((one) => ({ key: one.id, si: one.dataset.si, text: one.textContent }))`
const ANSWERED = `document.querySelector('output[id][data-si]') && !document.querySelector('[aria-busy="true"]')`

/** What each engine printed for each worked check; Chromium goes first. */
const printed = new Map<string, readonly Figure[]>()

async function offlineCopy(engine: Engine): Promise<void> {
  await engine.read(`navigator.serviceWorker.ready.then(({ active }) => active.state === 'activated' ||
    new Promise((done) => active.addEventListener('statechange', () => done(true), { once: true })))`)
  await until(engine, 'navigator.serviceWorker.controller', 'the worker in charge')
}

const follow = (engine: Engine, hash: string) => engine.read(`(location.hash = ${JSON.stringify(hash)})`)

describe.each(wantedEngines())('in %s', (name) => {
  let engine: Engine
  let server: Awaited<ReturnType<typeof startServer>>
  /** the address of the complaint the story is about */
  let place = ''
  beforeAll(async () => {
    server = await startServer({ root: DIST })
    engine = await START[name]()
  }, 60_000)
  afterAll(async () => {
    await engine?.close()
    await server?.close()
  })

  it('stands at the first visit', async () => {
    await engine.go(server.address)
    await there(engine, 'h1')
    await offlineCopy(engine)
  })

  it('prints the digits of every worked check that Chromium prints', async () => {
    for (const { id } of CHECKS) {
      await follow(engine, workedHash(id))
      const [first] = WORKED[id]?.expected ?? []
      await until(
        engine,
        `location.hash.startsWith('#/check/${id}?') && document.querySelector('output#${first?.key}')`,
      )
      await until(engine, ANSWERED, `the answer of ${id}`)
      const figures = await engine.read<readonly Figure[]>(FIGURES)
      for (const { key, si, within, source } of WORKED[id]?.expected ?? []) {
        const figure = figures.find((one) => one.key === key)
        expect(Math.abs(Number(figure?.si) - si), `${id} ${key}, ${source}`).toBeLessThanOrEqual(within)
      }
      if (name === 'chromium') printed.set(id, figures)
      const reference = printed.get(id)
      if (reference === undefined) continue
      expect(figures.map(({ key, text }) => `${key} ${text}`)).toEqual(
        reference.map(({ key, text }) => `${key} ${text}`),
      )
      // each engine has its own last digit of a sine or a logarithm
      reference.forEach(({ si }, at) => {
        const [own, its] = [Number(figures[at]?.si), Number(si)]
        expect(Math.abs(own - its), `${id} ${figures[at]?.key}`).toBeLessThanOrEqual(1e-9 * Math.abs(its))
      })
    }
  })

  it('reads an expression typed by hand', async () => {
    await follow(engine, '#/check/need?measuredDb=&limitDb=40&marginDb=6')
    await there(engine, 'form [name="measuredDb"]')
    await engine.type('form [name="measuredDb"]', '2*(30+1/2)')
    await until(engine, `Number(document.querySelector('output#neededDb')?.dataset.si) === 27`, '61 − 40 + 6 = 27 dB')
  })

  it('keeps a complaint through a reload', async () => {
    await follow(engine, '#/log')
    await tapWords(engine, 'demo')
    await there(engine, 'textarea')
    place = await engine.read<string>('location.hash')
    await engine.type('textarea', 'Heard again at the hold')
    await until(engine, `!document.body.innerText.includes('Saving')`, 'the note to be kept')
    await engine.reload()
    await until(engine, `document.querySelector('textarea')?.value === 'Heard again at the hold'`, 'the note')
  })

  it('fits its width at every place', async () => {
    for (const width of [360, 480, 1280]) {
      const has = await engine.widen(width)
      // a window with a tool bar of its own does not go below that; everything is looked at as narrow as it goes
      expect(has).toBeLessThanOrEqual(Math.max(width, 480))
      for (const hash of ['#/ask', '#/check', workedHash('window'), workedHash('surge'), '#/log', '#/notes']) {
        await follow(engine, hash)
        await there(engine, 'h1')
        await until(engine, `!document.querySelector('[aria-busy="true"]')`, `${hash} to be answered`)
        const wide = await engine.read<number>('document.documentElement.scrollWidth')
        expect(wide, `${hash} at ${has}`).toBeLessThanOrEqual(has)
        if (pictures !== undefined) await keepPicture(`${name}-${width}-${hash.replace(/[^a-z]+/g, '-').slice(0, 20)}`)
      }
    }
    await engine.widen(412)
  })

  const keepPicture = async (title: string) => {
    mkdirSync(pictures ?? '', { recursive: true })
    writeFileSync(join(pictures ?? '', `${title}.png`), await engine.picture())
  }

  it('takes an update only when it is asked for, and keeps the text', async () => {
    await follow(engine, '#/check/need')
    await there(engine, 'form [name="measuredDb"]')
    await engine.type('form [name="measuredDb"]', '63.7')
    server.deploy(next)
    await engine.read(`(async () => {
      const registration = await navigator.serviceWorker.ready
      while (registration.waiting === null) {
        await registration.update()
        await new Promise((done) => setTimeout(done, 200))
      }
      return true
    })()`)
    await tapWords(engine, 'Update now')
    await until(engine, `document.documentElement.dataset.version === '77.7.7'`, 'the next version')
    await until(engine, `document.querySelector('form [name="measuredDb"]')?.value === '63.7'`, 'the typed text')
  })

  it('goes on without the server', async () => {
    await server.close()
    await engine.reload()
    await there(engine, 'h1')
    await follow(engine, workedHash('filter'))
    await until(engine, `document.querySelector('output#insertionLossDb')`, 'an answer offline')
  })

  if (name === 'webkit')
    it('is not asked to start again with what it kept: this WebKit keeps storage for one session', () => {
      expect(engine.restart).toBeUndefined()
    })
  else
    it.each(['close', 'kill'] as const)('finds everything again after the program ended by %s', async (how) => {
      await until(engine, `!document.body.innerText.includes('Saving')`)
      await engine.restart?.(how)
      await engine.go(`${server.address}${place}`)
      await until(engine, `document.querySelector('textarea')?.value === 'Heard again at the hold'`, 'the note')
    })
})

describe.runIf(wantedEngines().includes('firefox'))('in firefox with site data blocked', () => {
  it('computes, and says that nothing is kept', async () => {
    const server = await startServer({ root: DIST })
    const engine = await startDriven('firefox', { settings: { 'network.cookie.cookieBehavior': 2 } })
    try {
      await engine.go(`${server.address}${workedHash('need')}`)
      await until(engine, `Number(document.querySelector('output#neededDb')?.dataset.si) > 34.5`, 'an answer')
      await says(engine, 'nothing will be there after closing')
    } finally {
      await engine.close()
      await server.close()
    }
  })
})
