import { useMemo } from 'preact/hooks'
import type { ShelfRoom } from '../../../guide/book/shelves.ts'
import type { BookPage } from '../../../guide/book/types.ts'
import { SCREENING } from '../../../reference/screening.ts'
import { linkedTo } from '../../../state/book.ts'
import { hashOf } from '../../../state/router.ts'
import { CautionLine } from '../../parts/book/caution-line.tsx'
import { Fold } from '../../parts/book/fold.tsx'
import { LinkRows } from '../../parts/book/linked.tsx'
import { FOOT, layoutOf, soughtFolds, tappedTexts } from '../../parts/book/page-layout.ts'
import { Sections } from '../../parts/book/sections.tsx'
import { TermList, TermsIn } from '../../parts/book/terms.tsx'
import { fittingCautions } from '../../parts/cautions.tsx'
import { Icon } from '../../parts/icon.tsx'
import { PrintHead } from '../../parts/print-head.tsx'
import { useRootMark } from '../../parts/root-mark.ts'
import { Sources } from '../../parts/working.tsx'
import { Head } from '../../shell/head.tsx'

/** A desk, or a tablet held upright. */
const ROOM = '(min-width: 56.25rem), (min-width: 40rem) and (min-height: 60rem)'
const hasRoom = (): boolean => typeof matchMedia === 'function' && matchMedia(ROOM).matches

const drawingsOf = ({ blocks }: BookPage) => blocks.flatMap((block) => (block.is === 'drawing' ? [block.drawing] : []))

/** What every page ends with: its words, where it is from, and what it has to do with. */
function Foot({ page: { id, sources } }: { readonly page: BookPage }) {
  const links = linkedTo(`page/${id}`)
  return (
    <>
      <TermList name={FOOT.words} />
      <div class="names last-names">
        <Fold name={sources.length === 1 ? FOOT.source : `${FOOT.sources}, ${sources.length}`}>
          <Sources sources={sources} />
        </Fold>
        {links.length > 0 && (
          <Fold name={`${FOOT.related}, ${links.length}`}>
            <LinkRows links={links} />
          </Fold>
        )}
      </div>
    </>
  )
}

/**
 * A page of the book: what its title asks, on one screen of a phone, and by name all else it says, where it is from and
 * what it has to do with; a wide screen has room for all it says. `find`: words somebody looked for; what holds them is
 * not folded.
 */
export function PageView(given: {
  readonly page: BookPage
  readonly shelf: ShelfRoom
  readonly find: readonly string[]
}) {
  const { page, shelf, find } = given
  useRootMark('bookPage')
  const parts = useMemo(() => layoutOf(page), [page])
  const open = useMemo(() => (hasRoom() ? new Set(parts) : soughtFolds(parts, find)), [parts, find])
  const texts = useMemo(() => tappedTexts(parts), [parts])
  const drawings = useMemo(() => drawingsOf(page), [page])
  return (
    <TermsIn texts={texts} drawings={drawings}>
      <Head title={page.title}>
        <a class="up" href={hashOf('notes', shelf.id)}>
          <Icon name="back" />
          {shelf.title}
        </a>
      </Head>
      <PrintHead />
      <p class="print-only">{SCREENING.text}</p>
      <article class="prose stack book-page">
        <CautionLine ids={fittingCautions(page.cautions ?? [])} />
        <Sections parts={parts} title={page.title} wanted={open} foot={<Foot page={page} />} />
      </article>
    </TermsIn>
  )
}
