import { render } from 'preact'
import { startOffline } from './offline/updates.ts'
import { appVersion } from './state/version.ts'
import { App } from './ui/app.tsx'
import { atRest } from './ui/rest.ts'

const root = document.getElementById('app')
if (root === null) throw new Error('The page has no place for the app.')

document.documentElement.dataset['version'] = appVersion
// what the scripts set up, the first drawing and what an offline copy needs make no one long turn; what fails in a timer is
// told of as what fails in a script, and keeps none that comes later
setTimeout(() => {
  render(<App />, root)
  document.getElementById('before')?.remove()
})
setTimeout(() => {
  // the development server has no worker to offer
  if (import.meta.env.PROD) startOffline(atRest()).catch((error: unknown) => console.warn('No offline copy:', error))
})
