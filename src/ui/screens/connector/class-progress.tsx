import type { ClassState } from '../../../state/class-run.ts'

/** How far the power classes are, or why they are not there. */
export function ClassProgress({ state }: { readonly state: ClassState }) {
  switch (state.is) {
    case 'idle':
    case 'done':
      return null
    case 'working':
      return (
        <label class="progress">
          Trying the power classes of suppressors, {Math.round(state.doneFrac * 100)} %
          <progress max="1" value={state.doneFrac} />
        </label>
      )
    case 'stopped':
      return <p role="status">Stopped: no power class is said.</p>
    case 'broken':
      return (
        <p role="alert">
          The power class could not be worked out. That is a fault of the app, not of the inputs; what was typed is
          kept.
        </p>
      )
  }
}
