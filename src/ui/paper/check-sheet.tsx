import { untracked } from '@preact/signals'
import { evaluateNow } from '../../calc/line/evaluate.ts'
import type { Field } from '../../calc/line/fields.ts'
import type { Check, Picture, Result, Success } from '../../calc/types.ts'
import { sentenceOf } from '../../calc/verdict.ts'
import type { CheckModel } from '../../state/check.ts'
import { drawn } from '../parts/answer.tsx'
import { Findings } from '../parts/findings.tsx'
import { PictureView } from '../parts/picture.tsx'
import { KnownWidth } from '../parts/width.ts'
import { SheetCautions, SheetFoot, SheetHead } from './frame.tsx'
import { lay, SHEET_PX } from './lay.tsx'
import { SheetInputs } from './sheet-inputs.tsx'
import { SheetVariants } from './sheet-variants.tsx'
import { SheetFigures, SheetWorking } from './sheet-working.tsx'

/** Lays out the sheet of a check: what was asked, the answer, and everything it rests on. */
export function layCheckSheet(model: CheckModel): () => void {
  const { check } = model
  const line = model.line.peek()
  const fields = model.fields.peek()
  const address = new URL(model.hash.peek(), document.baseURI).href
  const result = resultNow(model)
  return lay(
    <>
      <SheetHead title={check.title} address={address}>
        <p>{check.question}</p>
        {line.name !== '' && <p>{line.name}</p>}
        <Sentence result={result} />
      </SheetHead>
      <SheetVariants check={check} line={line} variants={model.variants.peek()} />
      <Grounds check={check} fields={fields} result={result} />
      <SheetFoot />
    </>,
  )
}

/** The answer to the fields as they stand; one still under way is worked out to its end. */
function resultNow(model: CheckModel): Result | string {
  const answer = model.answer.peek()
  if (answer.is === 'done') return answer.result
  if (answer.is === 'stopped') return 'Stopped: there is no answer to these inputs.'
  if (answer.is === 'broken') return 'This check could not be computed. That is a fault of the app, not of the inputs.'
  return untracked(() => evaluateNow(model.check, model.fields.peek()))
}

type Given = { readonly check: Check; readonly fields: readonly Field[]; readonly result: Result | string }

/** The answer in one sentence, and the reasons beside it. */
export function Sentence({ result }: Pick<Given, 'result'>) {
  if (typeof result === 'string' || !result.ok) {
    const why = typeof result === 'string' ? [result] : result.issues.map(({ message }) => message)
    return <p class="sentence">No answer. {why.join(' ')}</p>
  }
  return (
    <>
      <p class="sentence">{sentenceOf(result)}</p>
      {result.needs && <p>{result.needs.sentence}</p>}
      <Findings findings={result.findings} />
    </>
  )
}

/** What the answer rests on: picture, inputs, figures, working, sources and cautions. */
export function Grounds({ check, fields, result }: Given) {
  if (typeof result === 'string' || !result.ok) return <SheetInputs fields={fields} />
  return (
    <>
      <PicturesAndFigures check={check} result={result} />
      <SheetInputs fields={fields} />
      <SheetWorking check={check} result={result} />
      <SheetCautions ids={result.cautions} />
    </>
  )
}

const GAP_PX = 16
const HALF_PX = (SHEET_PX - GAP_PX) / 2

/** Ladders and plots that stand side by side; a third shows again what the inputs say. */
const MOST_HALVES = 2

/** Strips and tables over the whole width; a ladder and a plot side by side, or one of them beside the figures. */
function PicturesAndFigures({ check, result }: { readonly check: Check; readonly result: Success }) {
  const pictures = drawn(result).map((picture) => withoutSaid(picture, result))
  const isWide = ({ is }: Picture) => is === 'strip' || is === 'table'
  const halves = pictures.filter((picture) => !isWide(picture)).slice(0, MOST_HALVES)
  const isLone = halves.length === 1
  const view = (picture: Picture) => (
    <PictureView key={`${picture.is}${picture.title}`} picture={picture} bounds={result.bounds} />
  )
  return (
    <>
      {pictures.filter(isWide).map(view)}
      {halves.length > 0 && (
        <KnownWidth.Provider value={HALF_PX}>
          <div class="halves">
            {halves.map(view)}
            {isLone && <SheetFigures check={check} result={result} columns={1} />}
          </div>
        </KnownWidth.Provider>
      )}
      {!isLone && <SheetFigures check={check} result={result} columns={3} />}
    </>
  )
}

/** A picture without the sentences that stand among the reasons already. */
function withoutSaid(picture: Picture, { findings }: Success): Picture {
  const isUnsaid = (sentence: string) => !findings.some((finding) => finding.sentence === sentence)
  if (picture.is === 'plot') return { ...picture, flags: picture.flags.filter(isUnsaid) }
  return picture.is === 'ladder' ? { ...picture, faults: picture.faults.filter(isUnsaid) } : picture
}
