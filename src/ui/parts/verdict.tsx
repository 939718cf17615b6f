import { useContext } from 'preact/hooks'
import type { Success, Verdict } from '../../calc/types.ts'
import { aroundWord, sentenceOf, VERDICT_WORDS } from '../../calc/verdict.ts'
import { Icon } from './icon.tsx'
import { IsLive } from './live.ts'

/** Mark, word and colour together: none of them alone. */
export function VerdictMark({ verdict, word }: { readonly verdict: Verdict; readonly word?: string }) {
  return (
    <span class={`verdict-mark ${verdict}`}>
      <Icon name={verdict} />
      <span>{word ?? VERDICT_WORDS[verdict]}</span>
    </span>
  )
}

/**
 * The sentence of an answer with its verdict marked where it is said. A number that is the answer has the mark before it
 * and no word. Only the page's own answer has the verdict an address promises.
 */
export function AnswerSentence({ result }: { readonly result: Success }) {
  const live = useContext(IsLive)
  const { verdict } = result
  if (verdict === undefined) return <>{result.headline}</>
  const names = live ? { id: 'verdict', 'data-verdict': verdict } : { 'data-output': 'verdict' }
  const sentence = sentenceOf(result)
  const { before, word, after } = aroundWord(sentence, verdict) ?? { before: '', word: '', after: ` ${sentence}` }
  // The stop behind the word never starts a line.
  const [stop = ''] = /^[.:,;]?/u.exec(after) ?? []
  const rest = after.slice(stop.length)
  return (
    <>
      {before}
      <span class="unbroken">
        <output aria-live="off" class="verdict" {...names}>
          <VerdictMark verdict={verdict} word={word} />
        </output>
        {stop}
      </span>
      {rest}
    </>
  )
}
