import { noteShared, offerFiles } from '../../state/offered-file.ts'

/** What a browser hands over that opened the app with a file. */
type LaunchQueue = {
  readonly setConsumer: (
    take: (launch: { readonly files?: readonly { readonly getFile: () => Promise<File> }[] }) => void,
  ) => void
}

const isFile = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true

/** A place of its own takes what is dropped on it, and so does a field for files. */
const isTaken = (event: DragEvent): boolean =>
  event.defaultPrevented || (event.target instanceof HTMLInputElement && event.target.type === 'file')

/** A file dropped anywhere, opened with the app, or shared to it, leads to the part of the Log where files come in. */
export function watchFiles(): void {
  // unless it is said to be taken, the browser would leave the app and show the file
  addEventListener('dragover', (event) => {
    if (isFile(event) && !isTaken(event)) event.preventDefault()
  })
  addEventListener('drop', (event) => {
    if (!isFile(event) || isTaken(event)) return
    event.preventDefault()
    const files = [...(event.dataTransfer?.files ?? [])]
    if (files.length > 0) offerFiles(files)
  })
  const { launchQueue }: { readonly launchQueue?: LaunchQueue } = window as Window & {
    readonly launchQueue?: LaunchQueue
  }
  launchQueue?.setConsumer(async ({ files = [] }) => {
    const read = await Promise.allSettled(files.map((one) => one.getFile()))
    const found = read.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []))
    if (found.length > 0) offerFiles(found)
    if (files.length > 0) noteShared(found.length === files.length)
  })
  // The worker keeps what was shared, and leads here.
  const shared = new URLSearchParams(location.search).get('shared')
  if (shared === null) return
  history.replaceState(history.state, '', location.pathname + location.hash)
  noteShared(shared !== '0')
}
