/** The sheet of a connector: what somebody else can act on, whole for its owner, without what is internal for a maker. */
import { untracked } from '@preact/signals'
import type { SheetBody } from '../../calc/connector/sheet/body.ts'
import type { SheetWindow } from '../../calc/connector/sheet/grounds.ts'
import type { Connector, ConnectorText } from '../../calc/connector/types.ts'
import type { Guide } from '../../guide/types.ts'
import { SHEET_CAUTIONS } from '../../reference/safety.ts'
import type { Complaint } from '../../state/complaints.ts'
import { dayAndTime } from '../screens/moment.ts'
import { SheetFace } from './connector-face.tsx'
import { Findings, Grounds, Parts, Questions, Trials } from './connector-grounds.tsx'
import { ContactTable, onContacts } from './connector-table.tsx'
import { Ladders, Windows } from './connector-windows.tsx'
import { Part, SheetCautions, SheetFoot, SheetHead } from './frame.tsx'
import { lay } from './lay.tsx'
import { SheetAircraft, SheetStory } from './sheet-story.tsx'
import { SheetSources } from './sheet-working.tsx'
import './connector-sheet.css'

/** `story`: whose complaint it is; absent on a supplier's copy. */
export type SheetGiven = {
  readonly body: SheetBody
  readonly addressOf: (window: SheetWindow) => string
  readonly story?: { readonly complaint: Complaint; readonly guide: Guide | undefined }
}

/** Lays the sheet out; its name stands in the head of every page. */
export function layConnectorSheet(given: SheetGiven): () => void {
  return untracked(() => lay(<ConnectorSheet {...given} />, runningHead(given)))
}

const nameOf = ({ name }: Connector): string => (name.trim() === '' ? 'Connector without a label' : name)

function runningHead({ body: { connector }, story }: SheetGiven): string {
  const name = `Contact schedule of ${nameOf(connector)}`
  if (story === undefined) return `${name}, supplier’s copy`
  const title = story.complaint.title.trim()
  return title === '' ? name : `${name}: ${title}`
}

function ConnectorSheet({ body, addressOf, story }: SheetGiven) {
  const { connector, rows, grounds } = body
  return (
    <>
      <SheetHead title={`Contact schedule of ${nameOf(connector)}`}>
        {story ? (
          <Heading complaint={story.complaint} />
        ) : (
          <p>Supplier’s copy: what the maker of the connector needs.</p>
        )}
        <Identity body={body} />
      </SheetHead>
      {story && <SheetStory complaint={story.complaint} guide={story.guide} />}
      <SheetFace body={body} />
      <Part title={`Contacts (${rows.length})`}>
        <ContactTable rows={rows} />
      </Part>
      <Parts body={body} />
      {story === undefined && <Questions body={body} />}
      <Findings body={body} />
      <Windows body={body} addressOf={addressOf} />
      <Ladders body={body} />
      <Grounds body={body} />
      <Trials body={body} />
      {story !== undefined && <Questions body={body} />}
      <SheetSources sources={[...grounds.sources, ...body.findings.flatMap(({ basis }) => basis?.sources ?? [])]} />
      <SheetCautions ids={[...SHEET_CAUTIONS, ...grounds.cautions]} />
      <SheetFoot signs={story ? OWN_SIGNS : MAKER_SIGNS} />
    </>
  )
}

const OWN_SIGNS = ['Prepared by', 'Checked by', 'Accepted by (certifying staff)']
const MAKER_SIGNS = ['Read by (maker)']

function Heading({
  complaint: { title, aircraft = '', createdAt, updatedAt, isDemo },
}: {
  readonly complaint: Complaint
}) {
  return (
    <>
      <p>
        <strong>{title.trim() === '' ? 'Untitled complaint' : title}</strong>, begun {dayAndTime(createdAt)}, changed{' '}
        {dayAndTime(updatedAt)}
        {isDemo ? ', demo (invented)' : ''}.
      </p>
      <SheetAircraft aircraft={aircraft} />
    </>
  )
}

const IDENTITY = [
  ['equipment', 'Equipment'],
  ['half', 'Half'],
  ['shell', 'Shell'],
  ['arrangement', 'Insert arrangement'],
  ['gender', 'Contacts are'],
  ['keying', 'Keying'],
  ['matingUnchanged', 'Mating half unchanged'],
  ['remark', 'Remark'],
] as const satisfies readonly (readonly [ConnectorText, string])[]

const FLAG_WORDS: Readonly<Record<string, string>> = { true: 'yes', false: 'no' }

/** What the connector is, in its user's own words; what nobody wrote is not there. */
function Identity({ body: { connector, rows } }: { readonly body: SheetBody }) {
  const { texts, shared } = connector
  const bond = [shared.bondOhm, shared.bondH].map((text) => text?.trim() ?? '').filter((text) => text !== '')
  const said = IDENTITY.flatMap(([key, label]) => {
    const text = texts[key]?.trim() ?? ''
    return text === '' ? [] : [{ label, text: FLAG_WORDS[text] ?? text }]
  })
  const count = (type: string) => rows.filter((row) => row.type === type).map(({ id }) => id)
  const groups = (['ground', 'spare', 'feed-through'] as const).flatMap((type) => {
    const contacts = count(type)
    return contacts.length === 0 ? [] : [{ label: CAPITAL[type], text: onContacts({ contacts, rows }) }]
  })
  return (
    <dl class="inputs columns-2">
      {[...said, ...groups, { label: 'Shared bond', text: bond.length === 0 ? 'not entered' : bond.join(' and ') }].map(
        ({ label, text }) => (
          <div key={label} class="row">
            <dt>{label}:</dt>{' '}
            <dd>
              <strong>{text}</strong>
            </dd>
          </div>
        ),
      )}
    </dl>
  )
}

const CAPITAL = { ground: 'Grounded', spare: 'Spare', 'feed-through': 'Feed-through' } as const
