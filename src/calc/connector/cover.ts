/**
 * Least cost with which every contact is covered by candidates: branch and bound on the contact that fewest candidates
 * cover. The lower bound adds the cheapest candidates of contacts of which no two share one. Exact; may be left at any
 * time. Costs > 0. Source: set cover, textbook; held against brute force.
 */

export type Candidate = {
  /** contacts it serves, ascending */
  readonly covers: readonly number[]
  readonly cost: number
}

export type CoverProgress = { readonly tried: number; readonly best: number; readonly lowerBound: number }

export type Cover = {
  readonly chosen: readonly number[]
  readonly cost: number
  /** no cover costs less; equal to the cost when proved */
  readonly lowerBound: number
}

/** How often it says how far it is. */
const TELL_EVERY = 64

/** Contacts that nothing covers are left out. Undefined where nothing costs `atMost` or less. */
export function* leastCover(
  contacts: number,
  candidates: readonly Candidate[],
  atMost = Number.POSITIVE_INFINITY,
): Generator<CoverProgress, Cover | undefined> {
  const coverers: number[][] = Array.from({ length: contacts }, () => [])
  candidates.forEach(({ covers }, one) => {
    for (const contact of covers) (coverers[contact] as number[]).push(one)
  })
  const all = coverers.flatMap((of, contact) => (of.length > 0 ? [contact] : []))
  const rootBound = apartBound(all, coverers, candidates)
  let best: readonly number[] | undefined = greedy(all, candidates)
  if (costOf(best, candidates) > atMost) best = undefined
  let tried = 0
  const stack: { chosen: readonly number[]; cost: number; open: readonly number[] }[] = [
    { chosen: [], cost: 0, open: all },
  ]
  const bestCost = () => (best === undefined ? Number.POSITIVE_INFINITY : costOf(best, candidates))
  while (stack.length > 0 && bestCost() > rootBound) {
    const { chosen, cost, open } = stack.pop() as { chosen: readonly number[]; cost: number; open: readonly number[] }
    const isTooMuch = (least: number) => least >= bestCost() || least > atMost
    if (open.length === 0) {
      if (!isTooMuch(cost)) best = chosen
      continue
    }
    if (isTooMuch(cost + apartBound(open, coverers, candidates))) continue
    const rarest = open.reduce((a, b) => ((coverers[b] as number[]).length < (coverers[a] as number[]).length ? b : a))
    const next = [...(coverers[rarest] as number[])].sort(
      (a, b) => worth(candidates[a] as Candidate, open) - worth(candidates[b] as Candidate, open),
    )
    // the widest for its cost is taken from the stack first
    for (const one of next) {
      const candidate = candidates[one] as Candidate
      const covers = new Set(candidate.covers)
      stack.push({
        chosen: [...chosen, one],
        cost: cost + candidate.cost,
        open: open.filter((contact) => !covers.has(contact)),
      })
    }
    tried += 1
    if (tried % TELL_EVERY === 0) yield { tried, best: best === undefined ? 0 : bestCost(), lowerBound: rootBound }
  }
  if (best === undefined) return undefined
  const cost = bestCost()
  return { chosen: best, cost, lowerBound: stack.length === 0 ? cost : Math.min(rootBound, cost) }
}

const costOf = (chosen: readonly number[], candidates: readonly Candidate[]): number =>
  chosen.reduce((sum, one) => sum + (candidates[one] as Candidate).cost, 0)

const worth = ({ covers, cost }: Candidate, open: readonly number[]): number => {
  const set = new Set(covers)
  return open.reduce((count, contact) => count + (set.has(contact) ? 1 : 0), 0) / cost
}

/** Contacts of which no two can share a candidate need one each. Greedy, rarest first. */
function apartBound(
  open: readonly number[],
  coverers: readonly (readonly number[])[],
  candidates: readonly Candidate[],
): number {
  const taken = new Set<number>()
  let cost = 0
  for (const contact of [...open].sort((a, b) => (coverers[a]?.length ?? 0) - (coverers[b]?.length ?? 0))) {
    const of = coverers[contact] as readonly number[]
    if (of.some((one) => taken.has(one))) continue
    for (const one of of) taken.add(one)
    cost += Math.min(...of.map((one) => (candidates[one] as Candidate).cost))
  }
  return cost
}

function greedy(all: readonly number[], candidates: readonly Candidate[]): readonly number[] {
  const chosen: number[] = []
  let open = all
  while (open.length > 0) {
    let widest = 0
    for (let one = 1; one < candidates.length; one++)
      if (worth(candidates[one] as Candidate, open) > worth(candidates[widest] as Candidate, open)) widest = one
    chosen.push(widest)
    const covers = new Set((candidates[widest] as Candidate).covers)
    open = open.filter((contact) => !covers.has(contact))
  }
  return chosen
}
