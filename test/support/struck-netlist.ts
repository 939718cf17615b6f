/** Lines struck together as a netlist for a transient simulator, and the peaks it is asked for. */
import type { SharedPart, Struck, StruckLine } from '../../src/calc/connector/whole/strike/together.ts'
import { FORWARD } from '../../src/reference/suppressors.ts'

const SOURCES: Readonly<Record<string, string>> = {
  wf4: '1.09405*(exp(-11354*time)-exp(-647265*time))',
  wf5a: '2.33354*(exp(-12632.6*time)-exp(-43604.6*time))',
}

export function sourceText(struck: Pick<Struck, 'ring'>, waveform: string): string {
  const { ring } = struck
  if (ring === undefined) return SOURCES[waveform] as string
  const angle = Math.atan(2 * ring.q)
  const norm = 1 / (Math.sin(angle) * Math.exp(-angle / (2 * ring.q)))
  return `${norm}*sin(${2 * Math.PI * ring.hz}*time)*exp(-${(Math.PI * ring.hz) / ring.q}*time)`
}

/** A junction law: leakage, one conducting side or two. */
const lawOf = (v: string, upV: number, upOhm: number, downV: number, downOhm: number): string =>
  `1e-7*${v} + (${v}>${upV} ? (${v}-${upV})/${upOhm} : (${v}<-${downV} ? (${v}+${downV})/${downOhm} : 0))`

/** Nodes: `c<k>` connector, `o<k>` load, `p` plate; `a<k>`, `en<k>` amperes and joules of a part, `ag<g>`, `eg<g>` of a shared one. */
export function struckNetlist(struck: Struck, waveform: string, stepSec: number, endSec: number): string {
  const source = sourceText(struck, waveform)
  const rest = (line: StruckLine) => {
    const { restV = 0, source: from, lineOhm, filter, loadOhm } = line.circuit
    const coils = filter.topology === 'T' ? 2 : filter.topology === 'C' || filter.topology === 'none' ? 0 : 1
    return (restV * (loadOhm + from.ohm + lineOhm + coils * filter.dcrOhm)) / loadOhm
  }
  const lines = struck.lines.flatMap((line, k) => lineText(line, k, source, rest(line), struck.groups))
  const groups = struck.groups.flatMap((part, g) => groupText(part, g, struck.lines))
  const bond =
    struck.bondH > 0
      ? [`Rb p pb ${struck.bondOhm}`, `Lb pb 0 ${struck.bondH} ic=0`]
      : [`Rb p 0 ${Math.max(1e-9, struck.bondOhm)}`]
  const saved = [
    'v(p)',
    ...struck.lines.flatMap(({ circuit, group }, k) => [
      `v(c${k})`,
      `v(o${k})`,
      ...(circuit.suppressor && group === undefined ? [`v(a${k})`, `v(en${k})`, `v(vz${k})`] : []),
    ]),
    ...struck.groups.flatMap((_, g) => [`v(ag${g})`, `v(eg${g})`]),
  ]
  return [
    'struck together',
    ...lines,
    ...groups,
    ...bond,
    '.options reltol=1e-5 abstol=1e-9 vntol=1e-6 method=gear',
    `.save ${saved.join(' ')}`,
    `.tran ${stepSec} ${endSec} 0 ${stepSec} uic`,
    '.end',
  ].join('\n')
}

function lineText(
  { circuit, group }: StruckLine,
  k: number,
  source: string,
  restDrive: number,
  groups: readonly SharedPart[],
): readonly string[] {
  const { filter, suppressor, placement, loadOhm, loadF, lineH, lineOhm, source: from, restV = 0 } = circuit
  const c = `c${k}`
  const o = `o${k}`
  const cap = (name: string, node: string, farads: number) =>
    farads > 0 ? [`C${name}${k} ${node} p ${farads} ic=${restV}`] : []
  const amps0 = restV / loadOhm
  const coil = (name: string, a: string, b: string, henries: number) => [
    `L${name}${k} ${a} ${name}x${k} ${henries} ic=${amps0}`,
    `RL${name}${k} ${name}x${k} ${b} ${filter.dcrOhm}`,
  ]
  const wire = [`Rw${k} ${c} ${o} 1e-6`]
  const chain: Readonly<Record<string, () => readonly string[]>> = {
    none: () => wire,
    C: () => [...cap('1', c, filter.capacitanceF), ...wire],
    L: () => coil('1', c, o, filter.inductanceH),
    LC: () => [...coil('1', c, o, filter.inductanceH), ...cap('1', o, filter.capacitanceF)],
    CL: () => [...cap('1', c, filter.capacitanceF), ...coil('1', c, o, filter.inductanceH)],
    PI: () => [
      ...cap('1', c, filter.capacitanceF),
      ...coil('1', c, o, filter.inductanceH),
      ...cap('2', o, filter.capacitance2F),
    ],
    T: () => [
      ...coil('1', c, `m${k}`, filter.inductanceH),
      ...cap('1', `m${k}`, filter.capacitanceF),
      ...coil('2', `m${k}`, o, filter.inductance2H),
    ],
  }
  const peak = from.form === 'voltage' ? from.peak : from.peak * from.ohm
  const feed =
    lineH > 0
      ? [`Rs${k} s${k} sx${k} ${from.ohm + lineOhm}`, `Ls${k} sx${k} ${c} ${lineH} ic=${amps0}`]
      : [`Rs${k} s${k} ${c} ${from.ohm + lineOhm}`]
  const terminal = placement === 'connector' ? c : o
  return [
    `Bs${k} s${k} 0 V = ${restDrive}+${peak}*${source}`,
    ...feed,
    ...(chain[filter.topology] as () => readonly string[])(),
    `Ro${k} ${o} 0 ${loadOhm}`,
    ...(loadF > 0 ? [`Co${k} ${o} 0 ${loadF} ic=${restV}`] : []),
    ...(group !== undefined
      ? steeringText(k, terminal, group, groups[group] as SharedPart)
      : suppressor
        ? partText(k, terminal, suppressor, restV)
        : []),
  ]
}

function partText(k: number, terminal: string, part: NonNullable<StruckLine['circuit']['suppressor']>, restV: number) {
  const z = part.leadH > 0 ? `z${k}` : terminal
  const v = `v(${z},p)`
  const [downV, downOhm] = part.bidirectional ? [part.breakdownV, part.dynamicOhm] : [FORWARD.dropV, FORWARD.ohm]
  const law = lawOf(v, part.breakdownV, part.dynamicOhm, downV, downOhm)
  const farads = Math.max(part.capacitanceF, part.leadH > 0 ? 1e-12 : 0)
  return [
    ...(part.leadH > 0 ? [`Lz${k} ${terminal} ${z} ${part.leadH} ic=0`] : []),
    ...(farads > 0 ? [`Cz${k} ${z} p ${farads} ic=${restV}`] : []),
    `Bz${k} ${z} p I = ${law}`,
    `Ba${k} a${k} 0 V = ${law}`,
    `Bv${k} vz${k} 0 V = ${v}`,
    `Be${k} 0 en${k} I = ${v}*(${law})`,
    `Ce${k} en${k} 0 1 ic=0`,
    `Re${k} en${k} 0 1e12`,
  ]
}

function steeringText(k: number, terminal: string, g: number, part: SharedPart): readonly string[] {
  const one = (v: string) => `1e-7*${v} + (${v}>${FORWARD.dropV} ? (${v}-${FORWARD.dropV})/${FORWARD.ohm} : 0)`
  const low = part.isBridge ? `n${g}` : 'p'
  return [
    `Bu${k} ${terminal} w${g} I = ${one(`v(${terminal},w${g})`)}`,
    `Bd${k} ${low} ${terminal} I = ${one(`v(${low},${terminal})`)}`,
  ]
}

function groupText(part: SharedPart, g: number, lines: readonly StruckLine[]): readonly string[] {
  const onV = part.breakdownV + FORWARD.dropV
  const ohm = part.dynamicOhm + FORWARD.ohm
  const farads = Math.max(1e-12, part.capacitanceF)
  const rest = Math.max(0, ...lines.filter(({ group }) => group === g).map(({ circuit }) => circuit.restV ?? 0))
  const side = (node: string, v: string) => {
    const law = `1e-7*${v} + (${v}>${onV} ? (${v}-${onV})/${ohm} : 0)`
    const across = `(${v}>${onV} ? ${v}-${FORWARD.dropV}-${FORWARD.ohm}*(${law}) : ${v})`
    return { law, across, node }
  }
  const up = side(`w${g}`, `v(w${g},p)`)
  const down = side(`n${g}`, `v(p,n${g})`)
  const energy = part.isBridge ? `${up.across}*(${up.law})+${down.across}*(${down.law})` : `${up.across}*(${up.law})`
  return [
    `Cw${g} w${g} p ${farads} ic=${rest}`,
    `Bw${g} w${g} p I = ${up.law}`,
    ...(part.isBridge ? [`Cn${g} n${g} p ${farads} ic=0`, `Bn${g} p n${g} I = ${down.law}`] : []),
    `Bag${g} ag${g} 0 V = ${up.law}`,
    `Beg${g} 0 eg${g} I = ${energy}`,
    `Ceg${g} eg${g} 0 1 ic=0`,
    `Reg${g} eg${g} 0 1e12`,
  ]
}
