/**
 * Listening for a tone: asked for by a tap only, worked out here, nothing kept and nothing sent.
 *
 * `listening`   off, waiting for leave, on with the tones heard last, or why not
 * `listen()`    asks for the microphone and listens until `stopListening()`, or until the page is hidden
 */
import { type ReadonlySignal, signal } from '@preact/signals'
import { type Peak, tonesIn } from '../calc/tone/spectrum.ts'

export type Listening =
  | { readonly is: 'off' }
  | { readonly is: 'asking' }
  | { readonly is: 'on'; readonly tones: readonly Peak[] }
  | { readonly is: 'refused'; readonly why: string }

/** 0.7 s at 48 kHz: lines 1.5 Hz apart. */
const SAMPLES = 32_768
const EVERY_MS = 700

const state = signal<Listening>({ is: 'off' })
export const listening: ReadonlySignal<Listening> = state

let stop: () => void = () => undefined

/** Lets the microphone go. */
export function stopListening(): void {
  stop()
  stop = () => undefined
  if (state.peek().is !== 'refused') state.value = { is: 'off' }
}

/** Filters of the telephone would take the tone out: all of them off. */
const PLAIN: MediaTrackConstraints = { echoCancellation: false, noiseSuppression: false, autoGainControl: false }

export async function listen(): Promise<void> {
  stopListening()
  // absent outside of a secure page, whatever the types say
  const devices: MediaDevices | undefined = navigator.mediaDevices
  if (devices === undefined) {
    state.value = { is: 'refused', why: 'This browser gives no microphone here. Type the tone instead.' }
    return
  }
  state.value = { is: 'asking' }
  try {
    const stream = await devices.getUserMedia({ audio: PLAIN })
    start(stream)
  } catch (error) {
    const isDenied = error instanceof DOMException && error.name === 'NotAllowedError'
    const why = isDenied
      ? 'The microphone was not allowed. Type the tone instead, or allow it for this page.'
      : 'No microphone answers. Type the tone instead.'
    state.value = { is: 'refused', why }
  }
}

function start(stream: MediaStream): void {
  const context = new AudioContext()
  const analyser = context.createAnalyser()
  analyser.fftSize = SAMPLES
  context.createMediaStreamSource(stream).connect(analyser)
  const samples = new Float32Array(analyser.fftSize)
  const look = () => {
    analyser.getFloatTimeDomainData(samples)
    state.value = { is: 'on', tones: tonesIn(samples, context.sampleRate) }
  }
  const timer = setInterval(look, EVERY_MS)
  document.addEventListener('visibilitychange', stopListening, { once: true })
  state.value = { is: 'on', tones: [] }
  stop = () => {
    clearInterval(timer)
    document.removeEventListener('visibilitychange', stopListening)
    for (const track of stream.getTracks()) track.stop()
    void context.close()
  }
}
