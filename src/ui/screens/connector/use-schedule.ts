import { useEffect } from 'preact/hooks'
import { type ScheduleRun, scheduleRun } from '../../../state/schedule.ts'
import type { ViewGiven } from './connector.tsx'

/** The schedule of the connector as it is, the same one on every screen that shows it. */
export function useSchedule({ complaint: { lines }, connector }: ViewGiven): ScheduleRun {
  const run = scheduleRun(connector.id)
  useEffect(() => run.want(connector, lines), [run, connector, lines])
  return run
}
