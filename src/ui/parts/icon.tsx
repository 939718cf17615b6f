/** Our own marks, drawn on a 24 × 24 grid with one stroke. Decoration only: a word always stands beside them. */
const PATHS = {
  ask: 'M4 5h16v11h-7l-5 4v-4H4zM9.5 9a2.5 2.5 0 0 1 5 0c0 1.6-2.5 1.7-2.5 3M12 14v.01',
  check: 'M4 6v12M20 6v12M4 12h16M8 10v4M12 9v6M16 10v4',
  log: 'M6 4h12v16H6zM9 9h6M9 12.5h6M9 16h3',
  notes: 'M12 6.5C10 5 7 4.5 4 5v13c3-.5 6 0 8 1.5 2-1.5 5-2 8-1.5V5c-3-.5-6 0-8 1.5zM12 6.5v13',
  about: 'M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18zM12 11v6M12 7.5v.01',
  ok: 'M12 3a9 9 0 1 0 0 18 9 9 0 0 0 0-18zM7.5 12.5l3 3 6-7',
  marginal: 'M12 4L2.5 20h19zM12 10v5M12 17.5v.01',
  fails: 'M8 3h8l5 5v8l-5 5H8l-5-5V8zM8.5 8.5l7 7M15.5 8.5l-7 7',
  unknown: 'M4 4h16v16H4zM9.5 9.5a2.5 2.5 0 0 1 5 0c0 1.8-2.5 1.9-2.5 3.6M12 16v.01',
  keep: 'M6 3h9l3 3v15H6zM9 3v5h5V3M9 13h6M9 16.5h6',
  copy: 'M9 8h11v13H9zM15 8V3H4v13h5',
  share: 'M12 15V3M8 7l4-4 4 4M5 12v8h14v-8',
  print: 'M7 9V3h10v6M5 9h14v8h-3M8 17H5M8 14h8v7H8z',
  undo: 'M4 10h10a5 5 0 0 1 0 10H9M4 10l4-4M4 10l4 4',
  close: 'M6 6l12 12M18 6L6 18',
  go: 'M9 5l7 7-7 7',
  back: 'M15 5l-7 7 7 7',
  search: 'M10.5 4a6.5 6.5 0 1 0 0 13 6.5 6.5 0 0 0 0-13zM15.5 15.5L21 21',
  caution: 'M12 4L2.5 20h19zM12 10v5M12 17.5v.01',
} as const

export type IconName = keyof typeof PATHS

export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 24 24" width="24" height="24" aria-hidden="true" focusable="false">
      <path d={PATHS[name]} />
    </svg>
  )
}
