import { useEffect, useRef, useState } from 'preact/hooks'
import { SAFETY_TEXTS } from '../../reference/safety.ts'
import { type Shared, type ShareOutcome, share, sharedText, waysHere } from '../../state/share.ts'
import { printNow } from '../shell/offered-sheet.ts'
import { Icon } from './icon.tsx'

const WORDS: Readonly<Record<ShareOutcome, string>> = {
  shared: 'Shared.',
  copied: 'Copied: paste it where you need it.',
  shown: 'Copy the text below by hand.',
  dismissed: '',
}

type ShareGiven = {
  readonly title: string
  /** what is said; worked out only when somebody shares, where it takes work */
  readonly words: string | (() => string)
  /** none where nothing of it can be opened elsewhere */
  readonly hash?: string
}

/** Hands the answer and its address on; what travels always says that it is a screening estimate. */
export function ShareButton({ title, words, hash }: ShareGiven) {
  const [outcome, setOutcome] = useState<ShareOutcome | undefined>(undefined)
  const box = useRef<HTMLTextAreaElement>(null)
  const shared = (): Shared => ({
    title,
    text: `${typeof words === 'string' ? words : words()}\n${SAFETY_TEXTS.screening.text}`,
    url: hash === undefined ? '' : new URL(hash, document.baseURI).href,
  })
  useEffect(() => {
    if (outcome === 'shown') box.current?.select()
  }, [outcome])
  return (
    <>
      <button type="button" class="button" onClick={() => void share(shared(), waysHere()).then(setOutcome)}>
        <Icon name="share" />
        Share
      </button>
      <p class="action-note" role="status">
        {outcome ? WORDS[outcome] : ''}
      </p>
      {outcome === 'shown' && (
        <textarea
          ref={box}
          class="share-text"
          readOnly
          rows={6}
          aria-label="Text to share"
          value={sharedText(shared())}
        />
      )}
    </>
  )
}

export function PrintButton() {
  return (
    <button type="button" class="button" onClick={() => void printNow()}>
      <Icon name="print" />
      Print
    </button>
  )
}
