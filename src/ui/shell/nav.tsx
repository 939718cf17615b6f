import { type Place, route } from '../../state/router.ts'
import { Icon } from '../parts/icon.tsx'

const PLACES: readonly { readonly place: Place; readonly label: string }[] = [
  { place: 'ask', label: 'Ask' },
  { place: 'check', label: 'Check' },
  { place: 'log', label: 'Log' },
  { place: 'notes', label: 'Book' },
]

/** The four places, under the thumb on a phone and beside the page on a desk. */
export function Nav() {
  const here = route.value.place
  return (
    <nav class="places" aria-label="Places">
      <ul>
        {PLACES.map(({ place, label }) => (
          <li key={place}>
            <a href={`#/${place}`} aria-current={here === place ? 'page' : undefined}>
              <Icon name={place} />
              <span>{label}</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
