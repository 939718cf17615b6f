/** Names of contacts as a reader wants them: neighbours as a range. */

const SHORTEST_RANGE = 3

/** "1 to 5, 7, 9": in the order of the connector; three or more neighbours are a range. */
export function contactList(ids: readonly string[], order: readonly string[]): string {
  const wanted = new Set(ids)
  const runs: string[][] = []
  let isRunning = false
  for (const id of order) {
    if (wanted.has(id)) {
      if (isRunning) runs.at(-1)?.push(id)
      else runs.push([id])
    }
    isRunning = wanted.has(id)
  }
  const strangers = ids.filter((id) => !order.includes(id)).map((id) => [id])
  return [...runs, ...strangers]
    .map((run) => (run.length < SHORTEST_RANGE ? run.join(', ') : `${run[0]} to ${run.at(-1)}`))
    .join(', ')
}
