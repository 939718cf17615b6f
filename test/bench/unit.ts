/**
 * What a bench measures in: a loop of a million complex multiply–adds, which the compiler of every machine handles alike.
 * Times are by the clock and short, a few milliseconds each, and of many rounds the least counts: that one was left alone.
 * (The processor's time of the process counts the threads of collector and compiler too, which nobody waits for.)
 */

export const STEPS = 1_000_000

/** What a desk takes for it when it is left alone, in ms. */
export const DESK_UNIT_MS = 2.7

/** z ← z·q + c, |q| < 1, so many times. The result is returned so that nothing can be left out; a browser runs it too. */
export function calibration(steps: number = STEPS): number {
  let re = 0.3
  let im = 0.1
  for (let i = 0; i < steps; i++) {
    const next = re * 0.61 - im * 0.37 + 0.11
    im = re * 0.37 + im * 0.61 + 0.07
    re = next
  }
  return re + im
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
    const unit = tookMs(calibration)
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
