import { useEffect, useRef, useState } from 'preact/hooks'
import { VERDICT_WORDS } from '../../calc/verdict.ts'
import type { CheckModel } from '../../state/check.ts'
import { standing } from '../../state/runner.ts'
import { leadOutput } from '../parts/answer.tsx'
import { outputText } from '../parts/figure.ts'
import { Icon } from '../parts/icon.tsx'

/** What stands at the foot of a check while the answer is out of sight: its verdict and its number. */
export function CheckFoot({ model }: { readonly model: CheckModel }) {
  const bar = useRef<HTMLDivElement>(null)
  const [isAway, setAway] = useState(false)
  useEffect(() => {
    const pane = bar.current?.parentElement?.querySelector('.answer-pane')
    if (!pane || typeof IntersectionObserver === 'undefined') return
    const watcher = new IntersectionObserver(([entry]) => setAway(entry !== undefined && !entry.isIntersecting))
    watcher.observe(pane)
    return () => watcher.disconnect()
  }, [])
  return (
    <div ref={bar} class={isAway ? 'mini shown' : 'mini'} aria-hidden="true">
      <InOneLine model={model} />
    </div>
  )
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
          {VERDICT_WORDS[shown.verdict]}
        </span>
      )}
      <span class="mini-label">{isLive ? (lead?.label ?? shown.headline) : 'Old answer'}</span>
      {lead && cell && <strong>{outputText(cell, lead)}</strong>}
    </>
  )
}
