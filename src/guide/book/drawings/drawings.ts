/** The shelf of drawings: every drawing there is, with what it shows in words, and what it has to do with. */
import { DERIVED, PRACTICE } from '../../../reference/line-kinds/cite.ts'
import { DRAWINGS } from '../../drawings/drawings.ts'
import type { Drawing } from '../../drawings/types.ts'
import { EVIDENCE } from '../../evidence/evidence.ts'
import { FIELD_NOTES } from '../../notes.ts'
import type { BookLink, BookPage } from '../types.ts'

type About = { readonly words: readonly string[]; readonly links: readonly BookLink[] }

/** What people call what is drawn, and what it belongs to beside the cards and notes it stands on. */
const ABOUT: Readonly<Record<Drawing['id'], About>> = {
  'six-topologies': {
    words: ['topology', 'C filter', 'L filter', 'LC', 'CL', 'Pi filter', 'T filter', 'circuit'],
    links: [{ check: 'filter' }, { check: 'window' }],
  },
  'lead-and-bond': {
    words: ['lead inductance', 'ESL', 'parasitic', 'bond inductance', 'feed-through'],
    links: [{ check: 'filter' }, { page: 'lead-and-bond' }],
  },
  'lc-ringing': {
    words: ['ringing', 'resonance', 'gain', 'louder with the filter', 'damping'],
    links: [{ check: 'filter' }, { check: 'resonance' }],
  },
  'two-modes': {
    words: ['common mode', 'differential mode', 'modes'],
    links: [{ page: 'common-or-differential' }, { page: 'drawing-probe-readings' }],
  },
  'bond-path': { words: ['bonding', 'ground path', 'return', 'chassis'], links: [{ check: 'filter' }] },
  'harness-coupling': {
    words: ['crosstalk', 'bundle', 'routing', 'capacitive', 'inductive', 'twisting'],
    links: [{ page: 'shield-ends' }],
  },
  'planar-contact': {
    words: ['planar array', 'filter contact', 'ceramic', 'ferrite', 'construction', 'cut open'],
    links: [{ check: 'window' }],
  },
  'rack-tray': { words: ['rack', 'tray', 'adapter', 'mounting'], links: [{ page: 'rack-trays' }] },
  'strip-explained': { words: ['strip', 'window', 'how to read'], links: [{ check: 'window' }] },
  'ladder-explained': { words: ['ladder', 'rungs', 'how to read', 'volts'], links: [{ check: 'surge' }] },
  'probe-readings': { words: ['current probe'], links: [{ page: 'test-with-current-probe' }] },
  'receiver-walk': { words: ['walk around', 'handheld'], links: [{ page: 'test-with-handheld-receiver' }] },
  'spectrum-shapes': { words: ['spectrum', 'comb', 'noise floor'], links: [{ page: 'test-with-spectrum' }] },
  'bond-four-wire': { words: ['Kelvin', 'four wire', 'milliohm'], links: [{ page: 'test-with-milliohm-meter' }] },
  'shield-ends': { words: ['pigtail', 'shield termination', 'back-shell', '360'], links: [{ check: 'filter' }] },
  'clamp-places': { words: ['ferrite', 'clamp'], links: [{ page: 'test-with-clamp' }, { check: 'loop' }] },
  'audio-ground': { words: ['ground loop', 'jack', 'insulating washer', 'audio return'], links: [] },
  'battery-test': { words: ['own battery', 'supply path'], links: [] },
  'breaker-matrix': { words: ['breaker', 'two together'], links: [] },
  'bus-ohms': { words: ['terminator', 'bus resistance'], links: [{ page: 'test-with-multimeter' }] },
  'way-round': { words: ['which way', 'orientation', 'inductor faces'], links: [{ check: 'window' }] },
  'suppressor-side': { words: ['ahead', 'behind', 'transient suppressor', 'placement'], links: [{ check: 'surge' }] },
  placements: { words: ['receptacle', 'back-shell', 'in-line', 'plate', 'adapter', 'where'], links: [] },
  'dummy-load': { words: ['dummy load', 'coax leak'], links: [] },
}

/** Id of the page of a drawing. */
const drawingPageId = (id: Drawing['id']): string => `drawing-${id}`

function pageOf({ id, title, said }: Drawing): BookPage {
  const { words, links } = ABOUT[id]
  const [first = '', ...rest] = said.split(/(?<=\.)\s+/)
  const notes = FIELD_NOTES.filter(({ picture }) => picture === id).map((note): BookLink => ({ page: note.id }))
  const items = EVIDENCE.filter(({ picture }) => picture === id).map((item): BookLink => ({ item: item.id }))
  const related = [...links, ...notes, ...items]
  return {
    id: drawingPageId(id),
    shelf: 'drawings',
    title,
    inShort: first,
    words,
    blocks: [
      { is: 'drawing', drawing: id },
      { is: 'text', text: [first, ...rest].join(' ') },
    ],
    sources: [PRACTICE, DERIVED],
    related: related.filter(
      (link, at) => related.findIndex((one) => JSON.stringify(one) === JSON.stringify(link)) === at,
    ),
  }
}

export const pages = (): readonly BookPage[] => DRAWINGS.map(pageOf)

export { pages as built }
