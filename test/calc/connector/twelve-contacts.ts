/** Twelve invented contacts of one plate, and the same as a netlist. */
import type { PlateContact, Stage } from '../../support/exact-plate.ts'

type Contact = {
  readonly sourceOhm: number
  readonly loadOhm: number
  readonly loadF: number
  /** source side first: farads to the plate or henries in the line */
  readonly chain: readonly ({ readonly farads: number } | { readonly henries: number })[]
}

const C = (farads: number) => ({ farads })
const L = (henries: number) => ({ henries })

export const TWELVE: readonly Contact[] = [
  { sourceOhm: 50, loadOhm: 50, loadF: 0, chain: [C(10e-9)] },
  { sourceOhm: 1, loadOhm: 1000, loadF: 20e-12, chain: [L(1e-6), C(100e-9)] },
  { sourceOhm: 150, loadOhm: 10e3, loadF: 30e-12, chain: [C(4.7e-9), L(2e-6), C(4.7e-9)] },
  { sourceOhm: 50, loadOhm: 75, loadF: 0, chain: [C(100e-12)] },
  { sourceOhm: 300, loadOhm: 300, loadF: 5e-12, chain: [C(1e-9), L(10e-6)] },
  { sourceOhm: 10, loadOhm: 10, loadF: 0, chain: [L(0.5e-6), C(47e-9), L(0.5e-6)] },
  { sourceOhm: 50, loadOhm: 1e6, loadF: 15e-12, chain: [C(2.2e-9)] },
  { sourceOhm: 5, loadOhm: 28, loadF: 0, chain: [C(220e-9), L(4.7e-6), C(220e-9)] },
  { sourceOhm: 100, loadOhm: 120, loadF: 0, chain: [] },
  { sourceOhm: 600, loadOhm: 600, loadF: 10e-12, chain: [C(22e-9)] },
  { sourceOhm: 50, loadOhm: 200, loadF: 0, chain: [C(330e-12)] },
  { sourceOhm: 25, loadOhm: 470, loadF: 0, chain: [L(3.3e-6)] },
]

export const ESR_OHM = 0.05
export const ESL_H = 0.3e-9
export const DCR_OHM = 0.1

export function plateContact({ sourceOhm, loadOhm, loadF, chain }: Contact, hz: number): PlateContact {
  const w = 2 * Math.PI * hz
  const stages = chain.map((one): Stage => {
    if ('henries' in one) return { seriesOhm: [DCR_OHM, w * one.henries] }
    const x = w * ESL_H - 1 / (w * one.farads)
    const square = ESR_OHM * ESR_OHM + x * x
    return { shuntSie: [ESR_OHM / square, -x / square] }
  })
  return { stages, sourceOhm: [sourceOhm, 0], loadSie: [1 / loadOhm, w * loadF] }
}

/** All contacts and the bond; `volts` of each source; no bond = every contact without its filter. */
export function netlist(
  contacts: readonly Contact[],
  volts: readonly number[],
  bond: { readonly ohm: number; readonly henries: number } | undefined,
): string {
  const lines = ['plate of a connector']
  contacts.forEach(({ sourceOhm, loadOhm, loadF, chain }, i) => {
    lines.push(`V${i} e${i} 0 DC 0 AC ${volts[i] ?? 0}`, `RS${i} e${i} n${i}x0 ${sourceOhm}`)
    const parts = bond ? chain : []
    let node = `n${i}x0`
    parts.forEach((part, k) => {
      if ('henries' in part) {
        const next = k === parts.length - 1 ? `o${i}` : `n${i}x${k + 1}`
        lines.push(`RD${i}k${k} ${node} m${i}k${k} ${DCR_OHM}`, `L${i}k${k} m${i}k${k} ${next} ${part.henries}`)
        node = next
      } else
        lines.push(
          `RC${i}k${k} ${node} q${i}k${k} ${ESR_OHM}`,
          `LC${i}k${k} q${i}k${k} r${i}k${k} ${ESL_H}`,
          `C${i}k${k} r${i}k${k} plate ${part.farads}`,
        )
    })
    if (node !== `o${i}`) lines.push(`RO${i} ${node} o${i} 1e-9`)
    lines.push(`RL${i} o${i} 0 ${loadOhm}`)
    if (loadF > 0) lines.push(`CL${i} o${i} 0 ${loadF}`)
  })
  if (bond) lines.push(`RB plate pb ${bond.ohm}`, `LB pb 0 ${bond.henries}`)
  lines.push('.ac dec 4 10k 1g', '.end')
  return lines.join('\n')
}
