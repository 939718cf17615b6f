import { useState } from 'preact/hooks'

/** A file of the build, in the offline copy like any other. */
const FILE = 'licences.txt'

type State = { readonly is: 'folded' | 'reading' | 'failed' } | { readonly is: 'read'; readonly text: string }

/** What the app is made of, each part with its licence in full; read when it is first unfolded. */
export function Licences() {
  const [state, setState] = useState<State>({ is: 'folded' })
  const read = () => {
    if (state.is === 'read' || state.is === 'reading') return
    setState({ is: 'reading' })
    fetchText().then(
      (text) => setState({ is: 'read', text }),
      () => setState({ is: 'failed' }),
    )
  }
  return (
    <details class="fold" onToggle={(event) => event.currentTarget.open && read()}>
      <summary>Licences</summary>
      {state.is === 'reading' && <p role="status">Reading…</p>}
      {state.is === 'failed' && (
        <p role="status">The licence texts could not be read. Go online once, then unfold this again.</p>
      )}
      {state.is === 'read' && (
        <section class="licences" aria-label="Licence texts">
          {state.text.split(/\n-{20,}\n/).map((part) => (
            <p key={part}>{part.trim()}</p>
          ))}
        </section>
      )}
    </details>
  )
}

async function fetchText(): Promise<string> {
  const answer = await fetch(new URL(FILE, document.baseURI))
  if (!answer.ok || answer.headers.get('content-type')?.includes('html')) throw new Error(`${FILE}: ${answer.status}`)
  return answer.text()
}
