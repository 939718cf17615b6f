import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { lazy } from '../lazy.tsx'
import { ALL_SOUNDS, SoundLinks } from '../parts/book/sound-links.tsx'

type Given = { readonly model: CheckModel; readonly desk: Desk }

const TracePane = lazy<{ readonly desk: Desk }>(async () => (await import('./trace/trace-pane.tsx')).TracePane)
const TrialRecorder = lazy(async () => (await import('../parts/trial-recorder.tsx')).TrialRecorder)
const ListenTone = lazy(async () => (await import('../parts/listen-tone.tsx')).ListenTone)

/** What a check has beside its fields to fill them with; fetched with it. */
export function CheckTool({ model, desk }: Given) {
  switch (model.check.id) {
    case 'trace':
      return <TracePane desk={desk} />
    case 'trial':
      return <TrialRecorder model={model} desk={desk} />
    case 'tone':
      return (
        <>
          <ListenTone model={model} />
          <SoundLinks links={[ALL_SOUNDS]} />
        </>
      )
    default:
      return null
  }
}

const SaveModel = lazy<{ readonly model: CheckModel }>(
  async () => (await import('./trace/save-model.tsx')).SaveModel,
  null,
)

/** What may be made of the answer of one check alone. */
export function CheckYield({ model }: { readonly model: CheckModel }) {
  return model.check.id === 'filter' ? <SaveModel model={model} /> : null
}
