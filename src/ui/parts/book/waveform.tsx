import type { Waveform } from '../../../guide/book/types.ts'

/** A waveform of a line card, said in words. */
export function WaveformView({ waveform }: { readonly waveform: Waveform }) {
  return (
    <figure class="picture waveform">
      <figcaption>{waveform.title}</figcaption>
      <p>{waveform.said}</p>
    </figure>
  )
}
