// @vitest-environment happy-dom
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'

type State = 'installing' | 'installed' | 'activating' | 'activated'

/** A worker whose state the test moves. */
class FakeWorker extends EventTarget {
  state: State
  readonly scriptURL = new URL('worker.js', document.baseURI).href
  readonly messages: unknown[] = []
  constructor(state: State) {
    super()
    this.state = state
  }
  postMessage(message: unknown): void {
    this.messages.push(message)
  }
  become(state: State): void {
    this.state = state
    this.dispatchEvent(new Event('statechange'))
  }
}

class FakeRegistration extends EventTarget {
  readonly scope = document.baseURI
  installing: FakeWorker | null = null
  waiting: FakeWorker | null = null
  active: FakeWorker | null = null
  update = vi.fn(async () => undefined)
  unregister = vi.fn(async () => true)

  find(): FakeWorker {
    const worker = new FakeWorker('installing')
    this.installing = worker
    this.dispatchEvent(new Event('updatefound'))
    return worker
  }
  installed(worker: FakeWorker): void {
    this.installing = null
    this.waiting = worker
    worker.become('installed')
  }
  activated(worker: FakeWorker): void {
    this.waiting = null
    this.active = worker
    worker.become('activated')
  }
}

let registration: FakeRegistration
let register: ReturnType<typeof vi.fn>
const reload = vi.fn()

async function start() {
  vi.resetModules()
  const updates = await import('../../src/offline/updates.ts')
  await updates.startOffline()
  return updates
}

beforeEach(() => {
  window.history.replaceState(null, '', '/')
  registration = new FakeRegistration()
  register = vi.fn(async () => registration)
  const container = Object.assign(new EventTarget(), {
    controller: null,
    register,
    getRegistrations: async () => [registration],
  })
  vi.stubGlobal('navigator', { ...navigator, serviceWorker: container })
  vi.spyOn(window.location, 'reload').mockImplementation(reload)
  vi.useFakeTimers({ toFake: ['setInterval'] })
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
  vi.restoreAllMocks()
  reload.mockClear()
})

describe('the offline copy', () => {
  it('says that it is ready only when the first worker is active', async () => {
    const { offlineReady, updateReady } = await start()
    const first = registration.find()
    registration.installed(first)
    expect([offlineReady.value, updateReady.value]).toEqual([false, false])
    registration.activated(first)
    expect([offlineReady.value, updateReady.value, reload.mock.calls.length]).toEqual([true, false, 0])
  })

  it('knows that there is none until the first worker is active, and when there is no network', async () => {
    const { isCopyMissing, isNetworkGone } = await start()
    const first = registration.find()
    registration.installed(first)
    expect([isCopyMissing.value, isNetworkGone.value]).toEqual([true, false])
    vi.stubGlobal('navigator', { ...navigator, onLine: false })
    window.dispatchEvent(new Event('offline'))
    expect(isNetworkGone.value).toBe(true)
    registration.activated(first)
    expect(isCopyMissing.value).toBe(false)
  })

  it('is not called missing where the page came from it', async () => {
    registration.active = new FakeWorker('activated')
    const { isCopyMissing } = await start()
    expect(isCopyMissing.value).toBe(false)
  })

  it('asks the browser to fetch the worker past its cache', async () => {
    await start()
    expect(register).toHaveBeenCalledWith(new URL('worker.js', document.baseURI).href, { updateViaCache: 'none' })
  })

  it('offers an update found in the very first session, and reloads when it was taken', async () => {
    const { applyUpdate, updateReady } = await start()
    const first = registration.find()
    registration.installed(first)
    registration.activated(first)
    const second = registration.find()
    registration.installed(second)
    expect(updateReady.value).toBe(true)
    applyUpdate()
    expect(second.messages).toEqual([{ type: 'SKIP_WAITING' }])
    expect(reload).not.toHaveBeenCalled()
    registration.activated(second)
    expect(reload).toHaveBeenCalledOnce()
  })

  it('offers an update that was waiting before the page opened', async () => {
    registration.active = new FakeWorker('activated')
    registration.waiting = new FakeWorker('installed')
    const { offlineReady, updateReady } = await start()
    expect([offlineReady.value, updateReady.value]).toEqual([true, true])
  })

  it('leaves this window alone when another took the update', async () => {
    registration.active = new FakeWorker('activated')
    const { updatedElsewhere, updateReady } = await start()
    const next = registration.find()
    registration.installed(next)
    registration.activated(next)
    expect([updatedElsewhere.value, updateReady.value]).toEqual([true, false])
    expect(reload).not.toHaveBeenCalled()
  })

  it('offers the second update of a long session too', async () => {
    registration.active = new FakeWorker('activated')
    const { updateReady } = await start()
    const one = registration.find()
    registration.installed(one)
    registration.activated(one)
    expect(updateReady.value).toBe(false)
    registration.installed(registration.find())
    expect(updateReady.value).toBe(true)
  })

  it('looks for updates when it is shown, focused, and every hour', async () => {
    await start()
    const looks = () => registration.update.mock.calls.length
    const over = () => new Promise((done) => setTimeout(done))
    for (const tell of [
      () => document.dispatchEvent(new Event('visibilitychange')),
      () => window.dispatchEvent(new Event('pageshow')),
      () => window.dispatchEvent(new Event('focus')),
      () => vi.advanceTimersByTime(3_600_000),
    ]) {
      tell()
      await over()
    }
    expect(looks()).toBe(4)
    // A window that comes to the front says so three times at once.
    document.dispatchEvent(new Event('visibilitychange'))
    window.dispatchEvent(new Event('pageshow'))
    window.dispatchEvent(new Event('focus'))
    expect(looks()).toBe(5)
  })

  it('advises a reload instead of breaking when a part is gone from the host', async () => {
    const { reloadAdvised } = await start()
    const event = new Event('vite:preloadError', { cancelable: true })
    window.dispatchEvent(event)
    expect([event.defaultPrevented, reloadAdvised.value]).toEqual([true, true])
  })

  it('is removed by ?no-sw', async () => {
    window.history.replaceState(null, '', '/?no-sw')
    await start()
    expect(registration.unregister).toHaveBeenCalledOnce()
    expect(register).not.toHaveBeenCalled()
  })
})
