/** Peaks by a parabola through three samples, energies by the weights of the step, powers at its ends. */
import type { Piece } from '../../../surge/network.ts'
import type { Stepper } from './stepper.ts'
import { BOND, FIRST_RAIL, type LineRows, PLATE, type RailRows, type System } from './system.ts'
import { STAGES, WEIGHTS } from './tableau.ts'
import type { GroupStruck, LineStruck, StruckFigures } from './together.ts'

/** Largest magnitude of one curve, sample by sample. */
class Peak {
  value = 0
  sec = 0
  private t0 = Number.NaN
  private t1 = Number.NaN
  private y0 = 0
  private y1 = 0

  see(sec: number, y: number): void {
    if (Math.abs(y) > this.value) {
      this.value = Math.abs(y)
      this.sec = sec
    }
    this.between(sec, y)
    if (sec > this.t1 || Number.isNaN(this.t1)) {
      this.t0 = this.t1
      this.y0 = this.y1
    }
    this.t1 = sec
    this.y1 = y
  }

  /** The top of the parabola through the last three, where it lies among them and is no corner. */
  private between(t2: number, y2: number): void {
    const { t0, t1, y0, y1 } = this
    if (!(t1 > t0) || !(t2 > t1)) return
    if (Math.abs(y1) < Math.abs(y0) || Math.abs(y1) < Math.abs(y2)) return
    const left = (y1 - y0) / (t1 - t0)
    const bend = ((y2 - y1) / (t2 - t1) - left) / (t2 - t0)
    if (bend * y1 >= 0) return
    const at = (t0 + t1) / 2 - left / (2 * bend)
    if (at < t0 || at > t2) return
    const value = Math.abs(y0 + left * (at - t0) + bend * (at - t0) * (at - t1))
    if (value <= this.value || value > 1.01 * Math.abs(y1)) return
    this.value = value
    this.sec = at
  }
}

class Powers {
  private room = 1024
  private kept = new Float64Array(1024)
  count = 0
  push(value: number): void {
    if (this.count === this.room) {
      this.room *= 2
      const grown = new Float64Array(this.room)
      grown.set(this.kept)
      this.kept = grown
    }
    this.kept[this.count++] = value
  }
  finish(): Float64Array {
    return this.kept.slice(0, this.count)
  }
}

type LineWatch = {
  readonly line: LineRows
  readonly part: { readonly node: number; readonly pieces: readonly Piece[]; readonly at: number } | undefined
  readonly connector: Peak
  readonly load: Peak
  readonly clamp: Peak
  readonly amps: Peak
  readonly capacitors: readonly Peak[]
  readonly watts: Powers
  energyJ: number
}

type RailWatch = {
  readonly rail: RailRows
  readonly amps: Peak
  readonly clamp: Peak
  readonly watts: Powers
  energyJ: number
}

/** A junction's amperes by the piece its volts lie in. */
const ampsAt = (pieces: readonly Piece[], volts: number): number => {
  const piece = pieces.find(({ lowV, highV }) => volts >= lowV && volts <= highV)
  return piece === undefined ? 0 : piece.sie * volts + piece.offsetA
}

export class Watcher {
  private readonly stepper: Stepper
  private readonly lines: readonly LineWatch[]
  private readonly rails: readonly RailWatch[]
  private readonly bounce = new Peak()
  private readonly bond = new Peak()
  private readonly sec = new Powers()

  constructor({ lines, rails }: System, stepper: Stepper) {
    this.stepper = stepper
    this.lines = lines.map((line): LineWatch => {
      const at = line.junctions.findIndex(({ isPart }) => isPart)
      const junction = line.junctions[at]
      return {
        line,
        part: junction && { node: junction.node, pieces: junction.pieces, at },
        connector: new Peak(),
        load: new Peak(),
        clamp: new Peak(),
        amps: new Peak(),
        capacitors: line.capacitorNodes.map(() => new Peak()),
        watts: new Powers(),
        energyJ: 0,
      }
    })
    this.rails = rails.map((rail) => ({ rail, amps: new Peak(), clamp: new Peak(), watts: new Powers(), energyJ: 0 }))
    this.sample()
  }

  /** Reads the step taken last: its energy by its stages, everything else at its end. */
  look(): void {
    const { stages, lastStep } = this.stepper
    this.lines.forEach((watch, k) => {
      const { part } = watch
      if (part === undefined) return
      for (let i = 0; i < STAGES; i++) {
        const volts = stages[i]?.lines[k]?.[part.node] as number
        watch.energyJ += lastStep * (WEIGHTS[i] as number) * volts * ampsAt(part.pieces, volts)
      }
    })
    this.rails.forEach((watch, r) => {
      for (let i = 0; i < STAGES; i++)
        watch.energyJ +=
          lastStep * (WEIGHTS[i] as number) * wattsOf(watch.rail, stages[i]?.edge[FIRST_RAIL + r] as number)
    })
    this.sample()
  }

  private sample(): void {
    const { x, edge, sec } = this.stepper
    const plate = edge[PLATE] as number
    this.sec.push(sec)
    this.bounce.see(sec, plate)
    this.bond.see(sec, edge[BOND] as number)
    this.lines.forEach((watch, k) => {
      const own = x[k] as Float64Array
      const { line, part } = watch
      watch.connector.see(sec, (own[line.connector] as number) + plate)
      watch.load.see(sec, (own[line.load] as number) + plate)
      line.capacitorNodes.forEach((node, i) => {
        watch.capacitors[i]?.see(sec, own[node] as number)
      })
      if (part === undefined) return
      const volts = own[part.node] as number
      const amps = ampsAt(part.pieces, volts)
      watch.clamp.see(sec, volts)
      watch.amps.see(sec, amps)
      watch.watts.push(volts * amps)
    })
    this.rails.forEach((watch, r) => {
      const volts = edge[FIRST_RAIL + r] as number
      const amps = ampsAt(watch.rail.pieces, volts)
      watch.amps.see(sec, amps)
      watch.clamp.see(sec, acrossPart(watch.rail, volts, amps))
      watch.watts.push(wattsOf(watch.rail, volts))
    })
  }

  figures(isWhole: boolean): StruckFigures {
    const groups = new Map<number, GroupStruck>()
    for (const { rail, amps, clamp, watts, energyJ } of this.rails) {
      const before = groups.get(rail.group)
      const own = watts.finish()
      groups.set(rail.group, {
        clampA: Math.max(before?.clampA ?? 0, amps.value),
        clampV: Math.max(before?.clampV ?? 0, clamp.value),
        energyJ: (before?.energyJ ?? 0) + energyJ,
        watts: before === undefined ? own : own.map((value, i) => value + (before.watts[i] ?? 0)),
      })
    }
    return {
      lines: this.lines.map(
        ({ connector, load, clamp, amps, capacitors, watts, energyJ }): LineStruck => ({
          connectorV: connector.value,
          loadV: load.value,
          clampV: clamp.value,
          clampA: amps.value,
          energyJ,
          capacitorV: capacitors.reduce((most, { value }) => Math.max(most, value), 0),
          watts: watts.finish(),
        }),
      ),
      groups: [...groups.entries()].sort(([a], [b]) => a - b).map(([, figures]) => figures),
      bounceV: this.bounce.value,
      bounceSec: this.bounce.sec,
      bondA: this.bond.value,
      sec: this.sec.finish(),
      isWhole,
    }
  }
}

/** Volts of the part of a rail, without the drop behind it. */
const acrossPart = ({ dropV, dropOhm, onV }: RailRows, volts: number, amps: number): number =>
  Math.abs(volts) <= Math.abs(onV) ? volts : volts - Math.sign(onV) * dropV - dropOhm * amps

function wattsOf(rail: RailRows, volts: number): number {
  const amps = ampsAt(rail.pieces, volts)
  return acrossPart(rail, volts, amps) * amps
}
