/** The ladder picture from its rungs: every rung that comes above one it is held against is a fault, named in words. */
import { type Against, type LadderFault, ladderFaults } from '../ladder.ts'
import { formatEstimate, formatQuantity, printText } from '../quantity/format.ts'
import type { LadderRung, Picture, Rung } from '../types.ts'

export type LadderPicture = Extract<Picture, { is: 'ladder' }>

export type LadderQuestion = {
  readonly title: string
  readonly rungs: readonly Rung[]
  /** whether `comes` is judged against `holds`; default: every pair */
  readonly against?: Against
  /** what stands behind the volts that hold: "the input withstands"; default: the label */
  readonly phrase?: (holds: Rung) => string
  /** the field a rung's highest volts can be entered into */
  readonly useAs?: (rung: Rung) => string | undefined
}

const volts = (value: number): string => formatQuantity(value, 'voltage', 3)

/** Draws the rungs as they are given, each fault as a sentence below them. */
export function ladderPicture({ title, rungs, against, phrase, useAs }: LadderQuestion): LadderPicture {
  const faults = ladderFaults(rungs, against)
  const drawn = rungs.map((rung): LadderRung => {
    const { id, label, side, minV, maxV } = rung
    const fault = faults.find(({ comesId }) => comesId === id)
    const key = useAs?.(rung)
    return {
      ...{ id, label, side, minV, maxV },
      ...(fault === undefined ? {} : { exceeds: fault.holdsId }),
      ...(key === undefined ? {} : { use: [{ key, text: printText(maxV, 'voltage') }] }),
    }
  })
  return { is: 'ladder', title, rungs: drawn, faults: faults.map((fault) => faultSentence(fault, rungs, phrase)) }
}

/** What comes is brought up: "Inrush peak 323 V is above the 322 V of capacitor withstand test." */
function faultSentence(fault: LadderFault, rungs: readonly Rung[], phrase: LadderQuestion['phrase']): string {
  const comes = rungs.find(({ id }) => id === fault.comesId)
  const holds = rungs.find(({ id }) => id === fault.holdsId)
  const behind = holds && (phrase?.(holds) ?? `of ${holds.label.toLowerCase()}`)
  return `${comes?.label ?? fault.comesId} ${formatEstimate(fault.comesV, 'voltage', 'least')} is above the ${volts(fault.holdsV)} ${behind ?? ''}.`
}
