import type { Desk } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { printSheet } from '../shell/offered-sheet.ts'

/** A card to fill in by pencil, with the steps of this trial or the values its window offers. */
export function PrintTrialCard({ desk, steps }: { readonly desk: Desk; readonly steps: readonly string[] }) {
  const print = () =>
    printSheet(
      import('../paper/trial-card.tsx').then(
        ({ layTrialCard }) =>
          () =>
            layTrialCard(desk.line.peek(), steps, expressionReading),
      ),
    )
  return (
    <button type="button" class="button" onClick={() => void print()}>
      Print a trial card
    </button>
  )
}
