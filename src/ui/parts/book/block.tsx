import type { Block } from '../../../guide/book/types.ts'
import { hashOf } from '../../../state/router.ts'
import { lazy } from '../../lazy.tsx'
import { Icon } from '../icon.tsx'
import { Rows } from './rows.tsx'
import { BookTable } from './table.tsx'
import { Text } from './terms.tsx'

const DrawingView = lazy(async () => (await import('../drawing.tsx')).DrawingView)
const FillInTable = lazy(async () => (await import('../fill-in.tsx')).FillInTable)
const WaveformView = lazy(async () => (await import('./waveform.tsx')).WaveformView)
const SoundView = lazy(async () => (await import('./sound.tsx')).SoundView)

/** One block of a page. `title`: the page's, which a table without a caption is called by; `atOnce`: so many of its rows. */
export function BlockView(given: { readonly block: Block; readonly title: string; readonly atOnce?: number }) {
  const { block, title, atOnce } = given
  switch (block.is) {
    case 'heading':
      return <h2>{block.text}</h2>
    case 'text':
      return (
        <p>
          <Text of={block.text} />
        </p>
      )
    case 'list':
      return <List items={block.items} isOrdered={block.ordered === true} />
    case 'rows':
      return <Rows rows={block.rows} />
    case 'table':
      return <BookTable table={block} title={block.caption ?? title} atOnce={atOnce} />
    case 'never':
      return <Never items={block.items} />
    case 'drawing':
      return <DrawingView id={block.drawing} under={title} />
    case 'waveform':
      return <WaveformView waveform={block.waveform} />
    case 'sound':
      return <SoundView id={block.sound} said={block.said} />
    case 'fill-in':
      return <FillInTable id={block.table} />
    case 'open-check':
      return <OpenCheck block={block} />
  }
}

function List({ items, isOrdered }: { readonly items: readonly string[]; readonly isOrdered: boolean }) {
  const rows = items.map((item) => (
    <li key={item}>
      <Text of={item} />
    </li>
  ))
  return isOrdered ? <ol class="numbered">{rows}</ol> : <ul class="bullets">{rows}</ul>
}

/** What hurts people, equipment or the finding: sign and word, since colour alone says nothing. */
function Never({ items }: { readonly items: readonly string[] }) {
  return (
    <section class="cautions never" aria-label="Never">
      <p class="never-name">
        <Icon name="fails" />
        <strong>Never</strong>
      </p>
      <ul class="bullets">
        {items.map((item) => (
          <li key={item}>
            <Text of={item} />
          </li>
        ))}
      </ul>
    </section>
  )
}

function OpenCheck({ block }: { readonly block: Extract<Block, { readonly is: 'open-check' }> }) {
  const query = Object.entries(block.prefill).map(([key, text]) => ({ key, text }))
  return (
    <a class="button open-check" href={hashOf('check', block.check, query)}>
      <span>{block.why}</span>
      <Icon name="go" />
    </a>
  )
}
