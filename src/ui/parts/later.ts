import { useEffect, useState } from 'preact/hooks'

/**
 * The value before, until the screen has been painted once with everything else that is new: for what is out of sight.
 * Undefined where none was painted yet.
 */
export function useLater<T>(now: T, isAtOnce = false): T | undefined {
  const [later, setLater] = useState<{ readonly value: T } | undefined>(isAtOnce ? { value: now } : undefined)
  // an effect may come before the frame it belongs to, a timer set in that frame does not
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const frame = requestAnimationFrame(() => {
      timer = setTimeout(() => setLater({ value: now }))
    })
    return () => {
      cancelAnimationFrame(frame)
      clearTimeout(timer)
    }
  }, [now])
  return isAtOnce ? now : later?.value
}

/** Whether something has been so for a while: what passes at once is not worth drawing. */
export function useLasting(isSo: boolean, afterMs: number): boolean {
  const [isLasting, setLasting] = useState(false)
  useEffect(() => {
    if (!isSo) return setLasting(false)
    const timer = setTimeout(() => setLasting(true), afterMs)
    return () => clearTimeout(timer)
  }, [isSo, afterMs])
  return isSo && isLasting
}
