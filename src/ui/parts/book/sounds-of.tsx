import { SOUND_CARDS } from '../../../guide/book/sounds/cards.ts'
import { SUSPECTS } from '../../../guide/suspects/suspects.ts'
import { hashOf } from '../../../state/router.ts'

/** Items at which every sound may be the one: what its rhythm is, and the tone finder. */
const ANY = ['rhythm', 'tone']

/** Ways to hear what a question or a tone is about: the sounds of the causes it proves, or the whole shelf. */
export function SoundsOf({ item }: { readonly item: string }) {
  const proven = SUSPECTS.filter(({ proof }) => proof === item).map(({ id }) => id)
  const cards = SOUND_CARDS.filter(({ suspect }) => proven.includes(suspect))
  const links = ANY.includes(item)
    ? [{ href: hashOf('notes', 'sounds'), text: 'Listen to the noises and compare' }]
    : cards.map(({ signature, title }) => ({
        href: hashOf('notes', `sound-${signature}`),
        text: `Listen to it: ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
      }))
  if (links.length === 0) return null
  return (
    <ul class="plain">
      {links.map(({ href, text }) => (
        <li key={href}>
          <a class="link" href={href}>
            {text}
          </a>
        </li>
      ))}
    </ul>
  )
}
