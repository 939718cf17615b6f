import { computed } from '@preact/signals'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { FIRST_EDITION, RULES_EDITION } from '../../calc/edition.ts'
import type { Check } from '../../calc/types.ts'
import { createCheck } from '../../state/check.ts'
import { addCheck, complaints } from '../../state/complaints.ts'
import { keptDesk, keptLine } from '../../state/desk.ts'
import { expressionReading } from '../../state/expression.ts'
import { hashOf, hashOfKept } from '../../state/router.ts'
import { readVariants, type Variants, writeVariants } from '../../state/variants.ts'
import { Text } from '../parts/book/terms.tsx'
import { Icon } from '../parts/icon.tsx'
import { withCheck } from '../parts/with-check.tsx'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'
import { isResumed } from '../shell/start.ts'
import { CheckPanes } from './check-panes.tsx'
import { CheckTerms } from './check-terms.tsx'
import { UndoButton } from './undo-button.tsx'

type Given = { readonly complaintId: string; readonly lineId: string; readonly checkId: string }

/** How far a line is there to be checked: what stands in the complaint around it is no part of that. */
function foundOf(complaintId: string, lineId: string): 'reading' | 'no complaint' | 'no line' | 'line' {
  if (complaints.value === undefined || !isResumed.value) return 'reading'
  if (!complaints.value.some(({ id }) => id === complaintId)) return 'no complaint'
  return keptLine(complaintId, lineId) === undefined ? 'no line' : 'line'
}

/** A check of a line of the log: it is part of the complaint, every step is saved there. */
export function KeptCheckScreen(given: Given) {
  const View = viewOf(given.checkId)
  return <View {...given} />
}

const viewOf = withCheck(Ready)

function Ready({ check, complaintId, lineId, checkId }: Given & { readonly check: Check | undefined }) {
  const path = hashOfKept(complaintId, lineId, checkId)
  const found = useMemo(() => computed(() => foundOf(complaintId, lineId)), [complaintId, lineId]).value
  if (!check) return <Nowhere path={path} what="check" />
  if (found === 'reading')
    return (
      <p class="loading" role="status">
        Reading the log…
      </p>
    )
  if (found === 'no complaint') return <Nowhere path={path} what="complaint on this device" />
  if (found === 'no line') return <Nowhere path={path} what="line in this complaint" />
  return <OpenCheck key={path} check={check} complaintId={complaintId} lineId={lineId} />
}

const complaintOf = (complaintId: string) => complaints.value?.find(({ id }) => id === complaintId)

/** The check as it is kept when it is opened; undefined when that is for the first time. */
const savedCheck = (complaintId: string, lineId: string, check: string) =>
  complaints
    .peek()
    ?.find(({ id }) => id === complaintId)
    ?.checks.find((one) => one.check === check && one.lineId === lineId)

type OpenGiven = { readonly check: Check; readonly complaintId: string; readonly lineId: string }

function OpenCheck({ check, complaintId, lineId }: OpenGiven) {
  const [saved] = useState(() => savedCheck(complaintId, lineId, check.id))
  const { desk, model } = useMemo(() => {
    const desk = keptDesk(complaintId, lineId)
    const kept = { check: check.id, lineId, rules: RULES_EDITION }
    const beside = saved?.beside ?? ''
    const opened = {
      ...desk,
      variants: readVariants(check.inputs, beside),
      keepVariants: (next: Variants) => addCheck(complaintId, { ...kept, beside: writeVariants(check.inputs, next) }),
    }
    return { desk, model: createCheck(check, opened, expressionReading) }
  }, [check, complaintId, lineId, saved])
  useEffect(() => model.dispose, [model])
  const judgedBy = saved && (saved.rules ?? FIRST_EDITION)
  useEffect(
    () => addCheck(complaintId, { check: check.id, lineId, rules: RULES_EDITION }),
    [check, complaintId, lineId],
  )
  // a key changes the complaint and the line: only what is shown of them here draws this anew
  const title = useMemo(() => computed(() => complaintOf(complaintId)?.title), [complaintId]).value
  const name = useMemo(() => computed(() => model.line.value.name), [model]).value
  return (
    <CheckTerms check={check}>
      <Head title={check.title}>
        <a class="up" href={hashOf('log', complaintId)}>
          <Icon name="back" />
          {title || 'Untitled complaint'}
        </a>
        <UndoButton model={model} />
        <p class="muted check-question">
          <Text of={check.question} />
          {name === '' ? '' : ` ${name}.`}
        </p>
      </Head>
      {judgedBy !== undefined && judgedBy < RULES_EDITION && (
        <p class="notice" role="status">
          This check was last judged by edition {judgedBy} of the rules. They have become stricter: it is judged again
          here, by edition {RULES_EDITION}, and may say less than it did.
        </p>
      )}
      <CheckPanes model={model} desk={desk} />
    </CheckTerms>
  )
}
