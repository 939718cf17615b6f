import { useState } from 'preact/hooks'
import { type Field, isUsual } from '../../calc/line/fields.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { EachField } from '../parts/each-field.tsx'
import { useSliced } from '../parts/sliced.ts'
import { useUnchangedViews } from '../parts/unchanged-views.ts'

/** Keys of the address that this check does not know. */
export function Strangers({ model }: { readonly model: CheckModel }) {
  if (model.strangers.length === 0) return null
  const names = model.strangers.map(({ key, text }) => `${key}=${text}`).join(', ')
  return (
    <p class="notice" role="status">
      The address holds what this check does not know and did not use: <code>{names}</code>. It stays in the address.
    </p>
  )
}

type Given = { readonly model: CheckModel; readonly desk: Desk }

/** Every input of the check; those of a group fold together. */
export function Fields({ model, desk }: Given) {
  const fields = model.fields.value
  const grouped = new Map<string, Field[]>()
  for (const field of fields) {
    const group = field.input.group
    if (group !== undefined) grouped.set(group, [...(grouped.get(group) ?? []), field])
  }
  const drawn = useSliced(grouped.size)
  const groups = useUnchangedViews(
    [...grouped].map(([group, members], i) => ({
      key: group,
      from: [model, desk, i < drawn, ...members],
      draw: () => <Group key={group} model={model} desk={desk} group={group} members={members} isDrawn={i < drawn} />,
    })),
  )
  return (
    <>
      <h2 class="unseen">What is known</h2>
      <EachField model={model} desk={desk} fields={fields.filter((field) => field.input.group === undefined)} />
      <div class="groups">{groups}</div>
    </>
  )
}

type GroupGiven = Given & {
  readonly group: string
  readonly members: readonly Field[]
  /** its fields follow the first painting, one group after the other: most are never opened */
  readonly isDrawn: boolean
}

/** Folded, unless it opens with something refused in it; from then on it is the user's to open and close. */
function Group({ model, desk, group, members, isDrawn }: GroupGiven) {
  const [startsOpen] = useState(() => members.some((field) => field.state === 'refused'))
  const [wasOpened, setOpened] = useState(startsOpen)
  const isFilled = isDrawn || wasOpened
  return (
    <details
      class="fold group"
      open={startsOpen}
      aria-busy={!isFilled}
      onToggle={(event) => event.target === event.currentTarget && event.currentTarget.open && setOpened(true)}
    >
      <summary>
        {group}
        <span class="muted small">{groupNote(members)}</span>
      </summary>
      {isFilled && <EachField model={model} desk={desk} fields={members} />}
    </details>
  )
}

/** What a folded group holds that was entered or taken over; what is assumed in it is counted beside the answer. */
function groupNote(members: readonly Field[]): string {
  const values = members.filter((field) => field.state === 'value' && !isUsual(field) && field.origin !== undefined)
  const taken = values.filter(({ origin }) => origin?.by !== 'user').length
  const parts = [`${values.length - taken} entered`, `${taken} taken over`].filter((part) => !part.startsWith('0'))
  return parts.length > 0 ? ` ${parts.join(', ')}` : ''
}
