import { useMemo } from 'preact/hooks'
import { tappedTexts } from '../../../guide/book/page-texts.ts'
import type { ShelfRoom } from '../../../guide/book/shelves.ts'
import type { BookPage } from '../../../guide/book/types.ts'
import { SCREENING } from '../../../reference/screening.ts'
import { linkedTo } from '../../../state/book.ts'
import { hashOf } from '../../../state/router.ts'
import { Linked } from '../../parts/book/linked.tsx'
import { Sections } from '../../parts/book/sections.tsx'
import { TermList, TermsIn } from '../../parts/book/terms.tsx'
import { Cautions, fittingCautions } from '../../parts/cautions.tsx'
import { Icon } from '../../parts/icon.tsx'
import { PrintHead } from '../../parts/print-head.tsx'
import { Sources } from '../../parts/working.tsx'
import { Head } from '../../shell/head.tsx'

/** More than a glance would take is one tap away. */
const MOST_SOURCES_OPEN = 1

function SourcesOf({ page: { sources } }: { readonly page: BookPage }) {
  if (sources.length <= MOST_SOURCES_OPEN)
    return (
      <>
        <h2>Source</h2>
        <Sources sources={sources} />
      </>
    )
  return (
    <details class="fold">
      <summary>
        <h2>Sources, {sources.length}</h2>
      </summary>
      <Sources sources={sources} />
    </details>
  )
}

const drawingsOf = ({ blocks }: BookPage) => blocks.flatMap((block) => (block.is === 'drawing' ? [block.drawing] : []))

/** A page of the book: what it says and draws, where that is from, and what it has to do with. */
export function PageView({ page, shelf }: { readonly page: BookPage; readonly shelf: ShelfRoom }) {
  const texts = useMemo(() => tappedTexts(page), [page])
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
      <article class="prose stack book-page">
        {page.cautions !== undefined && <Cautions ids={fittingCautions(page.cautions)} />}
        <Sections blocks={page.blocks} title={page.title} />
        <TermList />
        <SourcesOf page={page} />
        <p class="print-only">{SCREENING.text}</p>
      </article>
      <Linked links={linkedTo(`page/${page.id}`)} label="Related" />
    </TermsIn>
  )
}
