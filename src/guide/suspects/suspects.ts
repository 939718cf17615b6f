/** Every suspect, in list order: sources, paths, victims. */
import type { Suspect } from '../investigation.ts'
import { PATH_SUSPECTS } from './paths.ts'
import { SOURCE_SUSPECTS } from './sources.ts'
import { VICTIM_SUSPECTS } from './victims.ts'

/** The table; ids are permanent. */
export const SUSPECTS: readonly Suspect[] = [...SOURCE_SUSPECTS, ...PATH_SUSPECTS, ...VICTIM_SUSPECTS]
