/** What the common capacitor constructions and dielectrics really do. */
import { memory, read } from './line-kinds/cite.ts'
import type { Citation } from './line-kinds/types.ts'

/** Series inductance of a capacitor as built; both ends of the range are typical, not limits. */
export type Construction = {
  readonly id: string
  readonly name: string
  readonly leastEslH: number
  readonly mostEslH: number
  readonly note: string
  readonly source: Citation
}

export const CONSTRUCTIONS: readonly Construction[] = [
  {
    id: 'feed-through',
    name: 'Discoidal, planar or tubular feed-through',
    leastEslH: 0.01e-9,
    mostEslH: 0.05e-9,
    note: 'no lead inductance to speak of; the bond decides',
    source: memory('S47', 'figures; principle read'),
  },
  {
    id: 'three-terminal-chip',
    name: 'Three-terminal chip feed-through',
    leastEslH: 0.02e-9,
    mostEslH: 0.1e-9,
    note: 'to ground; pads and vias come on top',
    source: memory('paul'),
  },
  {
    id: 'chip-0201',
    name: 'Chip 0201',
    leastEslH: 0.2e-9,
    mostEslH: 0.2e-9,
    note: 'mounting adds 0.5 to 2 nH',
    source: read('S21'),
  },
  {
    id: 'chip-0402',
    name: 'Chip 0402',
    leastEslH: 0.4e-9,
    mostEslH: 0.4e-9,
    note: 'mounting adds 0.5 to 2 nH',
    source: read('S21'),
  },
  {
    id: 'chip-0603',
    name: 'Chip 0603',
    leastEslH: 0.8e-9,
    mostEslH: 0.8e-9,
    note: 'mounting adds 0.5 to 2 nH',
    source: read('S21'),
  },
  {
    id: 'chip-0805',
    name: 'Chip 0805',
    leastEslH: 0.7e-9,
    mostEslH: 1e-9,
    note: 'mounting adds 0.5 to 2 nH',
    source: memory('paul'),
  },
  {
    id: 'chip-1206',
    name: 'Chip 1206',
    leastEslH: 1e-9,
    mostEslH: 1.3e-9,
    note: 'mounting adds 0.5 to 2 nH',
    source: memory('paul'),
  },
  {
    id: 'leaded',
    name: 'Leaded disc or radial, 5 mm legs',
    leastEslH: 5e-9,
    mostEslH: 15e-9,
    note: 'about 1 nH per millimetre of lead',
    source: memory('ott'),
  },
  {
    id: 'wire-inch',
    name: 'One inch of straight wire, 22 AWG',
    leastEslH: 21.9e-9,
    mostEslH: 21.9e-9,
    note: 'computed: 0.2·l·(ln(4l/d) − 0.75) µH with l and d in metres',
    source: memory('terman'),
  },
]

/** Series resistance at self-resonance. */
export type EsrRange = {
  readonly id: string
  readonly name: string
  readonly leastOhm: number
  readonly mostOhm: number
  readonly source: Citation
}

export const ESR_RANGES: readonly EsrRange[] = [
  { id: 'ceramic', name: 'Multilayer ceramic', leastOhm: 5e-3, mostOhm: 50e-3, source: memory('ott') },
  { id: 'film', name: 'Film', leastOhm: 5e-3, mostOhm: 50e-3, source: memory('ott') },
  {
    id: 'electrolytic',
    name: 'Aluminium electrolytic (much higher when cold)',
    leastOhm: 50e-3,
    mostOhm: 1,
    source: memory('ott'),
  },
]

/** How a dielectric loses or keeps its capacitance. Shares are of the marked value. */
export type Dielectric = {
  readonly id: string
  readonly name: string
  readonly temperatureFrac: number
  readonly ageingFracPerDecade: number
  /** range of capacitance lost at rated DC voltage; absent = ask the maker */
  readonly biasFrac?: readonly [number, number]
  readonly dissipationFrac: number
  readonly note: string
  readonly sources: readonly [Citation, ...Citation[]]
}

export const DIELECTRICS: readonly Dielectric[] = [
  {
    id: 'c0g',
    name: 'C0G/NP0 (class 1)',
    temperatureFrac: 0.003,
    ageingFracPerDecade: 0,
    biasFrac: [0, 0],
    dissipationFrac: 0.0015,
    note: '0 ± 30 ppm/°C from −55 to +125 °C (at most 0.3 % over the range); no ageing, no change with DC.',
    sources: [read('S23'), read('S24'), memory('mil-std-202', 'dissipation')],
  },
  {
    id: 'x7r',
    name: 'X7R (class 2)',
    temperatureFrac: 0.15,
    ageingFracPerDecade: 0.025,
    biasFrac: [0.1, 0.4],
    dissipationFrac: 0.025,
    note: '±15 % from −55 to +125 °C without DC. DC bias is not specified: filter-grade parts of 50 to 200 V lose 10 to 40 % at rated voltage, small high-value chips 50 to 80 %.',
    sources: [read('S23'), read('S24'), read('S25'), memory('S26', 'filter-grade bias loss')],
  },
  {
    id: 'bx',
    name: 'BX (class 2 with bias specified)',
    temperatureFrac: 0.25,
    ageingFracPerDecade: 0.025,
    biasFrac: [0, 0],
    dissipationFrac: 0.025,
    note: '+15/−25 % over temperature and rated DC together, so the bias is inside the temperature figure.',
    sources: [read('S23'), memory('mil-std-202', 'dissipation')],
  },
  {
    id: 'bz',
    name: 'BZ or 2C1 (class 2 with bias specified)',
    temperatureFrac: 0.3,
    ageingFracPerDecade: 0.025,
    biasFrac: [0, 0],
    dissipationFrac: 0.025,
    note: '+20/−30 % over temperature and rated DC together, so the bias is inside the temperature figure.',
    sources: [read('S23'), memory('mil-std-202', 'dissipation')],
  },
]

/** A bond figure that is quoted often, and what it is not. */
export const BOND_NOTE = {
  ohm: 2.5e-3,
  text: '2.5 mΩ is a DC figure of bond practice (MIL-B-5087 heritage, MIL-STD-464). At radio frequencies the inductance of the bond decides.',
  sources: [memory('mil-b-5087'), memory('mil-std-464'), read('S41')],
} as const
