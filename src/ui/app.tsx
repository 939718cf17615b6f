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

const AskStart = lazy(async () => (await import('./screens/ask-start.tsx')).AskStart)
const About = lazy(async () => (await import('./screens/about.tsx')).About)
/** Every other screen, each a part of its own: what leads to them is fetched after the start page. */
const Elsewhere = lazy(async () => (await import('./elsewhere.tsx')).Elsewhere)

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

function Screen({ route: here }: { readonly route: Route }) {
  return here.place === 'ask' && here.id === undefined ? <AskStart /> : <Elsewhere route={here} />
}
