import { useEffect, useState } from 'preact/hooks'

/**
 * The value, but a changed one only after what is drawn with it at once has been painted: what follows it is drawn in a
 * turn and a frame of its own, so that neither takes as long as both.
 */
export function useFrameLater<T>(value: T): T {
  const [later, setLater] = useState({ value })
  useEffect(() => setLater((now) => (now.value === value ? now : { value })), [value])
  return later.value
}

/**
 * The value for each of so many parts of a drawing: it comes to one part after the other, each in a turn and a frame of
 * its own, as above; where it changes meanwhile it goes on with the next one, so that none is passed over. A part it has
 * not come to yet has the value before, or none.
 */
export function useFrameByFrame<T>(value: T, count: number): readonly (T | undefined)[] {
  const [{ shown, last }, setState] = useState<{ readonly shown: readonly (T | undefined)[]; readonly last: number }>({
    shown: [],
    last: -1,
  })
  useEffect(() => {
    const parts = Array.from({ length: count }, (_, part) => part)
    const next = [...parts.slice(last + 1), ...parts.slice(0, last + 1)].find((part) => shown[part] !== value)
    if (next !== undefined) setState({ shown: parts.map((part) => (part === next ? value : shown[part])), last: next })
  }, [value, count, shown])
  return shown.slice(0, count)
}
