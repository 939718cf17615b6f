import { useLayoutEffect } from 'preact/hooks'

/** The mark says how many stand there, and goes with the last of them. */
function count(name: string, more: number): void {
  const { dataset } = document.documentElement
  const now = Number(dataset[name] ?? 0) + more
  if (now > 0) dataset[name] = `${now}`
  else delete dataset[name]
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
