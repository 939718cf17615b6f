import type { VNode } from 'preact'
import { useRef } from 'preact/hooks'

/** One of many: its key, all that its view is drawn from, and how. */
export type Drawing = { readonly key: string; readonly from: readonly unknown[]; readonly draw: () => VNode }

type Drawn = Pick<Drawing, 'from'> & { readonly view: VNode }

/** Views of many, of which a key changes one: the others are handed over as they were, and nothing looks into them. */
export function useUnchangedViews(all: readonly Drawing[]): readonly VNode[] {
  const drawn = useRef<ReadonlyMap<string, Drawn>>(new Map())
  const next = new Map<string, Drawn>()
  for (const { key, from, draw } of all) {
    const before = drawn.current.get(key)
    next.set(key, before !== undefined && isSame(before.from, from) ? before : { from, view: draw() })
  }
  drawn.current = next
  return [...next.values()].map(({ view }) => view)
}

const isSame = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i])
