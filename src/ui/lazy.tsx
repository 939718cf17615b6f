import type { ComponentChild, ComponentType } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { nextTurn } from '../state/next-turn.ts'
import { holdRest, isAtRest } from './rest.ts'

type State<P> =
  | { readonly is: 'loading' }
  | { readonly is: 'ready'; readonly Screen: ComponentType<P> }
  | { readonly is: 'failed' }

const OPENING = (
  <p class="loading muted" role="status">
    Opening…
  </p>
)

/**
 * A screen, or a part of one, whose code is fetched when it is first shown; it is in the offline copy, so that this
 * works anywhere. `meanwhile` stands in its place until then.
 */
export function lazy<P extends object>(
  load: () => Promise<ComponentType<P>>,
  meanwhile: ComponentChild = OPENING,
): ComponentType<P> {
  let ready: ComponentType<P> | undefined
  const fetchScreen = async () => {
    if (ready !== undefined) return ready
    ready = await load()
    // a script that has just run and what it draws make no one long turn
    if (!isAtRest.peek()) await nextTurn()
    return ready
  }
  return function Lazy(props: P) {
    const [state, setState] = useState<State<P>>(ready ? { is: 'ready', Screen: ready } : { is: 'loading' })
    useEffect(() => {
      if (state.is !== 'loading') return
      let alive = true
      const release = holdRest()
      fetchScreen().then(
        (Screen) => alive && setState({ is: 'ready', Screen }),
        () => alive && setState({ is: 'failed' }),
      )
      return () => {
        alive = false
        release()
      }
    }, [state])
    if (state.is === 'ready') return <state.Screen {...props} />
    if (state.is === 'failed') return <NotLoaded retry={() => setState({ is: 'loading' })} />
    return <>{meanwhile}</>
  }
}

function NotLoaded({ retry }: { readonly retry: () => void }) {
  return (
    <div class="notice" role="alert">
      <p>
        This part of the app could not be loaded. If the app was updated while it was open, reload the page; what you
        typed is kept.
      </p>
      <div class="actions">
        <button type="button" class="button" onClick={retry}>
          Try again
        </button>
        <button type="button" class="button" onClick={() => location.reload()}>
          Reload
        </button>
      </div>
    </div>
  )
}
