import type { Field } from '../../calc/line/fields.ts'
import type { CheckModel } from '../../state/check.ts'
import type { Desk } from '../../state/desk.ts'
import { FieldView } from './field.tsx'
import { useUnchangedViews } from './unchanged-views.ts'

type Given = { readonly model: CheckModel; readonly desk: Desk; readonly fields: readonly Field[] }

/** Fields of a check, each drawn again only where something about it is new. */
export function EachField({ model, desk, fields }: Given) {
  const unsaidKey = model.unsaidKey.value
  const views = useUnchangedViews(
    fields.map((field) => ({
      key: field.key,
      from: [model, desk, field, unsaidKey === field.key],
      draw: () => (
        <FieldView
          key={field.key}
          field={field}
          onType={(text, base) => model.type(field.key, text, base)}
          onTake={(other) => model.take(field.key, other)}
          onTakeText={(text, left) => model.takeText(field.key, text, left)}
          addressOf={desk.addressOf}
          isUnsaid={unsaidKey === field.key}
          onLeave={model.leave}
        />
      ),
    })),
  )
  return <>{views}</>
}
