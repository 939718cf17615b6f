/** A word of the trade, in one line. */
export type GlossaryWord = {
  readonly word: string
  /** other spellings, and words that mean the same; each is a tap target as the word is */
  readonly forms?: readonly string[]
  readonly line: string
  /** an everyday word too: listed and found, and no tap target in running text */
  readonly everyday?: true
  /** the page that says more */
  readonly page?: string
}
