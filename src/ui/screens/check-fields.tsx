import { useLayoutEffect, useRef, useState } from 'preact/hooks'
import { type Field, isUsual } from '../../calc/line/fields.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { EachField } from '../parts/each-field.tsx'
import { useUnchangedViews } from '../parts/unchanged-views.ts'
import { wantedField } from '../parts/wanted-field.ts'

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

/** Every input of the check. */
export function Fields(given: Given) {
  return (
    <>
      <OpenFields {...given} />
      <FieldGroups {...given} />
    </>
  )
}

/** The inputs that stand open; no more than `most` of them as yet. */
export function OpenFields({
  model,
  desk,
  most = Number.POSITIVE_INFINITY,
}: Given & { readonly most?: number | undefined }) {
  const open = model.fields.value.filter((field) => field.input.group === undefined)
  return (
    <>
      <h2 class="unseen">What is known</h2>
      <EachField model={model} desk={desk} fields={open.slice(0, most)} />
    </>
  )
}

/** The other inputs; those of a group fold together. */
export function FieldGroups({ model, desk }: Given) {
  const grouped = new Map<string, Field[]>()
  for (const field of model.fields.value) {
    const group = field.input.group
    if (group !== undefined) grouped.set(group, [...(grouped.get(group) ?? []), field])
  }
  const groups = useUnchangedViews(
    [...grouped].map(([group, members]) => ({
      key: group,
      from: [model, desk, ...members],
      draw: () => <Group key={group} model={model} desk={desk} group={group} members={members} />,
    })),
  )
  return <div class="groups">{groups}</div>
}

type GroupGiven = Given & { readonly group: string; readonly members: readonly Field[] }

/**
 * Folded, unless it opens with something refused in it; from then on it is the user's to open and close. Its fields are
 * drawn when it is first opened: most never are, and browsers look through all fields of a page for what they could fill in.
 */
function Group({ model, desk, group, members }: GroupGiven) {
  const fold = useRef<HTMLDetailsElement>(null)
  const [startsOpen] = useState(() => members.some((field) => field.state === 'refused'))
  const [wasOpened, setOpened] = useState(startsOpen)
  const isWanted = members.some(({ key }) => key === wantedField.value)
  useLayoutEffect(() => {
    if (!isWanted) return
    setOpened(true)
    fold.current?.setAttribute('open', '')
  }, [isWanted])
  return (
    <details
      ref={fold}
      class="fold group"
      open={startsOpen}
      onToggle={(event) => event.target === event.currentTarget && event.currentTarget.open && setOpened(true)}
    >
      <summary>
        {group}
        <span class="muted small">{groupNote(members)}</span>
      </summary>
      {(wasOpened || isWanted) && <EachField model={model} desk={desk} fields={members} />}
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
