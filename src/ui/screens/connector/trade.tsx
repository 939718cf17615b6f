import { useEffect, useMemo } from 'preact/hooks'
import { countWords } from '../../../calc/connector/sheet/words.ts'
import type { ClassState } from '../../../state/class-run.ts'
import { loadGuide } from '../../../state/guide-content.ts'
import { createSheetRun, type SheetFound, withClasses, withStrike } from '../../../state/sheet-run.ts'
import type { StrikeState } from '../../../state/whole-run.ts'
import { lazy } from '../../lazy.tsx'
import { ClassProgress } from './class-progress.tsx'
import type { ViewGiven } from './connector.tsx'
import { NoContacts } from './no-contacts.tsx'
import { Pictures } from './trade-pictures.tsx'
import { usePrinting } from './trade-printing.ts'
import './trade.css'
import { OwnSheet, SupplierSheet, WholeComplaint } from './trade-sheets.tsx'
import { useAfterSchedule, useStrikeAndClasses } from './use-after-schedule.ts'
import { Waiting } from './waiting.tsx'

const BringIn = lazy(async () => (await import('../bring-in.tsx')).BringIn)

/** Share of the waiting in which the contacts are decided. */
const DECIDED_FRAC = 0.5

/** The ways out of this device and back in: sheet, supplier's copy, pictures, and the whole complaint as a file. */
export function Trade({ complaint, connector }: ViewGiven) {
  const run = useMemo(createSheetRun, [])
  const { strike, classes } = useStrikeAndClasses({ complaint, connector })
  const { body, isLive, waiting } = useAfterSchedule({ complaint, connector }, run, DECIDED_FRAC)
  const found = isLive ? body : undefined
  useEffect(() => {
    const isAsked = (connector.texts.strikeWaveform ?? '').trim() !== ''
    if (found !== undefined && isAsked) strike.start(connector, found.decided)
  }, [strike, found])
  useEffect(() => {
    if (found !== undefined) classes.start(connector, found.schedule.rows)
  }, [classes, found])
  useEffect(() => void loadGuide().catch(() => undefined), [])
  if (connector.contacts.length === 0)
    return <NoContacts complaint={complaint} connector={connector} so="there is no sheet" />
  if (found === undefined)
    return (
      <Waiting
        {...waiting}
        what="The sheet"
        working="Working out every contact"
        stopped="Stopped: there is no sheet without every contact worked out."
      />
    )
  return (
    <Ready
      complaint={complaint}
      connector={connector}
      found={found}
      strike={strike.state.value}
      classes={classes.state.value}
    />
  )
}

type ReadyGiven = ViewGiven & { readonly found: SheetFound; readonly strike: StrikeState; readonly classes: ClassState }

function Ready({ complaint, connector, found, strike, classes }: ReadyGiven) {
  const body = useMemo(
    () => withStrike(withClasses(found.body, found.schedule, classes), strike),
    [found, strike, classes],
  )
  const print = usePrinting({ complaint, body })
  return (
    <div class="panes trade">
      <div class="pane stack">
        <section aria-label="The sheet" aria-busy={classes.is === 'idle' || classes.is === 'working'}>
          <h2>The sheet</h2>
          <p>
            {body.rows.length} contacts: {countWords(body.rows)}.
          </p>
          {strike.is === 'working' && (
            <label class="progress">
              Striking all contacts together, {Math.round(strike.doneFrac * 100)} %; a sheet made now says that it is
              not there yet
              <progress max="1" value={strike.doneFrac} />
            </label>
          )}
          <ClassProgress state={classes} />
          <OwnSheet complaint={complaint} body={body} onPrint={() => print('own')} />
        </section>
        <section aria-label="Supplier’s copy">
          <h2>Supplier’s copy</h2>
          <SupplierSheet complaint={complaint} body={body} onPrint={() => print('supplier')} />
        </section>
      </div>
      <div class="pane stack">
        <section aria-label="Pictures">
          <h2>Pictures</h2>
          <Pictures connector={connector} body={body} />
        </section>
        <section aria-label="The whole complaint">
          <h2>The whole {complaint.purpose === 'design' ? 'design' : 'complaint'}</h2>
          <WholeComplaint complaint={complaint} />
        </section>
        <section aria-label="Bring in a file">
          <h2>Bring in a file</h2>
          <BringIn />
        </section>
      </div>
    </div>
  )
}
