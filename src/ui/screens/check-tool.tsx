import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { lazy } from '../lazy.tsx'

type Given = { readonly model: CheckModel; readonly desk: Desk }

const TracePane = lazy<{ readonly desk: Desk }>(async () => (await import('./trace/trace-pane.tsx')).TracePane)

/** What a check has beside its fields to fill them with; fetched with it. */
export function CheckTool({ model, desk }: Given) {
  return model.check.id === 'trace' ? <TracePane desk={desk} /> : null
}
