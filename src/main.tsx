import { render } from 'preact'
import { startOffline } from './offline/updates.ts'

const root = document.getElementById('app')
if (root === null) throw new Error('The page has no place for the app.')

render(
  <main>
    <h1>Stillpin</h1>
  </main>,
  root,
)

startOffline().catch((error: unknown) => console.warn('No offline copy:', error))
