import { useEffect } from 'preact/hooks'
import { formatQuantity } from '../../calc/quantity/format.ts'
import type { CheckModel } from '../../state/check.ts'
import { listen, listening, stopListening } from '../../state/microphone.ts'

/** Enough digits to tell a tone from its neighbour. */
const asText = (hz: number): string => String(Number(hz.toPrecision(5)))

/** The microphone beside the field of the tone: a tap asks for it, another takes a tone over. */
export function ListenTone({ model }: { readonly model: CheckModel }) {
  useEffect(() => stopListening, [])
  const now = listening.value
  const isOn = now.is === 'on' || now.is === 'asking'
  return (
    <section class="listen" aria-label="Listen">
      <div class="actions">
        <button
          type="button"
          class={isOn ? 'button strong' : 'button'}
          onClick={() => (isOn ? stopListening() : void listen())}
        >
          {isOn ? 'Stop listening' : 'Listen with the microphone'}
        </button>
      </div>
      <p class="muted small">Worked out on this device; nothing is kept, nothing is sent.</p>
      {now.is === 'asking' && <p role="status">Waiting for leave to listen…</p>}
      {now.is === 'refused' && (
        <p class="notice" role="status">
          {now.why}
        </p>
      )}
      {now.is === 'on' && now.tones.length === 0 && <p role="status">Listening…</p>}
      {now.is === 'on' && now.tones.length > 0 && (
        <div class="chips">
          {now.tones.map(({ hz, levelDb }, index) => (
            <button
              key={index}
              type="button"
              class="button"
              onClick={() => model.use([{ key: 'toneHz', text: `${asText(hz)} Hz` }])}
            >
              {formatQuantity(hz, 'frequency', 5)}
              <span class="muted small"> {formatQuantity(levelDb, 'decibel', 2)}</span>
            </button>
          ))}
        </div>
      )}
    </section>
  )
}
