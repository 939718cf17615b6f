import { CHECK_IDS, FACTS } from '../calc/ids.ts'
import type { CheckId, FactKey } from '../calc/types.ts'

/** True for the id of a check this version has. */
export const isCheckId = (value: unknown): value is CheckId => CHECK_IDS.some((id) => id === value)

/** True for a fact this version knows. */
export const isFactKey = (key: string): key is FactKey => Object.hasOwn(FACTS, key)
