import { useLayoutEffect } from 'preact/hooks'

const standing = new Map<string, number>()

/** As many as stand there; the mark goes with the last of them. */
function count(name: string, more: number): void {
  const now = (standing.get(name) ?? 0) + more
  standing.set(name, now)
  if (now > 0) document.documentElement.dataset[name] = ''
  else delete document.documentElement.dataset[name]
}

/**
 * Marks the page (`data-<name>` of its root) while this is so: for styles of what stands elsewhere. Asked with `:has()` of
 * the whole page they would be looked for through all of it whenever anything is drawn.
 */
export function useRootMark(name: string, isSo = true): void {
  useLayoutEffect(() => {
    if (!isSo) return
    count(name, 1)
    return () => count(name, -1)
  }, [name, isSo])
}
