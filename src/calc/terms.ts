/** Words the whole of calc shares: verdicts, topologies, and what a figure can be. */

/** `ok` means inside the bounds that were entered, never more. */
export type Verdict = 'ok' | 'marginal' | 'fails' | 'unknown'

/** Filter topologies, named source to load. */
export type Topology = 'C' | 'L' | 'LC' | 'CL' | 'PI' | 'T'

export type Cell =
  | { readonly is: 'si'; readonly si: number }
  | { readonly is: 'word'; readonly word: string; readonly verdict?: Verdict }
  | { readonly is: 'none'; readonly why: string }
