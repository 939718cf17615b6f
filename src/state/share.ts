/** Hands a text and its address to somebody else: the system's share sheet, else the clipboard, else text to copy by hand. */

/** `url` is empty where nothing of it can be opened elsewhere. */
export type Shared = { readonly title: string; readonly text: string; readonly url: string }

/** `shown`: neither way is open here; the screen shows the text, selected. `dismissed`: the user closed the sheet. */
export type ShareOutcome = 'shared' | 'copied' | 'shown' | 'dismissed'

export type ShareWays = {
  readonly share?: ((data: ShareData) => Promise<void>) | undefined
  readonly copy?: ((text: string) => Promise<void>) | undefined
}

/** What travels: the answer in words, the statement that it is a screening estimate, and the address. */
export function sharedText(shared: Shared): string {
  return [shared.title, shared.text, shared.url].filter((part) => part !== '').join('\n')
}

/** The share ways this browser has, bound to it. */
export function waysHere(): ShareWays {
  return {
    share: typeof navigator.share === 'function' ? (data) => navigator.share(data) : undefined,
    copy: navigator.clipboard ? (text) => navigator.clipboard.writeText(text) : undefined,
  }
}

export async function share(shared: Shared, ways: ShareWays): Promise<ShareOutcome> {
  if (ways.share) {
    try {
      const { title, text, url } = shared
      await ways.share({ title, text, ...(url !== '' && { url }) })
      return 'shared'
    } catch (error) {
      if (error instanceof DOMException && error.name === 'AbortError') return 'dismissed'
    }
  }
  try {
    if (ways.copy) {
      await ways.copy(sharedText(shared))
      return 'copied'
    }
  } catch {
    return 'shown'
  }
  return 'shown'
}
