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
