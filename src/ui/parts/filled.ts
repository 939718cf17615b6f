import { computed } from '@preact/signals'
import { useMemo } from 'preact/hooks'
import type { Filled } from '../../guide/fill-ins.ts'
import { filledOf } from '../../state/fill-in.ts'

/** What was filled in of a complaint, or of the triage: drawn anew when that changes, not with every key elsewhere. */
export const useFilled = (complaintId: string | undefined): Filled | undefined =>
  useMemo(() => computed(() => filledOf(complaintId)), [complaintId]).value
