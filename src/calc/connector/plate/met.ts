/** A loss that occurs in a shared bond: what refutes a need. */
import type { Complex } from '../complex.ts'
import type { At, Cell } from './cells.ts'
import { lossDb } from './loss.ts'
import type { Others } from './plate.ts'
import { ALPHA, BARE, BETA, OWN, PLATE, SHARE } from './share.ts'

/** Times the others are moved to where they push hardest as the plate then stands. */
const PUSHES = 3

/**
 * A loss that really occurs: its own worst point, every other contact at the point of its box that pushes its volts
 * outward most. A bound from above on the least loss; left once it is below `enoughDb`.
 */
export function metTogether(
  own: At,
  { boxes, butAt }: { readonly boxes: readonly (readonly Cell[])[]; readonly butAt: number },
  { bondOhm, centre }: Others,
  enoughDb: number,
): number {
  const at = SHARE * own.point
  const get = (of: number): Complex => [own.shares[at + of] as number, own.shares[at + of + 1] as number]
  const [zRe, zIm] = bondOhm
  const [ownRe, ownIm] = get(OWN)
  const [plateRe, plateIm] = get(PLATE)
  const bare = Math.hypot(...get(BARE))
  let [cRe, cIm] = centre
  let least = Number.POSITIVE_INFINITY
  for (let push = 0; push < PUSHES && least >= enoughDb; push++) {
    const vRe = ownRe + plateRe * cRe - plateIm * cIm
    const vIm = ownIm + plateRe * cIm + plateIm * cRe
    // outward is the length along the volts of what a term does there: Re(conj(V)·plate·Zb·(α − c·β))
    const pzRe = plateRe * zRe - plateIm * zIm
    const pzIm = plateRe * zIm + plateIm * zRe
    const gRe = vRe * pzRe + vIm * pzIm
    const gIm = vRe * pzIm - vIm * pzRe
    let [aRe, aIm] = get(ALPHA)
    let [bRe, bIm] = get(BETA)
    for (let j = 0; j < boxes.length; j++) {
      if (j === butAt) continue
      let [best, xRe, xIm, yRe, yIm] = [Number.NEGATIVE_INFINITY, 0, 0, 0, 0]
      for (const { box } of boxes[j] as readonly Cell[])
        for (let i = 0; i < box.count; i++) {
          const from = SHARE * i
          const [a1, a2] = [box.shares[from + ALPHA] as number, box.shares[from + ALPHA + 1] as number]
          const [b1, b2] = [box.shares[from + BETA] as number, box.shares[from + BETA + 1] as number]
          const outward = gRe * (a1 - (cRe * b1 - cIm * b2)) - gIm * (a2 - (cRe * b2 + cIm * b1))
          if (outward > best) [best, xRe, xIm, yRe, yIm] = [outward, a1, a2, b1, b2]
        }
      aRe += xRe
      aIm += xIm
      bRe += yRe
      bIm += yIm
    }
    const dRe = 1 + zRe * bRe - zIm * bIm
    const dIm = zRe * bIm + zIm * bRe
    const d2 = dRe * dRe + dIm * dIm
    const nRe = zRe * aRe - zIm * aIm
    const nIm = zRe * aIm + zIm * aRe
    cRe = (nRe * dRe + nIm * dIm) / d2
    cIm = (nIm * dRe - nRe * dIm) / d2
    least = Math.min(
      least,
      lossDb(Math.hypot(ownRe + plateRe * cRe - plateIm * cIm, ownIm + plateRe * cIm + plateIm * cRe), bare),
    )
  }
  return least
}
