import { checkById } from '../../calc/registry.ts'
import type { Origin } from '../../calc/types.ts'

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
      return `from ${checkById(origin.check)?.title ?? origin.check}`
    case 'assumed':
      return `assumed: ${origin.why}`
  }
}
