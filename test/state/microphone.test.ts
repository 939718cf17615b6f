// @vitest-environment happy-dom
/** The microphone: never asked for without a tap, refused in words, let go when the page is hidden. */
import { afterEach, describe, expect, test, vi } from 'vitest'
import { listen, listening, stopListening } from '../../src/state/microphone.ts'

const RATE_HZ = 48_000

/** A microphone that hears one tone. */
function microphone(hz: number) {
  const stopTrack = vi.fn()
  const close = vi.fn(async () => undefined)
  const getUserMedia = vi.fn(async () => ({ getTracks: () => [{ stop: stopTrack }] }))
  class FakeContext {
    sampleRate = RATE_HZ
    close = close
    createMediaStreamSource = () => ({ connect: () => undefined })
    createAnalyser = () => ({
      fftSize: 0,
      getFloatTimeDomainData: (samples: Float32Array) => {
        for (let i = 0; i < samples.length; i++) samples[i] = Math.sin((2 * Math.PI * hz * i) / RATE_HZ)
      },
    })
  }
  vi.stubGlobal('AudioContext', FakeContext)
  vi.stubGlobal('navigator', { mediaDevices: { getUserMedia } })
  return { getUserMedia, stopTrack, close }
}

afterEach(() => {
  stopListening()
  vi.unstubAllGlobals()
  vi.useRealTimers()
})

describe('listening', () => {
  test('asks only when told to, without the filters of a telephone, and hears the tone', async () => {
    vi.useFakeTimers()
    const { getUserMedia } = microphone(2400)
    expect(getUserMedia).not.toHaveBeenCalled()
    await listen()
    expect(getUserMedia).toHaveBeenCalledWith({
      audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false },
    })
    vi.advanceTimersByTime(700)
    const now = listening.value
    expect(now.is === 'on' && Math.abs((now.tones[0]?.hz ?? 0) - 2400)).toBeLessThan(0.1)
  })

  test('lets the microphone go, and does so by itself when the page is hidden', async () => {
    const { stopTrack, close } = microphone(400)
    await listen()
    document.dispatchEvent(new Event('visibilitychange'))
    expect([stopTrack.mock.calls.length, close.mock.calls.length, listening.value.is]).toEqual([1, 1, 'off'])
  })

  test('says in words that it was not allowed, or that there is none', async () => {
    vi.stubGlobal('navigator', {
      mediaDevices: {
        getUserMedia: async () => {
          throw new DOMException('no', 'NotAllowedError')
        },
      },
    })
    await listen()
    expect(listening.value).toMatchObject({ is: 'refused', why: expect.stringContaining('not allowed') })
    vi.stubGlobal('navigator', {})
    await listen()
    expect(listening.value).toMatchObject({ is: 'refused', why: expect.stringContaining('no microphone') })
  })
})
