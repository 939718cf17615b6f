/** Labels over upright lines that do not collide, neither with each other nor with a line that passes. Pure. */

/** A word over the line at `xPx`. */
export type Flag = { readonly xPx: number; readonly widthPx: number }
/** Tier 0 stands next to the plot; a line reaches up to the tier of its own label. */
export type FlagPlace = { readonly tier: number; readonly anchor: 'start' | 'middle' | 'end'; readonly textPx: number }

type Boxed = { readonly xPx: number; readonly from: number; readonly to: number; readonly place: FlagPlace }

const AIR_PX = 5

/**
 * A place for each label inside the edges. Every order of setting them down and every side of the line is tried; the
 * lowest stack without a crossing wins (there are four labels at most). Same order as given.
 */
export function placeFlags(flags: readonly Flag[], edgesPx: readonly [number, number]): readonly FlagPlace[] {
  const boxes = flags.map((flag) => [boxOf(flag, true, edgesPx), boxOf(flag, false, edgesPx)] as const)
  let best: SetDown | undefined
  for (const order of ordersOf(flags.map((_, index) => index))) {
    for (let sides = 0; sides < 2 ** flags.length; sides += 1) best = setDown(boxes, order, sides, best?.cost) ?? best
  }
  return best?.boxes.map(({ place }) => place) ?? []
}

type SetDown = { readonly cost: number; readonly boxes: readonly Boxed[] }

/** The labels set down in this order; undefined where that costs no less than what was found before. */
function setDown(
  sided: readonly (readonly [right: Boxed, left: Boxed])[],
  order: readonly number[],
  sides: number,
  belowCost = Number.POSITIVE_INFINITY,
): SetDown | undefined {
  const boxes: Boxed[] = []
  const placed: Boxed[] = []
  let cost = 0
  for (const index of order) {
    const box = sided[index]?.[(sides >> index) % 2 === 0 ? 0 : 1]
    if (!box) continue
    let tier = 0
    while (placed.some((other) => other.place.tier === tier && overlap(box, other))) tier += 1
    // a line passes every lower tier, and higher lines pass this one
    const crossed = placed.filter(({ xPx, from, to, place }) =>
      place.tier < tier
        ? box.xPx > from - AIR_PX && box.xPx < to + AIR_PX
        : place.tier > tier && xPx > box.from - AIR_PX && xPx < box.to + AIR_PX,
    ).length
    cost += tier + crossed * 100 + (box.place.anchor === 'middle' ? 0.5 : 0)
    if (cost >= belowCost) return undefined
    const set = { ...box, place: { ...box.place, tier } }
    placed.push(set)
    boxes[index] = set
  }
  return { cost, boxes }
}

/** The label right of its line, or left of it; pushed in where it would go over an edge. */
function boxOf({ xPx, widthPx }: Flag, isRight: boolean, [low, high]: readonly [number, number]): Boxed {
  const wanted = isRight ? xPx : xPx - widthPx
  const from = Math.max(low, Math.min(wanted, high - widthPx))
  const anchor = from !== wanted ? 'middle' : isRight ? 'start' : 'end'
  const textPx = anchor === 'middle' ? from + widthPx / 2 : xPx
  return { xPx, from, to: from + widthPx, place: { tier: 0, anchor, textPx } }
}

const overlap = (one: Boxed, other: Boxed): boolean => one.from < other.to + AIR_PX && other.from < one.to + AIR_PX

function ordersOf(items: readonly number[]): readonly (readonly number[])[] {
  if (items.length < 2) return [items]
  return items.flatMap((first) => ordersOf(items.filter((item) => item !== first)).map((rest) => [first, ...rest]))
}
