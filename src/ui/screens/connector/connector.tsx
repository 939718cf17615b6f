import type { ComponentType } from 'preact'
import { useEffect, useMemo } from 'preact/hooks'
import { type Complaint, complaints, openComplaint } from '../../../state/complaints.ts'
import { type ConnectorView, hashOfConnector, readConnectorSteps } from '../../../state/connector-address.ts'
import { connectorsOf, type KeptConnector } from '../../../state/connectors.ts'
import { hashOf } from '../../../state/router.ts'
import { scheduleRun } from '../../../state/schedule.ts'
import { readyWorker } from '../../../state/work.ts'
import { lazy } from '../../lazy.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Screening } from '../../parts/screening.tsx'
import { Head } from '../../shell/head.tsx'
import { Nowhere } from '../../shell/nowhere.tsx'
import { connectorWords } from './connector-words.ts'
import { Views } from './views.tsx'
import '../../styles/connector.css'

/** What every view of a connector is given. */
export type ViewGiven = { readonly complaint: Complaint; readonly connector: KeptConnector }

const Home = lazy(async () => (await import('./home.tsx')).Home)
const Contact = lazy(async () => (await import('./contact.tsx')).Contact)

type PlainView = Exclude<ConnectorView, 'contact'>

const VIEWS: Readonly<Record<PlainView, ComponentType<ViewGiven>>> = {
  paste: lazy(async () => (await import('./paste.tsx')).Paste),
  decide: lazy(async () => (await import('./decide.tsx')).Decide),
  whole: lazy(async () => (await import('./whole.tsx')).Whole),
  trade: lazy(async () => (await import('./trade.tsx')).Trade),
}

const TITLES: Readonly<Record<PlainView, string>> = {
  paste: 'Paste a table',
  decide: 'Decide',
  whole: 'The whole connector',
  trade: 'Sheet, export and import',
}

type Given = { readonly complaintId: string; readonly steps: readonly string[] }

/** One connector of a complaint, in the view the address names; each view is fetched when it is first shown. */
export function ConnectorScreen({ complaintId, steps }: Given) {
  // it reads its script while the connector is read
  useMemo(() => readyWorker('schedule'), [])
  useEffect(() => openComplaint(complaintId), [complaintId])
  const place = readConnectorSteps(steps)
  const path = [hashOf('log', complaintId), 'connector', ...steps].join('/')
  if (place === undefined) return <Nowhere path={path} what="view of a connector" />
  const list = complaints.value
  if (list === undefined) return <Reading />
  const complaint = list.find(({ id }) => id === complaintId)
  if (complaint === undefined) return <Nowhere path={path} what="complaint on this device" />
  const connectors = connectorsOf(complaintId).value
  if (connectors === undefined) return <Reading />
  const connector = connectors.find(({ id }) => id === place.connectorId)
  if (connector === undefined) return <Missing complaint={complaint} />
  return <Open key={path} complaint={complaint} connector={connector} view={place.view} contactId={place.contactId} />
}

function Reading() {
  return (
    <p class="loading" role="status">
      Reading the log…
    </p>
  )
}

/** It was deleted, or belongs to somebody else's device: said as it is, with the way to what is there. */
function Missing({ complaint: { id, title } }: { readonly complaint: Complaint }) {
  return (
    <>
      <Head title="No such connector" />
      <div class="stack">
        <p>
          {title === '' ? 'This complaint' : `“${title}”`} holds no connector at this address. It was deleted, or the
          link was made on another device: connectors stay on the device until they are exported.
        </p>
        <a class="button" href={hashOf('log', id)}>
          <Icon name="back" />
          {title || 'Untitled complaint'}
        </a>
      </div>
    </>
  )
}

type OpenGiven = ViewGiven & { readonly view: ConnectorView | undefined; readonly contactId: string | undefined }

/** The head all views share, with the way back, and the view. */
function Open({ complaint, connector, view, contactId }: OpenGiven) {
  const { lines } = complaint
  // before it is drawn: the contacts are worked out meanwhile
  useMemo(() => {
    if (view !== 'paste' && connector.contacts.length > 0) scheduleRun(connector.id).want(connector, lines)
  }, [view, connector, lines])
  const name = connector.name || 'Connector without a label'
  const isHome = view === undefined
  const title = isHome ? name : view === 'contact' ? `Contact ${contactId}` : TITLES[view]
  const up = isHome ? hashOf('log', complaint.id) : hashOfConnector(complaint.id, connector.id)
  return (
    <>
      <Head title={title} windowTitle={isHome ? name : `${title}, ${name}`}>
        <a class="up" href={up}>
          <Icon name="back" />
          {isHome ? complaint.title || 'Untitled complaint' : name}
        </a>
        {isHome && <p class="muted small">{connectorWords(connector)}</p>}
      </Head>
      {view !== 'contact' && <Views complaint={complaint} connector={connector} view={view} />}
      <View complaint={complaint} connector={connector} view={view} contactId={contactId} />
      <Screening />
    </>
  )
}

function View({ complaint, connector, view, contactId }: OpenGiven) {
  if (view === undefined) return <Home complaint={complaint} connector={connector} />
  if (view === 'contact') return <Contact complaint={complaint} connector={connector} contactId={contactId ?? ''} />
  const Shown = VIEWS[view]
  return <Shown complaint={complaint} connector={connector} />
}
