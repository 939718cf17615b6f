/** Plays one sound of the book at a time, in a loop, until it is stopped. Samples are made on this device. */
import { signal } from '@preact/signals'
import { soundById } from '../guide/book/sounds/sound-list.ts'
import { render } from '../guide/book/sounds/synthesis.ts'

/** What the speakers do: which sound plays, or why it could not. */
export type Playing =
  | { readonly is: 'silent' }
  | { readonly is: 'on'; readonly sound: string }
  | { readonly is: 'refused'; readonly sound: string; readonly why: string }

export const playing = signal<Playing>({ is: 'silent' })

const RATE_HZ = 24_000
/** Soft at first: the headset may be turned up. */
const GAIN = 0.5

let context: AudioContext | undefined

/** Ends the sound, if one plays. */
export function stopSound(): void {
  const open = context
  context = undefined
  document.removeEventListener('visibilitychange', stopSound)
  playing.value = { is: 'silent' }
  void open?.close()
}

/** Plays the sound of this id from its start; called from a tap, without which a browser lets nothing sound. */
export async function playSound(id: string): Promise<void> {
  stopSound()
  const sound = soundById(id)
  if (sound === undefined) return
  const refuse = (why: string) => {
    playing.value = { is: 'refused', sound: id, why }
  }
  if (typeof AudioContext === 'undefined') return refuse('This browser cannot play sounds that are made here.')
  let opened: AudioContext | undefined
  try {
    opened = new AudioContext()
    context = opened
    const samples = render(sound, RATE_HZ)
    const buffer = opened.createBuffer(1, samples.length, RATE_HZ)
    buffer.getChannelData(0).set(samples)
    const source = opened.createBufferSource()
    const gain = opened.createGain()
    gain.gain.value = GAIN
    source.buffer = buffer
    source.loop = true
    source.connect(gain).connect(opened.destination)
    source.start()
    document.addEventListener('visibilitychange', stopSound, { once: true })
    await opened.resume()
    if (context === opened) playing.value = { is: 'on', sound: id }
  } catch {
    if (context !== opened) return
    stopSound()
    refuse('The sound could not be started: another program may hold the speakers.')
  }
}
