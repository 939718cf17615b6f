import type { ComponentChildren } from 'preact'
import { useMemo } from 'preact/hooks'
import type { Check } from '../../calc/types.ts'
import { TermsIn } from '../parts/book/terms.tsx'

/** Around a check: the words of the trade in its question and in the help of its fields. */
export function CheckTerms({ check, children }: { readonly check: Check; readonly children: ComponentChildren }) {
  const texts = useMemo(() => [check.question, ...check.inputs.map(({ help }) => help)], [check])
  return <TermsIn texts={texts}>{children}</TermsIn>
}
