import { SCREENING } from '../../reference/screening.ts'

/** What every answer and every sheet says. */
export function Screening() {
  return (
    <p class="screening">
      <strong>{SCREENING.title}.</strong> {SCREENING.text}
    </p>
  )
}
