import { useEffect, useMemo } from 'preact/hooks'
import { checkById } from '../../calc/registry.ts'
import type { Check, Line } from '../../calc/types.ts'
import { createCheck, pairsForLine } from '../../state/check.ts'
import { expressionReading } from '../../state/expression.ts'
import { hashOf } from '../../state/router.ts'
import { leadOutput } from './answer.tsx'
import { cellText } from './figure.ts'
import { Strip } from './strip.tsx'
import { VerdictMark } from './verdict.tsx'

/** The window of a line, computed from its facts; what is missing is named, nothing is filled in. */
export function LineWindow({ line, title = 'Window' }: { readonly line: Line; readonly title?: string }) {
  const check = checkById('window')
  return check ? <OpenWindow key={line.id} check={check} line={line} title={title} /> : null
}

function OpenWindow({ check, line, title }: { readonly check: Check; readonly line: Line; readonly title: string }) {
  const pairs = useMemo(() => pairsForLine(check, line.facts, {}), [check, line.facts])
  const model = useMemo(() => createCheck(check, pairs, expressionReading), [check, pairs])
  useEffect(() => model.dispose, [model])
  const answer = model.answer.value
  const missing = model.fields.value.filter((field) => field.state === 'missing').map((field) => field.input.label)
  const result = answer.is === 'done' && answer.result.ok ? answer.result : undefined
  const strip = result?.pictures.find((picture) => picture.is === 'strip')
  const lead = result ? leadOutput(check, result) : undefined
  const cell = lead ? result?.outputs[lead.key]?.cell : undefined
  return (
    <section class="answer line-window" aria-label={title}>
      <div class="answer-top">
        <h2>{title}</h2>
        {result?.verdict && (
          <output aria-live="off" class="verdict" data-output="verdict" data-verdict={result.verdict}>
            <VerdictMark verdict={result.verdict} />
          </output>
        )}
      </div>
      {answer.is === 'working' && <p role="status">Working out the window…</p>}
      {lead && cell && (
        <p>
          {lead.label}:{' '}
          <output aria-live="off" data-output={lead.key} data-si={cell.is === 'si' ? String(cell.si) : ''}>
            <strong>{cellText(cell, lead.quantity, lead.digits)}</strong>
          </output>
        </p>
      )}
      {result && <p>{result.headline}</p>}
      {strip?.is === 'strip' && <Strip picture={strip} bounds={result?.bounds ?? []} />}
      {missing.length > 0 && <p class="muted">Still to find out: {missing.join(', ')}.</p>}
      <a class="button" href={hashOf('check', check.id, pairs)}>
        Open the window check
      </a>
    </section>
  )
}
