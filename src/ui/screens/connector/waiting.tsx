import { Icon } from '../../parts/icon.tsx'
import './waiting.css'

/** How far work is, and the ways to leave it and to take it up again. */
export type OnItsWay = {
  readonly is: 'working' | 'stopped' | 'broken'
  readonly doneFrac: number
  readonly onStop: () => void
  readonly onAgain: () => void
}

type Given = OnItsWay & {
  /** what could not be worked out, as a sentence begins */
  readonly what: string
  /** what goes on while it is worked out, and what there is where it was stopped */
  readonly working: string
  readonly stopped: string
}

/** Something is being worked out: how far, a way to leave it; where it ended, why, and a way to begin again. */
export function Waiting({ is, doneFrac, onStop, onAgain, what, working, stopped }: Given) {
  if (is === 'working')
    return (
      <div class="under-way">
        <label class="progress">
          {working}, {Math.round(doneFrac * 100)} %
          <progress max="1" value={doneFrac} />
        </label>
        <button type="button" class="button" onClick={onStop}>
          <Icon name="close" />
          Stop
        </button>
      </div>
    )
  return (
    <div class="under-way">
      <p role="status">
        {is === 'stopped'
          ? stopped
          : `${what} could not be worked out. That is a fault of the app, not of the inputs; what was typed is kept.`}
      </p>
      <button type="button" class="button" onClick={onAgain}>
        Work it out
      </button>
    </div>
  )
}
