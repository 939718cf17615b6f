import type { Verdict } from '../../calc/types.ts'
import { Icon } from './icon.tsx'

/** Words for a verdict; `ok` means inside the bounds that were entered, never more. */
export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  ok: 'fits',
  marginal: 'marginal',
  fails: 'fails',
  unknown: 'not known',
}

/** Mark, word and colour together: none of them alone. */
export function VerdictMark({ verdict, word }: { readonly verdict: Verdict; readonly word?: string }) {
  return (
    <span class={`verdict-mark ${verdict}`}>
      <Icon name={verdict} />
      <span>{word ?? VERDICT_WORDS[verdict]}</span>
    </span>
  )
}
