import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { waysHere } from '../../state/share.ts'
import { Icon } from './icon.tsx'

/** Puts a text on the clipboard; where that is refused the text stands there to be copied by hand. */
export function CopyButton(given: {
  readonly text: () => string
  readonly words: string
  /** another button about the same */
  readonly beside?: ComponentChildren
}) {
  const { text, words, beside } = given
  const [outcome, setOutcome] = useState<'none' | 'copied' | 'refused'>('none')
  const copy = async () => {
    try {
      const way = waysHere().copy
      if (way === undefined) throw new Error('No clipboard here.')
      await way(text())
      setOutcome('copied')
    } catch {
      setOutcome('refused')
    }
  }
  return (
    <p class="copy">
      {beside}
      <button type="button" class="link" onClick={() => void copy()}>
        <Icon name="copy" />
        {words}
      </button>
      <span class="muted small" role="status">
        {outcome === 'copied' ? ' Copied.' : ''}
      </span>
      {outcome === 'refused' && (
        <textarea class="share-text" readOnly rows={3} aria-label="Text to copy" value={text()} />
      )}
    </p>
  )
}
