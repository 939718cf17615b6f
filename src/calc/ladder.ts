/** The ladder picture from its rungs: every rung that comes above one it is held against is a fault, named in words. */
import { formatQuantity } from './quantity/format.ts'
import type { LadderRung, Picture, Rung } from './types.ts'

export type LadderPicture = Extract<Picture, { is: 'ladder' }>

export type LadderQuestion = {
  readonly title: string
  readonly rungs: readonly Rung[]
  /** whether `comes` is judged against `holds`; default: every pair */
  readonly against?: (comes: Rung, holds: Rung) => boolean
  /** what stands behind the volts that hold: "the input withstands"; default: the label */
  readonly phrase?: (holds: Rung) => string
}

const volts = (value: number): string => formatQuantity(value, 'voltage', 3)

/** Draws the rungs as they are given. A fault compares the most that comes with the least that holds, in volts. */
export function ladderPicture({ title, rungs, against, phrase }: LadderQuestion): LadderPicture {
  const holding = rungs.filter((rung) => rung.side === 'holds')
  const faults: string[] = []
  const drawn = rungs.map((rung): LadderRung => {
    const { id, label, side, minV, maxV } = rung
    const plain = { id, label, side, minV, maxV }
    if (side === 'holds') return plain
    const below = holding
      .filter((held) => maxV > held.minV && (against === undefined || against(rung, held)))
      .sort((a, b) => a.minV - b.minV)[0]
    if (below === undefined) return plain
    const behind = phrase?.(below) ?? `of ${below.label.toLowerCase()}`
    faults.push(`${label} ${volts(maxV)} is above the ${volts(below.minV)} ${behind}.`)
    return { ...plain, exceeds: below.id }
  })
  return { is: 'ladder', title, rungs: drawn, faults }
}
