import type { Origin } from '../../calc/types.ts'
import { titleOf } from '../../state/title-of.ts'

/** Where a text comes from, in words that go on a sentence: "36 dB from Need". */
export function originWords(origin: Origin): string {
  switch (origin.by) {
    case 'user':
      return 'typed'
    case 'kind':
      return 'from the line kind'
    case 'answer':
      return 'from your answer'
    case 'trial':
      return 'from a trial'
    case 'check':
      return `from ${titleOf(origin.check)}`
    case 'assumed':
      return `assumed: ${origin.why}`
  }
}
