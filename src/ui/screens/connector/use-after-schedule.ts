import { useEffect, useMemo } from 'preact/hooks'
import type { Schedule } from '../../../calc/connector/schedule.ts'
import type { Connector } from '../../../calc/connector/types.ts'
import { createClassRun } from '../../../state/class-run.ts'
import { scheduleRun } from '../../../state/schedule.ts'
import type { SteppedRun } from '../../../state/stepped-run.ts'
import { createStrikeRun } from '../../../state/whole-run.ts'
import type { ViewGiven } from './connector.tsx'
import { useSchedule } from './use-schedule.ts'
import type { OnItsWay } from './waiting.tsx'

/** Work that begins where the schedule is done, both as one: `body` may be of older facts until `isLive`. */
export function useAfterSchedule<Body>(
  { complaint, connector }: ViewGiven,
  run: SteppedRun<[Connector, Schedule], Body>,
  /** share of the waiting in which the contacts are decided */
  decidedFrac: number,
) {
  const planned = scheduleRun(connector.id)
  const { is, shown, doneFrac } = useSchedule({ complaint, connector })
  const schedule = is === 'done' ? shown : undefined
  useEffect(() => {
    if (schedule !== undefined) run.start(connector, schedule)
  }, [run, schedule])
  useEffect(() => () => run.stop(), [run])
  const state = run.state.value
  // before the schedule is done, what the run came to last is of no account
  const at = is === 'done' ? state.is : is
  const ranFrac = 'doneFrac' in state ? state.doneFrac : 0
  const waiting: OnItsWay = {
    is: at === 'done' ? 'working' : at,
    doneFrac: schedule === undefined ? decidedFrac * doneFrac : decidedFrac + (1 - decidedFrac) * ranFrac,
    onStop: () => {
      planned.stop()
      run.stop()
    },
    onAgain: () => {
      if (schedule === undefined) planned.want(connector, complaint.lines)
      else run.start(connector, schedule)
    },
  }
  const isLive = schedule !== undefined && state.is === 'done'
  return { schedule, body: 'body' in state ? state.body : undefined, isLive, waiting }
}

/** The strike of all contacts and the power classes, of the connector as it is now; left with the screen. */
export function useStrikeAndClasses({ complaint: { lines }, connector }: ViewGiven) {
  const strike = useMemo(createStrikeRun, [])
  const classes = useMemo(createClassRun, [])
  useEffect(() => {
    strike.forget()
    classes.forget()
  }, [strike, classes, connector, lines])
  useEffect(
    () => () => {
      strike.stop()
      classes.stop()
    },
    [strike, classes],
  )
  return { strike, classes }
}
