import { render } from 'preact'
import { startOffline } from './offline/updates.ts'
import { nextTurn } from './state/next-turn.ts'
import { appVersion } from './state/version.ts'
import { App } from './ui/app.tsx'
import { atRest } from './ui/rest.ts'

const root = document.getElementById('app')
if (root === null) throw new Error('The page has no place for the app.')

document.documentElement.dataset['version'] = appVersion
// what the scripts set up and the first drawing make no one long turn
void nextTurn().then(() => {
  render(<App />, root)
  document.getElementById('before')?.remove()
})

// The development server has no worker to offer.
if (import.meta.env.PROD) startOffline(atRest()).catch((error: unknown) => console.warn('No offline copy:', error))
