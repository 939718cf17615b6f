/** Labels that do not collide. Pure. */

export type Wanted = { readonly at: number; readonly size: number }

type Block = { sum: number; count: number }

/**
 * Centres for labels that want to stand at `at` and take `size`: none overlaps, each as near to its place as can be
 * (least squares under an order, by pooling neighbours), all inside `from…to` when they fit there. Same order as given.
 */
export function spread(wanted: readonly Wanted[], from: number, to: number): readonly number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a]?.at ?? 0) - (wanted[b]?.at ?? 0))
  const sizes = order.map((index) => wanted[index]?.size ?? 0)
  const offsets: number[] = []
  for (const [rank, size] of sizes.entries()) {
    offsets.push(rank === 0 ? 0 : (offsets[rank - 1] ?? 0) + ((sizes[rank - 1] ?? 0) + size) / 2)
  }
  const free = pooled(order.map((index, rank) => (wanted[index]?.at ?? 0) - (offsets[rank] ?? 0)))
  const lowest = from + (sizes[0] ?? 0) / 2
  const highest = Math.max(lowest, to - (sizes.at(-1) ?? 0) / 2 - (offsets.at(-1) ?? 0))
  const centres: number[] = wanted.map(() => 0)
  for (const [rank, index] of order.entries()) {
    centres[index] = Math.min(highest, Math.max(lowest, free[rank] ?? 0)) + (offsets[rank] ?? 0)
  }
  return centres
}

/** Isotonic regression: the nearest sequence that never falls. */
function pooled(values: readonly number[]): readonly number[] {
  const blocks: Block[] = []
  for (const value of values) {
    let last: Block = { sum: value, count: 1 }
    for (
      let before = blocks.at(-1);
      before && before.sum / before.count > last.sum / last.count;
      before = blocks.at(-1)
    ) {
      last = { sum: before.sum + last.sum, count: before.count + last.count }
      blocks.pop()
    }
    blocks.push(last)
  }
  return blocks.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count))
}

/** Breaks a label into lines of at most `letters`, at spaces where there are any. */
export function wrapLabel(text: string, letters: number): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const line = lines.at(-1)
    if (line !== undefined && line.length + 1 + word.length <= letters) lines[lines.length - 1] = `${line} ${word}`
    else lines.push(word)
  }
  return lines
}
