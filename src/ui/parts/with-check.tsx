import type { ComponentType } from 'preact'
import { CHECK_IDS } from '../../calc/ids.ts'
import { oneCheck } from '../../calc/one-check.ts'
import type { Check } from '../../calc/types.ts'
import { lazy } from '../lazy.tsx'

/** A screen for a check by its id: what only this check computes with is fetched with it, and no other check. */
export function withCheck<P extends object>(
  Screen: ComponentType<P & { readonly check: Check | undefined }>,
): (id: string) => ComponentType<P> {
  const views = new Map<string, ComponentType<P>>()
  const Nothing = given(undefined)
  return (id) => {
    const known = views.get(id)
    if (known !== undefined) return known
    if (!CHECK_IDS.some((one) => one === id)) return Nothing
    const view = lazy(async () => given(await oneCheck(id)))
    views.set(id, view)
    return view
  }
  function given(check: Check | undefined): ComponentType<P> {
    return (props) => <Screen {...props} check={check} />
  }
}
