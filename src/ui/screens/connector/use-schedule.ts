import { useEffect, useMemo } from 'preact/hooks'
import type { ContactRow } from '../../../calc/connector/contact-row.ts'
import { type ScheduleState, scheduleRun } from '../../../state/schedule.ts'
import type { ViewGiven } from './connector.tsx'

/** The schedule of the connector that is on the screen, worked out anew when it or one of its lines changes. */
export function useSchedule({ complaint, connector }: ViewGiven): ScheduleState {
  const run = scheduleRun(connector.id)
  const { lines } = complaint
  useEffect(() => run.want(connector, lines), [run, connector, lines])
  return run.state.value
}

/** Its rows by contact, as far as there are any. */
export function useRows({ shown }: ScheduleState): ReadonlyMap<string, ContactRow> {
  return useMemo(() => new Map(shown?.rows.map((row) => [row.contact.id, row]) ?? []), [shown])
}
