import { appVersion, buildDate, dataEdition } from '../../state/version.ts'

/** Stands on paper only: what this sheet is, from which version, and when it was printed. */
export function PrintHead() {
  return (
    <p class="print-only print-head">
      Stillpin {appVersion}, built {buildDate}, {dataEdition}. Printed {new Date().toISOString().slice(0, 10)}.
      Screening estimate, not approved data.
    </p>
  )
}
