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
 * its own, as above. A part it has not come to yet has the value before, or none.
 */
export function useFrameByFrame<T>(value: T, count: number): readonly (T | undefined)[] {
  const [shown, setShown] = useState<readonly (T | undefined)[]>([])
  useEffect(() => {
    const parts = Array.from({ length: count }, (_, part) => shown[part])
    const next = parts.findIndex((one) => one !== value)
    if (next >= 0) setShown(parts.map((one, part) => (part === next ? value : one)))
  }, [value, count, shown])
  return shown.slice(0, count)
}
