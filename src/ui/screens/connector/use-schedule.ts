import { useEffect, useMemo } from 'preact/hooks'
import type { ContactRow } from '../../../calc/connector/contact-row.ts'
import { type ScheduleRun, type ScheduleState, scheduleRun } from '../../../state/schedule.ts'
import type { ViewGiven } from './connector.tsx'

function useWanted({ complaint, connector }: ViewGiven): ScheduleRun {
  const run = scheduleRun(connector.id)
  const { lines } = complaint
  useEffect(() => run.want(connector, lines), [run, connector, lines])
  return run
}

/** The schedule of the connector that is on the screen, worked out anew when it or one of its lines changes. */
export const useSchedule = (given: ViewGiven): ScheduleState => useWanted(given).state.value

/** Its rows by contact, as far as there are any: drawn again when there are others, not at every step of the work. */
export function useRows(given: ViewGiven): ReadonlyMap<string, ContactRow> {
  const shown = useWanted(given).shown.value
  return useMemo(() => new Map(shown?.rows.map((row) => [row.contact.id, row]) ?? []), [shown])
}
