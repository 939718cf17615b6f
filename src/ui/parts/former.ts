import { useRef } from 'preact/hooks'

/** The former of two that count as the same: what is drawn from it is not drawn anew for the other. */
export function useFormer<T>(now: T, isSame: (former: T, now: T) => boolean): T {
  const former = useRef(now)
  if (!isSame(former.current, now)) former.current = now
  return former.current
}
