import { useEffect, useMemo } from 'preact/hooks'
import type { SheetBody } from '../../../calc/connector/sheet/body.ts'
import { countWords } from '../../../calc/connector/sheet/words.ts'
import { loadGuide } from '../../../state/guide-content.ts'
import { createSheetRun, type SheetRun } from '../../../state/sheet-run.ts'
import { lazy } from '../../lazy.tsx'
import { Icon } from '../../parts/icon.tsx'
import type { ViewGiven } from './connector.tsx'
import { Pictures } from './trade-pictures.tsx'
import { usePrinting } from './trade-printing.ts'
import './trade.css'
import { OwnSheet, SupplierSheet, WholeComplaint } from './trade-sheets.tsx'

const BringIn = lazy(async () => (await import('../bring-in.tsx')).BringIn)

/** The ways out of this device and back in: sheet, supplier's copy, pictures, and the whole complaint as a file. */
export function Trade({ complaint, connector }: ViewGiven) {
  const run = useMemo(createSheetRun, [])
  const { lines } = complaint
  useEffect(() => {
    run.start(connector, lines)
  }, [run, connector, lines])
  useEffect(() => () => run.stop(), [run])
  useEffect(() => void loadGuide().catch(() => undefined), [])
  const state = run.state.value
  if (connector.contacts.length === 0)
    return <p>There is no contact yet, so there is no sheet. Make the contacts, or paste a table of them.</p>
  return state.is === 'done' ? (
    <Ready complaint={complaint} connector={connector} body={state.body} />
  ) : (
    <Waiting run={run} onAgain={() => run.start(connector, lines)} />
  )
}

function Ready({ complaint, connector, body }: ViewGiven & { readonly body: SheetBody }) {
  const print = usePrinting({ complaint, body })
  return (
    <div class="panes trade">
      <div class="pane stack">
        <section aria-label="The sheet">
          <h2>The sheet</h2>
          <p>
            {body.rows.length} contacts: {countWords(body.rows)}.
          </p>
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

/** The sheet is on its way: how far, and a way to leave it. */
function Waiting({ run, onAgain }: { readonly run: SheetRun; readonly onAgain: () => void }) {
  const state = run.state.value
  if (state.is === 'working')
    return (
      <div class="stack">
        <label class="progress">
          Working out every contact, {Math.round(state.doneFrac * 100)} %
          <progress max="1" value={state.doneFrac} />
        </label>
        <button type="button" class="button" onClick={run.stop}>
          <Icon name="close" />
          Stop
        </button>
      </div>
    )
  return (
    <div class="stack">
      <p role="status">
        {state.is === 'stopped'
          ? 'Stopped: there is no sheet without every contact worked out.'
          : 'The sheet could not be worked out. That is a fault of the app, not of the inputs; what was typed is kept.'}
      </p>
      <button type="button" class="button" onClick={onAgain}>
        Work it out
      </button>
    </div>
  )
}
