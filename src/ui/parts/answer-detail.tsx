import type { ComponentChildren, VNode } from 'preact'
import { useMemo, useRef, useState } from 'preact/hooks'
import type { Basis, Cell, Check, Finding, Output, Picture, Rung, Success } from '../../calc/types.ts'
import { lazy } from '../lazy.tsx'
import { drawn, Figure, leadOutput } from './answer.tsx'
import { Bounds } from './bound-list.tsx'
import { IsUnfolded } from './coming.tsx'
import { CopyButton } from './copy-button.tsx'
import { outputText, printed } from './figure.ts'
import { Findings } from './findings.tsx'
import { useInSight } from './in-sight.ts'
import { useLater } from './later.ts'
import { IsLive } from './live.ts'
import { NextTurn } from './next-turn.tsx'
import { PictureView } from './picture.tsx'
import { RowSlices } from './row-slices.tsx'
import { useSliced } from './sliced.ts'
import { StripTable, StripWords } from './strip-words.tsx'
import { Working } from './working.tsx'

const InTheBook = lazy(async () => (await import('./book/in-the-book.tsx')).InTheBook, null)

type Given = { readonly check: Check; readonly result: Success }

/** Figures that stand open beside that of the answer; a check lists its own in the order of their weight. */
const MOST_FIGURES = 6

/**
 * What explains the answer: the picture one acts on and the first figures at once, the evidence one tap away. What is out
 * of sight follows once the answer is painted; an old one is dimmed without being drawn again.
 */
export function AnswerDetail({
  check,
  result,
  live,
  isOld,
}: Given & { readonly live: boolean; readonly isOld: boolean }) {
  const box = useRef<HTMLDivElement>(null)
  const isInSight = useInSight(box, isWide)
  const told = useLater(result, isInSight)
  const open = useMemo(() => told && <Open check={check} result={told} />, [check, told])
  return (
    <div ref={box} class={isOld ? 'answer-detail stale' : 'answer-detail'} aria-busy={told !== result}>
      <IsLive.Provider value={live && told === result}>{open}</IsLive.Provider>
      {told && (
        <NextTurn>
          <Evidence check={check} result={told} live={live && told === result} />
        </NextTurn>
      )}
    </div>
  )
}

function Open({ check, result }: Given) {
  const pictures = drawn(result)
  return (
    <>
      {views(
        pictures.filter((picture) => isActedOn(picture, pictures)),
        result,
      )}
      <NextTurn>
        <FigureLine check={check} result={result} />
      </NextTurn>
    </>
  )
}

/** A strip shows where a value may lie, a ladder what stands too high, a table that comes first what to choose: not folded away. */
const isActedOn = (picture: Picture, [first]: readonly Picture[]): boolean =>
  picture.is === 'strip' ||
  (picture.is === 'ladder' && picture.faults.length > 0 && first?.is !== 'table') ||
  (picture.is === 'table' && picture === first)

const views = (pictures: readonly Picture[], { bounds }: Success): readonly VNode[] =>
  pictures.map((picture) => (
    <PictureView key={`${picture.is}${picture.title}`} picture={picture} bounds={bounds} bare />
  ))

const isWide = (): boolean => typeof matchMedia === 'function' && matchMedia('(min-width: 56.25rem)').matches

/**
 * Folded on a phone, so that the fields and what follows them are near; open where there is room beside them. Folded, it
 * follows once the answer is painted.
 */
function Evidence({ check, result, live }: Given & { readonly live: boolean }) {
  const [startsOpen] = useState(isWide)
  const [isOpen, setOpen] = useState(startsOpen)
  const told = useLater(result, isOpen)
  const drawnParts = useSliced(EVIDENCE.length, isOpen)
  const content = useMemo(
    () => told && <EvidenceStack check={check} result={told} parts={EVIDENCE.slice(0, drawnParts)} />,
    [check, told, drawnParts],
  )
  // its links are the same for every answer, and are fetched for those who look behind one
  const pages = useMemo(() => isOpen && <InTheBook end={`check/${check.id}`} />, [check, isOpen])
  return (
    <details
      class="fold evidence"
      open={startsOpen}
      onToggle={(event) => event.target === event.currentTarget && setOpen(event.currentTarget.open)}
      aria-busy={told !== result || drawnParts < EVIDENCE.length}
    >
      <summary>Why, figures and working</summary>
      <IsUnfolded.Provider value={isOpen}>
        <IsLive.Provider value={live && told === result}>{content}</IsLive.Provider>
      </IsUnfolded.Provider>
      {pages}
    </details>
  )
}

/** The parts of the evidence, one below the other: each is drawn in a turn of its own. */
const EVIDENCE: readonly (readonly [string, (given: Given) => ComponentChildren])[] = [
  ['findings', ({ result }) => <Findings findings={unsaid(result)} />],
  ['strips', WordsOfStrips],
  ['pictures', FoldedPictures],
  ['figures', FigureList],
  ['bounds', ({ result }) => <Bounds bounds={result.bounds} />],
  ['rungs', ({ result }) => <Rungs rungs={result.rungs} />],
]

type StackGiven = Given & { readonly parts: typeof EVIDENCE }

const EvidenceStack = ({ check, result, parts }: StackGiven) => (
  <div class="stack">
    {parts.map(([name, Part]) => (
      <Part key={name} check={check} result={result} />
    ))}
  </div>
)

function WordsOfStrips({ result }: Given) {
  const strips = drawn(result).filter((picture) => picture.is === 'strip')
  const rows = strips.flatMap((picture) => [
    <StripWords key={`${picture.title} in words`} picture={picture} bounds={result.bounds} />,
    <StripTable key={picture.title} picture={picture} />,
  ])
  return <RowSlices rows={rows} atATime={1} />
}

function FoldedPictures({ result }: Given) {
  const pictures = drawn(result)
  const folded = pictures.filter((picture) => !isActedOn(picture, pictures))
  return <RowSlices rows={views(folded, result)} atATime={1} />
}

/** The first figures that exist beside the one of the answer, in a few lines. */
function FigureLine({ check, result }: Given) {
  const others = firstOutputs(check, result)
  if (others.length === 0) return null
  return (
    <p class="figure-line">
      {others.map(({ output, cell }) => (
        <span key={output.key} class="figure-item">
          <span class="figure-label">{output.label}</span> <Figure outputKey={output.key} cell={cell} output={output} />
        </span>
      ))}
    </p>
  )
}

/** Every figure with its working; those that do not exist say why. */
function FigureList({ check, result }: Given) {
  const lead = leadOutput(check, result)
  const first = lead && result.outputs[lead.key]
  const said = new Set(firstOutputs(check, result).map(({ output }) => output.key))
  return (
    <section aria-label="Figures" class="figures">
      <h2>Figures</h2>
      {lead && first && (
        <FoldedFigure label={lead.label} basis={first.basis} text={copied(first.cell, lead)}>
          <Figure outputKey={lead.key} cell={first.cell} output={lead} isRepeated />
        </FoldedFigure>
      )}
      <RowSlices
        rows={otherOutputs(check, result).map(({ output, cell, basis }) => (
          <FoldedFigure key={output.key} label={output.label} basis={basis} text={copied(cell, output)}>
            <Figure outputKey={output.key} cell={cell} output={output} isRepeated={said.has(output.key)} />
          </FoldedFigure>
        ))}
      />
    </section>
  )
}

function firstOutputs(check: Check, result: Success) {
  return otherOutputs(check, result)
    .filter(({ cell }) => cell.is !== 'none')
    .slice(0, MOST_FIGURES)
}

const copied = (cell: Cell, output: Output) => (cell.is === 'none' ? undefined : outputText(cell, output))

function otherOutputs(check: Check, result: Success) {
  const lead = leadOutput(check, result)
  return check.outputs.flatMap((output) => {
    const shown = result.outputs[output.key]
    return output.key === lead?.key || shown === undefined ? [] : [{ output, ...shown }]
  })
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

function FoldedFigure(given: {
  readonly label: string
  readonly basis: Basis
  /** the figure as it is printed; absent where there is none */
  readonly text?: string | undefined
  readonly children: ComponentChildren
}) {
  const { text } = given
  return (
    <details class="figure-row">
      <summary>
        <span class="figure-label">{given.label}</span>
        {given.children}
      </summary>
      {text !== undefined && <CopyButton text={() => text} words={`Copy ${text}`} />}
      <Working basis={given.basis} />
    </details>
  )
}

const voltsOf = ({ minV, maxV }: Rung): string =>
  `${minV === maxV ? '' : `${printed(minV, 'voltage')} to `}${printed(maxV, 'voltage')}`

function Rungs({ rungs }: { readonly rungs: readonly Rung[] }) {
  if (rungs.length === 0) return null
  return (
    <details class="fold figures">
      <summary>Rungs and their working</summary>
      <RowSlices
        rows={rungs.map((rung) => (
          <FoldedFigure key={rung.id} label={rung.label} basis={rung.basis} text={voltsOf(rung)}>
            <span class="figure si">{voltsOf(rung)}</span>
          </FoldedFigure>
        ))}
      />
    </details>
  )
}
