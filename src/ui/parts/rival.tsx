type Given = {
  /** what the texts are: "title", "note" */
  readonly what: string
  /** the text in the field */
  readonly shown: string
  /** the text that counts for now */
  readonly stored: string
  readonly rivals: readonly { readonly text: string }[]
  /** one text is taken; `left` are the others that were seen */
  readonly onTake: (text: string, left: readonly string[]) => void
}

/** Other texts for the same field, typed in another window at the same time: both are kept until one is taken. */
export function Rivals({ what, shown, stored, rivals, onTake }: Given) {
  const all = [...new Set([shown, stored, ...rivals.map(({ text }) => text)])]
  const others = all.filter((text) => text !== shown && text.trim() !== '')
  if (others.length === 0) return null
  const take = (chosen: string) =>
    onTake(
      chosen,
      all.filter((text) => text !== chosen),
    )
  return (
    <div class="notice rivals" role="status">
      <p>Another window holds another {what}. Both are kept until you take one.</p>
      {others.map((text) => (
        <div key={text} class="stack">
          <blockquote>{text}</blockquote>
          <div class="actions">
            <button type="button" class="button" onClick={() => take(text)}>
              Take this one
            </button>
          </div>
        </div>
      ))}
      <div class="actions">
        <button type="button" class="button" onClick={() => take(shown)}>
          Keep the {what} in the field
        </button>
      </div>
    </div>
  )
}
