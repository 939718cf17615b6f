import { installEvent } from '../shell/install-event.ts'

/** A quiet way to install; on phones whose browser offers none, how to do it by hand. */
export function Install() {
  if (matchMedia('(display-mode: standalone)').matches) return null
  const event = installEvent.value
  if (event) {
    return (
      <button type="button" class="button" onClick={() => void event.prompt()}>
        Install on this device
      </button>
    )
  }
  return (
    <p class="muted small">
      To keep it at hand, add this page to the home screen from the browser’s menu (on an iPad or iPhone: Share, then
      Add to Home Screen). Installed, its storage is kept longer.
    </p>
  )
}
