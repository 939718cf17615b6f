import { useEffect, useState } from 'preact/hooks'
import { holdRest } from '../rest.ts'

/** A key that follows within this time finds the screen free: what is out of sight waits until typing rests. */
const REST_MS = 200

/**
 * The value before, until the screen has been painted with everything else that is new and no newer one came for a moment:
 * for what is out of sight. Undefined where none was painted yet; the first follows the first painting at once.
 */
export function useLater<T>(now: T, isAtOnce = false): T | undefined {
  const [later, setLater] = useState<{ readonly value: T } | undefined>(isAtOnce ? { value: now } : undefined)
  const isFirst = later === undefined
  const restMs = isFirst ? 0 : REST_MS
  // the first is a part of the screen that is to stand
  useEffect(() => (isFirst ? holdRest() : undefined), [isFirst])
  // an effect may come before the frame it belongs to, a timer set in that frame does not
  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const frame = requestAnimationFrame(() => {
      timer = setTimeout(() => setLater({ value: now }), restMs)
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
