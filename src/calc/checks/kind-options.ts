/** Line kinds as the options of a choice. */
import { LINE_KINDS } from '../../reference/line-kinds.ts'
import type { Option } from '../types.ts'

export const lineKindOptions: readonly Option[] = LINE_KINDS.map((k) => ({ value: k.id, label: k.name }))
