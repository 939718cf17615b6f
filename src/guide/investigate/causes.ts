/** Which causes still fit: a source with a way in that goes together with it, or a fault of the victim. */
import type { Standing } from './standing.ts'

/** Members that go together, and those among them whose repair is the cheapest. */
export type Cause = { readonly members: readonly Standing[]; readonly cheapest: readonly Standing[] }

const causeOf = (...members: readonly Standing[]): Cause => {
  const least = Math.min(...members.map(({ suspect }) => suspect.effort))
  return { members, cheapest: members.filter(({ suspect }) => suspect.effort === least) }
}

const isProven = ({ is }: Standing): boolean => is === 'proven'

/** A repair that was done and only helped is part of the cause, not what is left of it; one that cured it is the cause. */
const isOpen = ({ tried }: Standing): boolean => tried !== 'less'

/** Those of a part that fit; the proven ones alone when there are any. */
function fitting(all: readonly Standing[], part: Standing['suspect']['part']): readonly Standing[] {
  const fits = all.filter((each) => each.suspect.part === part && each.fits && isOpen(each))
  const proven = fits.filter(isProven)
  return proven.length > 0 ? proven : fits
}

function withPaths(source: Standing, paths: readonly Standing[]): readonly Cause[] {
  const ways = source.suspect.paths ?? []
  const together = paths.filter((path) => isProven(path) || ways.includes(path.suspect.id))
  return together.length === 0 ? [causeOf(source)] : together.map((path) => causeOf(source, path))
}

/** A source whose every way in is closed or speaks against it does not fit, unless it is proven. */
const hasWay = (source: Standing, paths: readonly Standing[]): boolean =>
  isProven(source) ||
  (source.suspect.paths ?? []).length === 0 ||
  paths.some((path) => source.suspect.paths?.includes(path.suspect.id))

/**
 * The causes that fit the answers. A proven fault of the victim leaves only itself; a proven source or path leaves only
 * what goes together with it. An answer about one part settles nothing about another.
 */
export function causesOf(all: readonly Standing[]): readonly Cause[] {
  const sources = fitting(all, 'source')
  const paths = fitting(all, 'path')
  const victims = fitting(all, 'victim')
  if (victims.some(isProven)) return victims.map((victim) => causeOf(victim))
  const isSettled = [...sources, ...paths].some(isProven)
  const going = sources.filter((source) => hasWay(source, paths))
  const paired = going.flatMap((source) => withPaths(source, paths))
  const standsAlone = (path: Standing) => path.isAlone && (isProven(path) || !sources.some(isProven))
  // Without a source that fits, a way in still counts when something speaks for it, or when nothing else is left.
  const isLeft = (path: Standing) => going.length === 0 && (isProven(path) || path.balance > 0 || victims.length === 0)
  const alone = paths.filter((path) => isLeft(path) || standsAlone(path)).map((path) => causeOf(path))
  return [...paired, ...alone, ...(isSettled ? [] : victims.map((victim) => causeOf(victim)))]
}

/** The repairs that serve every cause left, the likeliest first; empty while causes need different ones. */
export function servingAll(causes: readonly Cause[]): readonly Standing[] {
  const [first, ...rest] = causes
  if (first === undefined) return []
  return first.cheapest.filter((one) => rest.every(({ cheapest }) => cheapest.includes(one)))
}
