/** The field notes, in the order of their list: basics, measuring, tests, parts, tables, rules and safety. */
import { BASIC_NOTES } from './notes/basics.ts'
import { MEASURING_NOTES } from './notes/measuring.ts'
import { PART_NOTES } from './notes/parts.ts'
import { SAFETY_NOTES } from './notes/rules-and-safety.ts'
import { TABLE_NOTES } from './notes/tables.ts'
import { TEST_NOTES } from './notes/tests.ts'
import type { FieldNote } from './types.ts'

/** Every field note; ids are permanent. */
export const FIELD_NOTES: readonly FieldNote[] = [
  ...BASIC_NOTES,
  ...MEASURING_NOTES,
  ...TEST_NOTES,
  ...PART_NOTES,
  ...TABLE_NOTES,
  ...SAFETY_NOTES,
]
