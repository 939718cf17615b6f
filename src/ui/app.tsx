import { useEffect } from 'preact/hooks'
import { type Route, route, startRouter } from '../state/router.ts'
import { lazy } from './lazy.tsx'
import { isAboutOpen } from './shell/head.tsx'
import { Nav } from './shell/nav.tsx'
import { Notices } from './shell/notices.tsx'
import { startOnce } from './shell/start.ts'
import './styles/tokens.css'
import './styles/fonts.css'
import './styles/base.css'
import './styles/parts.css'
import './styles/pictures.css'
import './styles/screens.css'
import './styles/desk.css'
import './styles/check.css'
import './styles/compare.css'
import './styles/cards.css'
import './styles/large-text.css'
import './styles/print.css'
import './styles/forced-colors.css'
// a sheet of styles that comes later holds its screen up for a request and makes the whole page be laid out anew: small
// ones that many screens need, and what is laid out only on paper, come with the first
import './paper/paper.css'
import './styles/terms.css'
import './styles/fold.css'
import './styles/book.css'
import './styles/pick-mark.css'

const AskStart = lazy(async () => (await import('./screens/ask-start.tsx')).AskStart)
const About = lazy(async () => (await import('./screens/about.tsx')).About)
const Ask = lazy(async () => {
  // what it asks from is on its way meanwhile; the screen itself says when that fails
  void import('../state/built-guide.ts?built').catch(() => undefined)
  return (await import('./screens/ask.tsx')).Ask
})
const CheckList = lazy(async () => (await import('./screens/check-list.tsx')).CheckList)
const CheckScreen = lazy(async () => {
  const here = route.peek()
  // without it the worker starts when it is asked
  if (here.place === 'check')
    void import('../state/early-worker.ts').then(
      ({ readyFor }) => readyFor(here.id),
      () => undefined,
    )
  return (await import('./screens/check.tsx')).CheckScreen
})
const KeptCheckScreen = lazy(async () => (await import('./screens/kept-check.tsx')).KeptCheckScreen)
const Log = lazy(async () => (await import('./screens/log.tsx')).Log)
const ComplaintScreen = lazy(async () => (await import('./screens/complaint.tsx')).ComplaintScreen)
const ConnectorScreen = lazy(async () => (await import('./screens/connector/connector.tsx')).ConnectorScreen)
const Book = lazy(async () => (await import('./screens/book/book.tsx')).Book)
const Nowhere = lazy(async () => (await import('./shell/nowhere.tsx')).Nowhere)

/** The whole app: one screen at a time, the four places, and what the user should know now. */
export function App() {
  useEffect(() => {
    startOnce()
    return startRouter()
  }, [])
  return (
    <div class="shell">
      <button type="button" class="skip" onClick={skipToMain}>
        Skip to the content
      </button>
      <Nav />
      <main id="main" tabIndex={-1}>
        <Screen route={route.value} />
      </main>
      <Notices />
      {isAboutOpen.value && <About />}
    </div>
  )
}

/** A link would change the address, which belongs to the router. */
function skipToMain(): void {
  document.getElementById('main')?.focus()
}

/** Each screen is a part of its own, fetched at once: no request of it waits for another. */
function Screen({ route: here }: { readonly route: Route }) {
  switch (here.place) {
    case 'nowhere':
      return <Nowhere path={here.path} />
    case 'ask':
      return here.id === undefined ? <AskStart /> : <Ask nodeId={here.id} />
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
