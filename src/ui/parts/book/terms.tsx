import { type ComponentChildren, createContext } from 'preact'
import { useContext, useEffect, useId, useMemo, useState } from 'preact/hooks'
import type { GlossaryEntry } from '../../../guide/book/glossary.ts'
import type { Piece } from '../../../guide/book/glossary-match.ts'
import type { DrawingId } from '../../../guide/drawing-ids.ts'
import type { BookDrawingId } from '../../../guide/drawings/book-ids.ts'
import { nextTurn } from '../../../state/next-turn.ts'
import { hashOf } from '../../../state/router.ts'
import { isAtRest } from '../../rest.ts'
import { useRootMark } from '../root-mark.ts'

type Marks = ReadonlyMap<string, readonly Piece[]>

type Shown = {
  /** undefined until the glossary is there */
  readonly marks: Marks | undefined
  /** the tapped place, by its id on the screen */
  readonly open: string | undefined
  readonly setOpen: (id: string | undefined) => void
}

const Terms = createContext<Shown>({ marks: undefined, open: undefined, setOpen: () => undefined })

type Drawn = DrawingId | BookDrawingId
const NO_DRAWINGS: readonly Drawn[] = []

async function titlesOf(ids: readonly Drawn[]): Promise<readonly string[]> {
  const { drawingById } = await import('../../../guide/drawings/drawings.ts')
  return ids.flatMap((id) => drawingById(id)?.title ?? [])
}

/**
 * Around a screen: the words of the glossary among `texts`, in the order they are read, are told by a tap wherever `Text`
 * shows them. The glossary is fetched behind the screen; nothing moves when it comes.
 */
export function TermsIn({
  texts,
  drawings = NO_DRAWINGS,
  children,
}: {
  readonly texts: readonly string[]
  /** drawings of the screen by their id: what stands above them is read last */
  readonly drawings?: readonly Drawn[]
  readonly children: ComponentChildren
}) {
  const [marks, setMarks] = useState<Marks>()
  const [open, setOpen] = useState<string>()
  const all = useMemo(() => JSON.stringify({ texts, drawings }), [texts, drawings])
  const isWaiting = !isAtRest.value
  useEffect(() => {
    if (isWaiting) return
    let alive = true
    const shown: { readonly texts: readonly string[]; readonly drawings: readonly Drawn[] } = JSON.parse(all)
    const mark = async () => {
      const [{ markedTexts }, titles] = await Promise.all([
        import('../../../guide/book/glossary-match.ts'),
        shown.drawings.length === 0 ? [] : titlesOf(shown.drawings),
      ])
      await nextTurn()
      const found = markedTexts([...shown.texts, ...titles])
      await nextTurn()
      if (alive) setMarks(found)
    }
    // without the glossary the text stands as it is
    mark().catch(() => undefined)
    return () => {
      alive = false
    }
  }, [all, isWaiting])
  useEffect(() => {
    if (open === undefined) return
    const onKey = (event: KeyboardEvent) => event.key === 'Escape' && setOpen(undefined)
    const onTap = ({ target }: Event) =>
      !(target instanceof Element && target.closest('.term, .term-line')) && setOpen(undefined)
    addEventListener('keydown', onKey)
    addEventListener('click', onTap)
    return () => {
      removeEventListener('keydown', onKey)
      removeEventListener('click', onTap)
    }
  }, [open])
  // the same as long as neither changes: what shows a text is not drawn again with the screen around it
  const shown = useMemo(() => ({ marks, open, setOpen }), [marks, open])
  return <Terms.Provider value={shown}>{children}</Terms.Provider>
}

/** A text of the screen, with its words of the trade to be tapped. */
export function Text({ of: text }: { readonly of: string }) {
  const { marks } = useContext(Terms)
  const pieces = marks?.get(text)
  if (pieces === undefined) return <span>{text}</span>
  // one box, so that a row that lays out its children takes the text as one
  return (
    <span>
      {pieces.map(({ text: words, entry }) =>
        entry === undefined ? words : <Term key={entry.id} entry={entry} words={words} />,
      )}
    </span>
  )
}

/** A link, since it leads to the glossary; a plain tap tells the line in place, over the page. */
function Term({ entry, words }: { readonly entry: GlossaryEntry; readonly words: string }) {
  const { open, setOpen } = useContext(Terms)
  const id = useId()
  const isOpen = open === id
  const toGlossary = hashOf('notes', 'glossary', [{ key: 'word', text: entry.id }])
  const tell = (event: MouseEvent) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return
    event.preventDefault()
    setOpen(isOpen ? undefined : id)
  }
  return (
    <>
      <a class="term" href={toGlossary} aria-expanded={isOpen} aria-controls={id} onClick={tell}>
        {words}
      </a>
      <span id={id} role="status">
        {isOpen && <TermLine entry={entry} toGlossary={toGlossary} close={() => setOpen(undefined)} />}
      </span>
    </>
  )
}

type LineGiven = { readonly entry: GlossaryEntry; readonly toGlossary: string; readonly close: () => void }

/** The page is marked as long as the line stands, not as long as its word was asked for: that may go with its text. */
function TermLine({ entry, toGlossary, close }: LineGiven) {
  useRootMark('term')
  return (
    <span class="term-line">
      <strong>{entry.word}</strong> {entry.line}{' '}
      <a class="link" href={entry.page === undefined ? toGlossary : hashOf('notes', entry.page)}>
        {entry.page === undefined ? 'Glossary' : 'More'}
        <span class="unseen"> on {entry.word}</span>
      </a>{' '}
      <button type="button" class="button" onClick={close}>
        Close
      </button>
    </span>
  )
}

/** What the words and short forms of the screen mean, all in one place. */
export function TermList({ name = 'Words and short forms' }: { readonly name?: string }) {
  const { marks } = useContext(Terms)
  const entries = [...(marks?.values() ?? [])].flat().flatMap(({ entry }) => entry ?? [])
  if (marks !== undefined && entries.length === 0) return null
  return (
    <details class="fold">
      <summary>{name}</summary>
      <dl class="small">
        {entries.map(({ id, word, line }) => (
          <div key={id}>
            <dt>
              <strong>{word}</strong>
            </dt>
            <dd>{line}</dd>
          </div>
        ))}
      </dl>
    </details>
  )
}
