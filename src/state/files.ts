/** Hands a file on: to the system's share sheet where that takes files, else onto this device. */

export type OwnFile = { readonly name: string; readonly type: string; readonly content: string | Blob }

/** `dismissed`: the user closed the sheet; `saved`: the browser was given it to save. */
export type FileOutcome = 'shared' | 'saved' | 'dismissed'

export type FileWays = {
  readonly canShare?: ((data: ShareData) => boolean) | undefined
  readonly share?: ((data: ShareData) => Promise<void>) | undefined
  readonly save: (file: File) => void
}

/** The ways this browser has, bound to it. */
export function fileWaysHere(): FileWays {
  return {
    canShare: typeof navigator.canShare === 'function' ? (data) => navigator.canShare(data) : undefined,
    share: typeof navigator.share === 'function' ? (data) => navigator.share(data) : undefined,
    save,
  }
}

const asFile = ({ name, type, content }: OwnFile): File => new File([content], name, { type })

/** Whether files of this type may be shared here. */
export function canShareFiles(ways: FileWays, type: string): boolean {
  try {
    return ways.canShare?.({ files: [new File([''], 'a', { type })] }) === true
  } catch {
    return false
  }
}

/** Shares the file; where that is not allowed it is saved instead, so that it is never lost. */
export async function shareFile(own: OwnFile, title: string, ways: FileWays): Promise<FileOutcome> {
  const file = asFile(own)
  if (ways.share && canShareFiles(ways, own.type)) {
    try {
      await ways.share({ title, files: [file] })
      return 'shared'
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'dismissed'
    }
  }
  ways.save(file)
  return 'saved'
}

export const saveFile = (own: OwnFile, ways: FileWays): void => ways.save(asFile(own))

/** A browser may still be reading the file when the click returns. */
const KEPT_MS = 60_000

function save(file: File): void {
  const url = URL.createObjectURL(file)
  const link = document.createElement('a')
  link.href = url
  link.download = file.name
  link.click()
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS)
}

const LONGEST_NAME = 60

/** A name every file system takes: letters, digits and dashes of the parts, and the ending. */
export function fileName(parts: readonly string[], ending: string): string {
  const name = parts
    .map((part) =>
      part
        .normalize('NFKD')
        .replaceAll(/\p{M}/gu, '')
        .replaceAll(/[^A-Za-z0-9]+/g, '-'),
    )
    .map((part) => part.replaceAll(/^-+|-+$/g, ''))
    .filter((part) => part !== '')
    .join('-')
    .slice(0, LONGEST_NAME)
  return `${name === '' ? 'connector' : name}.${ending}`
}
