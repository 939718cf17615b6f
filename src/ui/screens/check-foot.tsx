import type { RefObject } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { wordOf } from '../../calc/verdict.ts'
import type { CheckModel } from '../../state/check.ts'
import { standing } from '../../state/runner.ts'
import { leadOutput } from '../parts/answer.tsx'
import { outputText } from '../parts/figure.ts'
import { Icon } from '../parts/icon.tsx'
import { PrefixKeys } from '../parts/prefix-keys.tsx'
import { useRootMark } from '../parts/root-mark.ts'

type Given = { readonly model: CheckModel; readonly form: RefObject<HTMLElement | null> }

/** What stands at the foot of a check: verdict and number while the answer is out of sight, and keys for the field typed in. */
export function CheckFoot({ model, form }: Given) {
  const foot = useRef<HTMLDivElement>(null)
  const [isAway, setAway] = useState(false)
  useEffect(() => {
    const pane = foot.current?.parentElement?.querySelector('.answer-pane')
    if (!pane || typeof IntersectionObserver === 'undefined') return
    const watcher = new IntersectionObserver((seen) => setAway(seen.at(-1)?.isIntersecting === false))
    watcher.observe(pane)
    return () => watcher.disconnect()
  }, [])
  useRootMark('mini', isAway)
  useAboveKeyboard(foot)
  return (
    <div ref={foot} class="foot">
      <div class={isAway ? 'mini shown' : 'mini'} aria-hidden="true">
        <InOneLine model={model} />
      </div>
      <PrefixKeys form={form} />
    </div>
  )
}

/** Keeps the foot above a keyboard that lies over the page: only the visual viewport knows of it. */
function useAboveKeyboard(foot: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const seen = window.visualViewport
    if (!seen) return
    const place = () => {
      const hiddenPx = Math.max(0, innerHeight - seen.height - seen.offsetTop)
      foot.current?.style.setProperty('--hidden-below', `${hiddenPx}px`)
    }
    place()
    seen.addEventListener('resize', place)
    seen.addEventListener('scroll', place)
    return () => {
      seen.removeEventListener('resize', place)
      seen.removeEventListener('scroll', place)
    }
  }, [foot])
}

function InOneLine({ model }: { readonly model: CheckModel }) {
  const answer = model.answer.value
  const { shown, isLive } = standing(answer)
  if (shown === undefined)
    return <span class="mini-label">{answer.is === 'working' ? 'Working' : 'No answer yet'}</span>
  const lead = leadOutput(model.check, shown)
  const cell = lead && shown.outputs[lead.key]?.cell
  return (
    <>
      {shown.verdict && (
        <span class={`verdict-mark ${shown.verdict}`}>
          <Icon name={shown.verdict} />
          {wordOf(shown)}
        </span>
      )}
      <span class="mini-label">{isLive ? (lead?.label ?? shown.headline) : 'Old answer'}</span>
      {lead && cell && <strong>{outputText(cell, lead)}</strong>}
    </>
  )
}
