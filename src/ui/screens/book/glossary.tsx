import { useEffect, useRef } from 'preact/hooks'
import { GLOSSARY, type GlossaryEntry } from '../../../guide/book/glossary.ts'
import { hashOf } from '../../../state/router.ts'
import { Icon } from '../../parts/icon.tsx'
import { PrintHead } from '../../parts/print-head.tsx'
import { Head } from '../../shell/head.tsx'

/** Every word of the glossary; the one of the address is brought into view and marked. */
export function GlossaryScreen({ sought }: { readonly sought: string | undefined }) {
  const list = useRef<HTMLDListElement>(null)
  useEffect(() => {
    const word = sought === undefined ? null : list.current?.querySelector('.sought')
    word?.scrollIntoView({ block: 'center' })
  }, [sought])
  return (
    <>
      <Head title="Glossary">
        <a class="up" href="#/notes">
          <Icon name="back" />
          Book
        </a>
        <p class="muted">{GLOSSARY.length} words of the trade, one line each.</p>
      </Head>
      <PrintHead />
      <dl ref={list} class="book-rows glossary prose">
        {GLOSSARY.map((entry) => (
          <Word key={entry.id} entry={entry} isSought={entry.id === sought} />
        ))}
      </dl>
    </>
  )
}

function Word({ entry, isSought }: { readonly entry: GlossaryEntry; readonly isSought: boolean }) {
  const { word, forms = [], line, page } = entry
  return (
    <div class={isSought ? 'sought' : undefined}>
      <dt>
        <strong>{word}</strong>
        {forms.length > 0 && <span class="row-note">{forms.join(', ')}</span>}
      </dt>
      <dd>
        {line}{' '}
        {page !== undefined && (
          <a class="link" href={hashOf('notes', page)}>
            More
            <span class="unseen"> on {word}</span>
          </a>
        )}
      </dd>
    </div>
  )
}
