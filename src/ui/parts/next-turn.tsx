import type { ComponentChildren } from 'preact'
import { useTurns } from '../turns.ts'
import { COMING } from './coming.tsx'

/** On a first screen, what it holds comes once everything around it was painted; elsewhere at once. */
export function NextTurn({ children }: { readonly children: ComponentChildren }) {
  return useTurns(1) < 1 ? COMING : children
}
