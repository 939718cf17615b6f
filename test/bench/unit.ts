/**
 * What a bench measures in: work of the kind the calculations do, small objects made, handed on step by step, kept in a map,
 * read back and let go. Where other programs share caches and memory it grows dearer as they do; a loop of numbers alone,
 * which was the unit before, stays quick there and called everything else twice as slow as it is.
 * Times are by the clock and short, a few milliseconds each, and of many rounds the least counts: that one was left alone.
 * (The processor's time of the process counts the threads of collector and compiler too, which nobody waits for.)
 */

/**
 * What a desk takes for it when it is left alone, in ms. Derived: the unit is as long as makes a window and a connector come to as
 * many units on a machine that is not left alone as they came to, on one that was, in loops of a million multiply–adds of 2.7 ms.
 */
export const DESK_UNIT_MS = 2.7

/** Rounds of the unit before one counts: for the compiler. */
export const UNIT_WARM_UP = 60

/** The unit. It returns what it found so that nothing can be left out. */
export function unitOfWork(): number {
  type Point = { readonly re: number; readonly im: number }
  function* walk(steps: number): Generator<Point, void> {
    let at: Point = { re: 0.3, im: 0.1 }
    for (let i = 0; i < steps; i++) {
      at = { re: at.re * 0.61 - at.im * 0.37 + 0.11, im: at.re * 0.37 + at.im * 0.61 + 0.07 }
      yield at
    }
  }
  const kept = new Map<string, readonly Point[]>()
  const nameOf = (round: number): string => `of ${round % 41}`
  let sum = 0
  for (let round = 0; round < 170; round++) {
    const points = [...walk(400)]
    kept.set(nameOf(round), points)
    const lengths = points
      .filter(({ re }) => re > 0.1)
      .map((point) => ({ ...point, length: Math.hypot(point.re, point.im) }))
    sum += lengths.reduce((all, { length }) => all + length, 0)
    for (const { re } of kept.get(nameOf(7 * round)) ?? points) sum += re
  }
  return sum
}

/** Milliseconds a job takes, by the clock. */
export function tookMs(job: () => number): number {
  const from = performance.now()
  if (!Number.isFinite(job())) throw new Error('nothing was calculated')
  return performance.now() - from
}

/** Milliseconds of the processor since `from`. */
export function spentMs(from: NodeJS.CpuUsage): number {
  const { user, system } = process.cpuUsage(from)
  return (user + system) / 1e3
}

/** Milliseconds of the processor a job takes: for one too long to be left alone by others. */
export function cpuMs(job: () => unknown): number {
  const from = process.cpuUsage()
  job()
  return spentMs(from)
}

export const least = (values: readonly number[]): number => Math.min(...values)

/**
 * The least of each job over many rounds, in units: the unit and every job once in each round, so that they meet the machine
 * in the same states. What disturbs a round only adds to it. `warmUp` rounds before are for the compiler.
 */
export function leastInUnits<Name extends string>(
  jobs: Readonly<Record<Name, () => number>>,
  { rounds, warmUp }: { readonly rounds: number; readonly warmUp: number },
): Readonly<Record<Name, number>> {
  const names = Object.keys(jobs) as Name[]
  const units: number[] = []
  const spent = new Map(names.map((name) => [name, [] as number[]]))
  for (let round = -warmUp; round < rounds; round++) {
    const unit = tookMs(unitOfWork)
    if (round >= 0) units.push(unit)
    for (const name of names) {
      const ms = tookMs(jobs[name])
      if (round >= 0) spent.get(name)?.push(ms)
    }
  }
  return Object.fromEntries(names.map((name) => [name, least(spent.get(name) ?? []) / least(units)])) as Record<
    Name,
    number
  >
}
