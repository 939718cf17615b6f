/** Addresses of what a sheet draws: they open anywhere, and name no complaint. */
import { asDecided, type SheetWindow } from '../calc/connector/sheet/grounds.ts'
import type { Connector } from '../calc/connector/types.ts'
import { checkById } from '../calc/registry.ts'
import { addressFor } from './check.ts'
import { expressionReading } from './expression.ts'

/** The address that brings a window back in the app, with all its answer rests on. */
export function windowHash(window: Pick<SheetWindow, 'line' | 'decided' | 'chosenH'>, { shared }: Connector): string {
  const check = checkById('window')
  return check ? addressFor(check, asDecided(window, shared), expressionReading) : '#/check'
}
