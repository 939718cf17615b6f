import type { ComponentChildren } from 'preact'
import type { Basis, Check, Finding, Rung, SaidBound, Success } from '../../calc/types.ts'
import { drawn, Figure, isAnswered, leadOutput } from './answer.tsx'
import { printed } from './figure.ts'
import { Icon } from './icon.tsx'
import { PictureView } from './picture.tsx'
import { Working } from './working.tsx'

type Given = { readonly check: Check; readonly result: Success; readonly live: boolean }

/** Further pictures, reasons, every other figure, bounds and rungs, each with its working one tap away. */
export function AnswerDetail({ check, result, live }: Given) {
  const lead = leadOutput(check, result)
  const others = check.outputs.filter((output) => output.key !== lead?.key && result.outputs[output.key] !== undefined)
  return (
    <div class={live ? 'answer-detail' : 'answer-detail stale'}>
      {drawn(result)
        .slice(1)
        .map((picture) => (
          <PictureView key={`${picture.is}${picture.title}`} picture={picture} bounds={result.bounds} />
        ))}
      <Findings findings={unsaid(result)} />
      {others.length > 0 && (
        <FigureList isAnswered={isAnswered(result)}>
          {others.map((output) => {
            const shown = result.outputs[output.key]
            return shown ? (
              <FoldedFigure key={output.key} label={output.label} basis={shown.basis}>
                <Figure outputKey={output.key} cell={shown.cell} output={output} live={live} />
              </FoldedFigure>
            ) : null
          })}
        </FigureList>
      )}
      <Bounds bounds={result.bounds} />
      <Rungs rungs={result.rungs} />
    </div>
  )
}

/** Figures that do not exist yet say why they do not, but stay folded, so that the fields are not far down. */
function FigureList({
  isAnswered: open,
  children,
}: {
  readonly isAnswered: boolean
  readonly children: ComponentChildren
}) {
  if (!open) {
    return (
      <details class="fold figures">
        <summary>No figures yet</summary>
        {children}
      </details>
    )
  }
  return (
    <section aria-label="Figures" class="figures">
      <h2>Figures</h2>
      {children}
    </section>
  )
}

/** Findings that no picture has said already, word for word. */
function unsaid(result: Success): readonly Finding[] {
  const said = new Set(
    result.pictures.flatMap((picture) =>
      picture.is === 'plot' ? picture.flags : picture.is === 'ladder' ? picture.faults : [],
    ),
  )
  return result.findings.filter((finding) => !said.has(finding.sentence))
}

function FoldedFigure(given: { readonly label: string; readonly basis: Basis; readonly children: ComponentChildren }) {
  return (
    <details class="figure-row">
      <summary>
        <span class="figure-label">{given.label}</span>
        {given.children}
      </summary>
      <Working basis={given.basis} />
    </details>
  )
}

export function Findings({ findings }: { readonly findings: readonly Finding[] }) {
  if (findings.length === 0) return null
  return (
    <ul class="findings" aria-label="Findings">
      {findings.map((finding) => (
        <li key={finding.sentence} class={`finding ${finding.verdict}`}>
          <Icon name={finding.verdict} />
          <span>{finding.sentence}</span>
        </li>
      ))}
    </ul>
  )
}

const NATURE_WORDS: Readonly<Record<SaidBound['nature'], string>> = {
  need: 'set by the attenuation needed',
  works: 'set by what the signal can stand',
  permitted: 'set by a document; above it is marginal',
  fits: 'set by what can be built',
}

function Bounds({ bounds }: { readonly bounds: readonly SaidBound[] }) {
  if (bounds.length === 0) return null
  return (
    <details class="fold figures">
      <summary>Bounds and their working</summary>
      {bounds.map((bound) => (
        <details key={`${bound.id}${bound.topology}`} class="figure-row">
          <summary>
            <span class="figure-label">
              {bound.topology === 'any' ? '' : `${topologyWord(bound.topology)}: `}
              {bound.why}
            </span>
            <span class="figure si">
              {bound.side === 'least' ? '≥ ' : '≤ '}
              {printed(bound.markedF, 'capacitance')}
            </span>
          </summary>
          <p>
            {bound.appliesTo}; {NATURE_WORDS[bound.nature]}.
          </p>
          {bound.openedBy.length > 0 && (
            <ul class="plain">
              {bound.openedBy.map((opener) => (
                <li key={opener.id}>{opener.sentence}</li>
              ))}
            </ul>
          )}
          <Working basis={bound.basis} />
        </details>
      ))}
    </details>
  )
}

export function topologyWord(topology: string): string {
  return topology === 'PI' ? 'Pi' : topology
}

function Rungs({ rungs }: { readonly rungs: readonly Rung[] }) {
  if (rungs.length === 0) return null
  return (
    <details class="fold figures">
      <summary>Rungs and their working</summary>
      {rungs.map((rung) => (
        <FoldedFigure key={rung.id} label={rung.label} basis={rung.basis}>
          <span class="figure si">
            {rung.minV === rung.maxV ? '' : `${printed(rung.minV, 'voltage')} to `}
            {printed(rung.maxV, 'voltage')}
          </span>
        </FoldedFigure>
      ))}
    </details>
  )
}
