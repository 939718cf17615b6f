import type { ComponentChild, ComponentChildren } from 'preact'
import { useTurns } from '../turns.ts'
import { COMING } from './coming.tsx'

type Given = {
  /** 2: once it is on the glass too, a frame behind its painting */
  readonly turns?: number
  readonly meanwhile?: ComponentChild
  readonly children: ComponentChildren
}

/** On a first screen, what it holds comes once everything around it was painted; elsewhere at once. */
export function NextTurn({ turns = 1, meanwhile = COMING, children }: Given) {
  return useTurns(turns) < turns ? meanwhile : children
}
