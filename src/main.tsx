import { render } from 'preact'
import { applyUpdate, startOffline, updatedElsewhere, updateReady } from './offline/updates.ts'
import { appVersion } from './state/version.ts'

const root = document.getElementById('app')
if (root === null) throw new Error('The page has no place for the app.')

const draw = () =>
  render(
    <main>
      <h1>Stillpin</h1>
      <label>
        Text <input />
      </label>
      {updateReady.value && (
        <button type="button" onClick={applyUpdate}>
          Update now
        </button>
      )}
      {updatedElsewhere.value && <p>Updated in another window.</p>}
      <footer>{appVersion}</footer>
    </main>,
    root,
  )
draw()
updateReady.subscribe(draw)
updatedElsewhere.subscribe(draw)

startOffline().catch((error: unknown) => console.warn('No offline copy:', error))
