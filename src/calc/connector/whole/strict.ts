/** What nobody entered of a suppressor and its capacitor, taken the stricter way: nothing that is found may rest on a kindly guess. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import type { SurgeGiven } from '../../checks/surge/inputs.ts'
import { type Contrary, contraryOf, type Field } from '../../line/fields.ts'
import { hasCapacitor } from '../../network/circuit.ts'
import { formatExact } from '../../quantity/format.ts'
import type { Line } from '../../types.ts'
import type { DecidedContact } from '../decided.ts'

export type Strict = {
  readonly values: SurgeGiven
  /** "temperature 85 °C" */
  readonly taken: readonly string[]
}

/** Every field of the surge; those of `keys` that were kindly assumed with their contrary. The bias only of a capacitor. */
export function strictly(
  fields: readonly Field[],
  line: Line,
  { part, keys }: { readonly part: DecidedContact['part']; readonly keys: readonly string[] },
): Strict {
  const kind = lineKindById(line.facts.lineKind?.text.trim() ?? '')
  const values: Record<string, Field['value']> = Object.fromEntries(fields.map(({ key, value }) => [key, value]))
  const taken: string[] = []
  for (const field of fields) {
    const isAsked = field.key !== 'biasFrac' || (part !== undefined && hasCapacitor(part.topology))
    const contrary = keys.includes(field.key) && isAsked ? contraryOf(field, kind) : undefined
    if (contrary === undefined) continue
    values[field.key] = contrary.field.value
    taken.push(`${field.input.label.toLowerCase()} ${shown(contrary)}`)
  }
  return { values: values as SurgeGiven, taken }
}

const shown = ({ field: { input, value }, text }: Contrary): string =>
  input.type.is === 'number' && typeof value === 'number' ? formatExact(value, input.type.quantity) : text
