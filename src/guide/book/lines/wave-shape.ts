/** Points of the curves that the waveforms of line cards are made of. Seconds and volts. */

export type Point = readonly [sec: number, volt: number]

/** A straight edge takes so much longer from end to end than from 10 to 90 %. */
const WHOLE_EDGE = 1 / 0.8

/** Levels held for `eachSec`, with straight edges of `edgeSec` (10 to 90 %) around each change. */
export function stepped(levels: readonly number[], eachSec: number, edgeSec: number): readonly Point[] {
  const halfSec = (edgeSec * WHOLE_EDGE) / 2
  const points: Point[] = [[0, levels[0] ?? 0]]
  for (const [at, volt] of levels.entries()) {
    const before = levels[at - 1]
    if (before === undefined || before === volt) continue
    points.push([at * eachSec - halfSec, before], [at * eachSec + halfSec, volt])
  }
  points.push([levels.length * eachSec, levels.at(-1) ?? 0])
  return points
}

/** A curve as so many straight pieces. */
export const curve = (spanSec: number, pieces: number, voltAt: (sec: number) => number): readonly Point[] =>
  Array.from({ length: pieces + 1 }, (_, at) => {
    const sec = (at / pieces) * spanSec
    return [sec, voltAt(sec)] as const
  })

/** From one level to another with one time constant, from `fromSec` to `toSec`. */
export const decay = (given: {
  readonly fromSec: number
  readonly toSec: number
  readonly fromV: number
  readonly toV: number
  readonly tauSec: number
}): readonly Point[] => {
  const { fromSec, toSec, fromV, toV, tauSec } = given
  const lastSec = Math.min(toSec, fromSec + 6 * tauSec)
  const pieces = curve(lastSec - fromSec, 14, (sec) => toV + (fromV - toV) * Math.exp(-sec / tauSec))
  return [
    ...pieces.map(([sec, volt]): Point => [sec + fromSec, volt]),
    ...(lastSec < toSec ? [[toSec, toV] as const] : []),
  ]
}

export const sine =
  (peakV: number, hz: number, offRad = 0) =>
  (sec: number): number =>
    peakV * Math.sin(2 * Math.PI * hz * sec + offRad)
