import { computed } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import type { Success } from '../../calc/types.ts'
import { type CheckModel, createCheck } from '../../state/check.ts'
import { expressionReading } from '../../state/expression.ts'
import { standing } from '../../state/runner.ts'
import { type Differs, lineOfVariant, VARIANT_IDS, type VariantId } from '../../state/variants.ts'
import { Table } from '../parts/table.tsx'
import { VariantAnswer } from './compare-answer.tsx'
import { Changes } from './compare-changes.tsx'
import { comparedTable, sharedSpan, type Variant } from './compare-shape.ts'

/** Two or three variants of a check side by side: what is changed, what each answers, on one axis and in one table. */
export function Compare({ model }: { readonly model: CheckModel }) {
  const b = useVariant(model, 'b')
  const c = useVariant(model, 'c')
  const { variants } = model
  const beside = [b, c].filter(({ id }) => variants.value[id] !== undefined)
  const change = (id: VariantId, differs: Differs | undefined) => {
    const { [id]: _before, ...others } = variants.peek()
    model.setVariants(differs === undefined ? others : { ...others, [id]: differs })
  }
  const free = VARIANT_IDS.find((id) => variants.value[id] === undefined)
  const keys = model.check.inputs
    .map(({ key }) => key)
    .filter((key) => beside.some(({ id }) => variants.value[id]?.[key] !== undefined))
  const all = [{ name: 'A', id: undefined, model }, ...beside.map((each) => ({ ...each, name: each.id.toUpperCase() }))]
  const shown: readonly Variant[] = all.map(({ name, model: own }) => ({
    name,
    fields: own.fields.value,
    result: resultOf(own),
  }))
  const span = sharedSpan(shown.flatMap(({ result }) => result ?? []))
  return (
    <div class="compare stack">
      <div class="variants">
        {all.map(({ name, id, model: own }) => (
          <section key={name} class="variant" aria-label={`Variant ${name}`}>
            <h3>{id === undefined ? 'A, as entered' : name}</h3>
            <Changes
              keys={keys}
              model={own}
              {...(id !== undefined && {
                id,
                differs: variants.value[id] ?? {},
                onChange: (differs: Differs | undefined) => change(id, differs),
              })}
            />
            <VariantAnswer model={own} span={span} />
          </section>
        ))}
      </div>
      {free !== undefined && (
        <button type="button" class="button" onClick={() => change(free, {})}>
          Add variant {free.toUpperCase()}
        </button>
      )}
      {beside.length > 0 && <Table picture={comparedTable(model.check, keys, shown)} />}
    </div>
  )
}

const resultOf = (model: CheckModel): Success | undefined => standing(model.answer.value).shown

/** The check on the Line of a variant; nothing is written through it. */
function useVariant(model: CheckModel, id: VariantId): { readonly id: VariantId; readonly model: CheckModel } {
  const differs = model.variants.value[id] ?? {}
  // a text that cannot be read is shown in its field whatever it is, as in the check itself
  const ownKeys = Object.keys(differs).join(' ')
  const own = useMemo(() => {
    const line = computed(() =>
      lineOfVariant(model.check, model.line.value, model.variants.value[id] ?? {}, expressionReading),
    )
    const opened = { line, write: () => undefined, ownKeys: ownKeys.split(' ') }
    return createCheck(model.check, opened, expressionReading)
  }, [model, id, ownKeys])
  useEffect(() => own.dispose, [own])
  return { id, model: own }
}
