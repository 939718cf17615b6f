import { signal } from '@preact/signals'

/** The browser's own install question, as far as it offers one. */
export type InstallEvent = Event & { readonly prompt: () => Promise<unknown> }

export const installEvent = signal<InstallEvent | undefined>(undefined)

/** Keeps the event for the Install button of About instead of letting a banner pop up. */
export function watchInstall(): void {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    if ('prompt' in event) installEvent.value = event as InstallEvent
  })
  addEventListener('appinstalled', () => {
    installEvent.value = undefined
  })
}
