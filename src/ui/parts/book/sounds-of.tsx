import { SOUND_CARDS, soundPageId } from '../../../guide/book/sounds/cards.ts'
import { SUSPECTS } from '../../../guide/suspects/suspects.ts'
import { hashOf } from '../../../state/router.ts'
import { ALL_SOUNDS, SoundLinks } from './sound-links.tsx'

/** Ways to hear what a question is about: the sounds of the causes it proves, or the whole shelf where it asks for the rhythm. */
export function SoundsOf({ item }: { readonly item: string }) {
  if (item === 'rhythm') return <SoundLinks links={[ALL_SOUNDS]} />
  const proven = SUSPECTS.filter(({ proof }) => proof === item).map(({ id }) => id)
  const cards = SOUND_CARDS.filter(({ suspect }) => proven.includes(suspect))
  if (cards.length === 0) return null
  return (
    <SoundLinks
      links={cards.map(({ signature, title }) => ({
        href: hashOf('notes', soundPageId(signature)),
        text: `Listen to it: ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
      }))}
    />
  )
}
