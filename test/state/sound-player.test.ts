// @vitest-environment happy-dom
/** The player of the book's sounds: one at a time, in a loop, stopped when the page is hidden, and a sentence where it cannot. */
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { playing, playSound, stopSound } from '../../src/state/sound-player.ts'

type Played = { length: number; rateHz: number; isLooped: boolean; isStarted: boolean; isClosed: boolean }
let played: Played[] = []

class Speakers {
  readonly #one: Played = { length: 0, rateHz: 0, isLooped: false, isStarted: false, isClosed: false }
  readonly destination = {}
  constructor() {
    played.push(this.#one)
  }
  createBuffer(_channels: number, length: number, rateHz: number) {
    Object.assign(this.#one, { length, rateHz })
    return { getChannelData: () => new Float32Array(length) }
  }
  createBufferSource() {
    const one = this.#one
    return {
      buffer: undefined,
      set loop(isLooped: boolean) {
        one.isLooped = isLooped
      },
      connect: (next: unknown) => next,
      start: () => {
        one.isStarted = true
      },
    }
  }
  createGain() {
    return { gain: { value: 1 }, connect: (next: unknown) => next }
  }
  resume = () => Promise.resolve()
  close = () => {
    this.#one.isClosed = true
    return Promise.resolve()
  }
}

beforeEach(() => {
  played = []
  vi.stubGlobal('AudioContext', Speakers)
})
afterEach(() => {
  stopSound()
  vi.unstubAllGlobals()
})

describe('the player', () => {
  it('plays a sound in a loop, and the next in place of it', async () => {
    await playSound('strobe')
    expect(playing.value).toEqual({ is: 'on', sound: 'strobe' })
    // two flashes at 50 a minute
    expect(played[0]).toMatchObject({ length: 2.4 * 24_000, rateHz: 24_000, isLooped: true, isStarted: true })
    await playSound('ignition')
    expect(played.map(({ isClosed }) => isClosed)).toEqual([true, false])
    expect(playing.value).toEqual({ is: 'on', sound: 'ignition' })
  })

  it('is silent when the page is hidden', async () => {
    await playSound('strobe')
    document.dispatchEvent(new Event('visibilitychange'))
    expect(playing.value).toEqual({ is: 'silent' })
    expect(played[0]?.isClosed).toBe(true)
  })

  it('says so where the speakers cannot be had', async () => {
    vi.stubGlobal('AudioContext', function Refused() {
      throw new DOMException('no more', 'NotSupportedError')
    })
    await playSound('strobe')
    expect(playing.value).toMatchObject({ is: 'refused', sound: 'strobe' })
    vi.stubGlobal('AudioContext', undefined)
    await playSound('strobe')
    expect(playing.value).toMatchObject({ is: 'refused', why: expect.stringContaining('This browser') })
  })

  it('knows no sound of another name', async () => {
    await playSound('no-such-sound')
    expect(played).toEqual([])
    expect(playing.value).toEqual({ is: 'silent' })
  })
})
