/**
 * Contacts of one plate solved by their nodes: complex elimination over every node at once, every part a branch of its
 * own. Shares nothing with the affine shares it judges.
 */
type Z = readonly [re: number, im: number]
type Branch = { readonly from: number; readonly to: number; readonly sie: Z }

export type NodalPart =
  | { readonly farads: number; readonly esrOhm: number; readonly eslH: number }
  | { readonly henries: number; readonly dcrOhm: number }

export type NodalContact = {
  readonly chain: readonly NodalPart[]
  readonly sourceOhm: number
  readonly loadOhm: number
  readonly loadF: number
  readonly volts: number
}

const over = ([re, im]: Z): Z => {
  const m = re * re + im * im
  return [re / m, -im / m]
}

/** Load volts of every contact, as magnitudes; no bond = every contact without its filter. */
export function loadVolts(
  contacts: readonly NodalContact[],
  bond: { readonly ohm: number; readonly henries: number } | undefined,
  hz: number,
): readonly number[] {
  const w = 2 * Math.PI * hz
  const branches: Branch[] = []
  const inject: { node: number; amps: Z }[] = []
  let count = 1
  const PLATE = 0
  const loads: number[] = []
  for (const { chain, sourceOhm, loadOhm, loadF, volts } of contacts) {
    let node = count++
    branches.push({ from: node, to: -1, sie: [1 / sourceOhm, 0] })
    inject.push({ node, amps: [volts / sourceOhm, 0] })
    for (const part of bond ? chain : []) {
      if ('farads' in part)
        branches.push({ from: node, to: PLATE, sie: over([part.esrOhm, w * part.eslH - 1 / (w * part.farads)]) })
      else {
        const next = count++
        branches.push({ from: node, to: next, sie: over([part.dcrOhm, w * part.henries]) })
        node = next
      }
    }
    branches.push({ from: node, to: -1, sie: [1 / loadOhm, w * loadF] })
    loads.push(node)
  }
  branches.push({ from: PLATE, to: -1, sie: bond ? over([bond.ohm, w * bond.henries]) : [1, 0] })
  const volts = solve(count, branches, inject)
  return loads.map((node) => Math.hypot(...(volts[node] as Z)))
}

function solve(count: number, branches: readonly Branch[], inject: readonly { node: number; amps: Z }[]): readonly Z[] {
  const width = count + 1
  const re = new Float64Array(count * width)
  const im = new Float64Array(count * width)
  const bump = (row: number, column: number, [x, y]: Z, sign: number) => {
    const at = row * width + column
    re[at] = (re[at] as number) + sign * x
    im[at] = (im[at] as number) + sign * y
  }
  for (const { from, to, sie } of branches) {
    bump(from, from, sie, 1)
    if (to < 0) continue
    bump(to, to, sie, 1)
    bump(from, to, sie, -1)
    bump(to, from, sie, -1)
  }
  for (const { node, amps } of inject) bump(node, count, amps, 1)
  const get = (row: number, column: number): Z => [
    re[row * width + column] as number,
    im[row * width + column] as number,
  ]
  for (let k = 0; k < count; k++) {
    let pivot = k
    for (let row = k + 1; row < count; row++) if (Math.hypot(...get(row, k)) > Math.hypot(...get(pivot, k))) pivot = row
    for (let column = k; pivot !== k && column < width; column++)
      for (const side of [re, im]) {
        const held = side[k * width + column] as number
        side[k * width + column] = side[pivot * width + column] as number
        side[pivot * width + column] = held
      }
    const inverse = over(get(k, k))
    for (let row = 0; row < count; row++) {
      if (row === k) continue
      const [aRe, aIm] = get(row, k)
      if (aRe === 0 && aIm === 0) continue
      const [fRe, fIm] = [aRe * inverse[0] - aIm * inverse[1], aRe * inverse[1] + aIm * inverse[0]]
      for (let column = k; column < width; column++) {
        const [cRe, cIm] = get(k, column)
        bump(row, column, [fRe * cRe - fIm * cIm, fRe * cIm + fIm * cRe], -1)
      }
    }
  }
  return Array.from({ length: count }, (_, k): Z => {
    const inverse = over(get(k, k))
    const [re1, im1] = get(k, count)
    return [re1 * inverse[0] - im1 * inverse[1], re1 * inverse[1] + im1 * inverse[0]]
  })
}
