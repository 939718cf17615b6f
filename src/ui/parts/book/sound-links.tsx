import { hashOf } from '../../../state/router.ts'

export type SoundLink = { readonly href: string; readonly text: string }

/** Where any of the sounds may be the one. */
export const ALL_SOUNDS: SoundLink = {
  href: hashOf('notes', 'sounds'),
  text: 'Listen to the noises and compare',
}

/** Ways to hear what a screen is about. */
export function SoundLinks({ links }: { readonly links: readonly SoundLink[] }) {
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
