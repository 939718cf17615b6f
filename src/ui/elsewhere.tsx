import type { Route } from '../state/router.ts'
import { lazy } from './lazy.tsx'
import { Nowhere } from './shell/nowhere.tsx'

const Ask = lazy(async () => (await import('./screens/ask.tsx')).Ask)
const CheckList = lazy(async () => (await import('./screens/check-list.tsx')).CheckList)
const CheckScreen = lazy(async () => (await import('./screens/check.tsx')).CheckScreen)
const KeptCheckScreen = lazy(async () => (await import('./screens/kept-check.tsx')).KeptCheckScreen)
const Log = lazy(async () => (await import('./screens/log.tsx')).Log)
const ComplaintScreen = lazy(async () => (await import('./screens/complaint.tsx')).ComplaintScreen)
const ConnectorScreen = lazy(async () => (await import('./screens/connector/connector.tsx')).ConnectorScreen)
const Book = lazy(async () => (await import('./screens/book/book.tsx')).Book)

/** Every screen but the start page. */
export function Elsewhere({ route: here }: { readonly route: Route }) {
  if (here.place === 'nowhere') return <Nowhere path={here.path} />
  switch (here.place) {
    case 'ask':
      // the start page is the app's own
      return here.id === undefined ? null : <Ask nodeId={here.id} />
    case 'check':
      return here.id === undefined ? <CheckList /> : <CheckScreen id={here.id} query={here.query} />
    case 'log':
      if (here.id === undefined) return <Log />
      if (here.connector !== undefined) return <ConnectorScreen complaintId={here.id} steps={here.connector} />
      if (here.kept === undefined) return <ComplaintScreen id={here.id} />
      return <KeptCheckScreen complaintId={here.id} lineId={here.kept.lineId} checkId={here.kept.check} />
    case 'notes':
      return <Book id={here.id} query={here.query} />
  }
}
