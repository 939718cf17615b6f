import { useId } from 'preact/hooks'
import type { Waveform } from '../../../guide/book/types.ts'
import { Text } from './terms.tsx'
import { type Letters, type Path, SHEET_WIDTH, waveformShape } from './waveform-shape.ts'
import './waveform.css'

/** Volts over time with levels and times named: themed by the variables of the page, read out in words, printed as it is. */
export function WaveformView({ waveform }: { readonly waveform: Waveform }) {
  const name = useId()
  const { height, letters, paths } = waveformShape(waveform)
  return (
    <figure class="picture waveform">
      <figcaption>
        <Text of={waveform.title} />
      </figcaption>
      <svg
        viewBox={`0 0 ${SHEET_WIDTH} ${height}`}
        role="img"
        aria-labelledby={`${name}t`}
        aria-describedby={`${name}d`}
      >
        <title id={`${name}t`}>{waveform.title}</title>
        <desc id={`${name}d`}>{waveform.said}</desc>
        {paths.map((path, index) => (
          <PathView key={`${index}${path.look}`} path={path} />
        ))}
        {letters.map((words) => (
          <LettersView key={`${words.x} ${words.y} ${words.text}`} words={words} />
        ))}
      </svg>
    </figure>
  )
}

const PathView = ({ path: { d, look } }: { readonly path: Path }) => <path class={`w-${look}`} d={d} />

const LettersView = ({ words: { text, x, y, anchor, is } }: { readonly words: Letters }) => (
  <text class={is === 'level' ? 'w-level-words' : `w-${is}`} x={x} y={y} text-anchor={anchor}>
    {text}
  </text>
)
