import { durationWords } from '../../guide/duration.ts'
import type { Evidence } from '../../guide/investigation.ts'
import { Text } from './book/terms.tsx'

/** How a test is done: Do, With, Expect. What each reading means stands on its button. */
export function TestCard({ item }: { readonly item: Evidence }) {
  const { card, minutes } = item
  if (card === undefined) return null
  return (
    <section class="test-card" aria-label="Test card">
      <h2>Do</h2>
      <ol class="numbered">
        {card.do.map((step) => (
          <li key={step}>
            <Text of={step} />
          </li>
        ))}
      </ol>
      <h2>With</h2>
      <ul class="with">
        {card.with.map(({ instrument, setting }) => (
          <li key={instrument}>
            <Text of={`${instrument}: ${setting}`} />
          </li>
        ))}
      </ul>
      <h2>Expect</h2>
      <p>
        <Text of={card.expect} />
      </p>
      <p class="muted small">About {durationWords(minutes)}, getting at it included.</p>
    </section>
  )
}
