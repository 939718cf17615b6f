import './sound.css'
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useMemo } from 'preact/hooks'
import { formatQuantity } from '../../../calc/quantity/format.ts'
import { DRAWN_DB, pictureOf } from '../../../guide/book/sounds/picture.ts'
import { soundById } from '../../../guide/book/sounds/sound-list.ts'
import type { SoundPicture } from '../../../guide/book/types.ts'
import { playing, playSound, stopSound } from '../../../state/sound-player.ts'

const WIDTH = 320
const SPECTRUM = { top: 8, height: 64 } as const
const RHYTHM = { top: 98, height: 32 } as const
const FOOT = RHYTHM.top + RHYTHM.height + 16
const LEFT = 6
const RIGHT = 314

/** A sound of the book: a button that plays it, its spectrum and its rhythm. */
export function SoundView({ id, said }: { readonly id: string; readonly said: string }) {
  useEffect(() => stopSound, [id])
  const sound = soundById(id)
  const picture = useMemo(() => sound && pictureOf(sound), [sound])
  if (picture === undefined) return null
  const now = playing.value
  const isOn = now.is === 'on' && now.sound === id
  return (
    <section class="sound" aria-label="Sound">
      {now.is === 'refused' && now.sound === id && (
        <p class="notice" role="status">
          {now.why}
        </p>
      )}
      <SoundDrawing picture={picture} said={said}>
        <button
          type="button"
          class={isOn ? 'button strong no-print' : 'button no-print'}
          onClick={() => (isOn ? stopSound() : void playSound(id))}
        >
          {isOn ? 'Stop the sound' : 'Listen to it'}
        </button>
      </SoundDrawing>
    </section>
  )
}

/** Frequencies that are named under the spectrum. */
const MARKS_HZ = [100, 1e3, 10e3] as const

function SoundDrawing(given: {
  readonly picture: SoundPicture
  readonly said: string
  /** what plays it */
  readonly children: ComponentChildren
}) {
  const { picture, said, children } = given
  const name = useId()
  const { fromHz, toHz, belowDb, seconds, rhythm } = picture
  const across = (hz: number) => LEFT + ((RIGHT - LEFT) * Math.log(hz / fromHz)) / Math.log(toHz / fromHz)
  const column = (RIGHT - LEFT) / belowDb.length
  const step = (RIGHT - LEFT) / rhythm.length
  const floor = SPECTRUM.top + SPECTRUM.height
  const middle = RHYTHM.top + RHYTHM.height / 2
  const bars = belowDb
    .map(
      (db, i) =>
        `M${(LEFT + i * column).toFixed(1)} ${floor}v${((db / DRAWN_DB - 1) * SPECTRUM.height).toFixed(1)}h${column.toFixed(1)}V${floor}z`,
    )
    .join('')
  const loud = Math.max(...rhythm, Number.MIN_VALUE)
  const envelope = rhythm
    .map((level, i) => {
      const half = ((level / loud) * RHYTHM.height) / 2
      return `M${(LEFT + (i + 0.5) * step).toFixed(1)} ${(middle - half).toFixed(1)}v${(2 * half).toFixed(1)}`
    })
    .join('')
  return (
    <figure class="picture drawing sound-picture">
      <figcaption>
        <span>Spectrum and rhythm</span>
        {children}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} ${FOOT + 4}`} role="img" aria-labelledby={`${name}t ${name}d`}>
        <title id={`${name}t`}>Spectrum and rhythm</title>
        <desc id={`${name}d`}>{said}</desc>
        <path class="s-fill" d={bars} />
        <path class="m-wire" d={`M${LEFT} ${floor}H${RIGHT}`} />
        {MARKS_HZ.map((hz) => (
          <g key={hz}>
            <path class="m-open" d={`M${across(hz).toFixed(1)} ${floor}V${SPECTRUM.top}`} />
            <text x={across(hz)} y={floor + 14} text-anchor={hz === MARKS_HZ[MARKS_HZ.length - 1] ? 'end' : 'middle'}>
              {formatQuantity(hz, 'frequency', 2)}
            </text>
          </g>
        ))}
        <path class="s-level" d={envelope} stroke-width={Math.max(0.8, step * 0.8)} />
        <text x={LEFT} y={FOOT}>
          0
        </text>
        <text x={RIGHT} y={FOOT} text-anchor="end">
          {formatQuantity(seconds, 'time', 2)}
        </text>
      </svg>
    </figure>
  )
}
