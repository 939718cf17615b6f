/** One step after another: five implicit stages, the error held, and the corner of a junction found before it is passed. */
import type { Shape } from '../../../surge/shape.ts'
import { edgeWidth, type Factor, factorOf, type Pieces } from './factor.ts'
import { changePieces, farthestBeyond, type State } from './junctions.ts'
import { BOND, FIRST_RAIL, type LineRows, PLATE, type System } from './system.ts'
import { AT, BEFORE, STAGES, WRONG } from './tableau.ts'

/** Error of one step against the peak so far, or against a thousandth of what could come. */
const TOLERANCE = 1e-5
const FLOOR = 2e-3
const SAFETY = 0.85
const [LEAST_CHANGE, MOST_CHANGE] = [0.2, 2.5]
/** A corner is met when a junction is beyond it by less than this share of its volts. */
const MET = 2e-5
const CORNER_TRIES = 40
const STEP_TRIES = 60
/** Below this share of the time already gone a step cannot be told from none. */
const LEAST_SHARE = 1e-13

/** The first piece of a junction is the blocked one. */
const isConducting = (piece: number): boolean => piece > 0

export class Stepper {
  readonly system: System
  private readonly shape: Shape
  readonly x: readonly Float64Array[]
  readonly edge: Float64Array
  readonly pieces: Pieces
  private readonly slopes: readonly State[]
  private readonly at: State
  private readonly end: State
  private readonly peaks: readonly Float64Array[]
  /** values of every stage of the step taken last, and its length: what is read over it */
  readonly stages: readonly State[]
  lastStep = 0
  sec = 0
  /** when a junction last stood in another piece than its blocked one */
  conductedSec = 0

  constructor(system: System, shape: Shape) {
    this.system = system
    this.shape = shape
    const { lines, rails } = system
    const width = edgeWidth(system)
    const blank = (): State => ({
      lines: lines.map(({ size }) => new Float64Array(size)),
      edge: new Float64Array(width),
    })
    this.x = lines.map(({ restX }) => restX.slice())
    this.edge = new Float64Array(width)
    rails.forEach(({ restV }, r) => {
      this.edge[FIRST_RAIL + r] = restV
    })
    this.pieces = {
      lines: lines.map(({ junctions }) => new Uint8Array(junctions.length)),
      rails: new Uint8Array(rails.length),
    }
    this.slopes = Array.from({ length: STAGES }, blank)
    this.stages = Array.from({ length: STAGES }, blank)
    this.at = blank()
    this.end = blank()
    this.peaks = lines.map(({ size }) => new Float64Array(size))
  }

  /** Moves on by at most `stepSec`; gives the step to try next. */
  advance(stepSec: number): number {
    let step = stepSec
    for (let i = 0; i < STEP_TRIES; i++) {
      const least = LEAST_SHARE * (this.sec + stepSec)
      const error = this.tryStep(step)
      if (error > 1 && step > least) {
        step *= Math.max(LEAST_CHANGE, SAFETY * error ** -0.25)
        continue
      }
      const beyond = this.beyond()
      if (beyond > MET && step > least) {
        this.toCorner(step, beyond)
        this.take()
        changePieces(this.system, this.pieces, { lines: this.x, edge: this.edge })
        return step / 4
      }
      this.take()
      changePieces(this.system, this.pieces, { lines: this.x, edge: this.edge })
      return step * Math.min(MOST_CHANGE, Math.max(LEAST_CHANGE, SAFETY * Math.max(1e-9, error) ** -0.25))
    }
    this.take()
    changePieces(this.system, this.pieces, { lines: this.x, edge: this.edge })
    return step
  }

  /** Leaves the stages of a step that ends just beyond the first corner within `step`. */
  private toCorner(step: number, beyondThere: number): void {
    let [low, high] = [0, step]
    let [fLow, fHigh] = [this.beyondNow(), beyondThere]
    for (let i = 0; i < CORNER_TRIES; i++) {
      // a line through both, kept inside; halves where it stands still
      const share =
        i % 3 === 2 || fHigh - fLow <= 0 ? 0.5 : Math.min(0.98, Math.max(0.02, (MET / 2 - fLow) / (fHigh - fLow)))
      const middle = low + share * (high - low)
      this.tryStep(middle)
      const found = this.beyond()
      if (found >= 0 && found <= MET) return
      if (found > MET) [high, fHigh] = [middle, found]
      else [low, fLow] = [middle, found]
      if (high - low <= 1e-12 * step) break
    }
    this.tryStep(high)
  }

  private drive(line: LineRows, sec: number): number {
    return line.restDrive + line.drive * this.shape.at(sec)
  }

  /** Works the stages of a step out; gives its error over the tolerance. */
  private tryStep(step: number): number {
    this.lastStep = step
    const factor = factorOf(this.system, this.pieces, step)
    for (let i = 0; i < STAGES; i++) this.stage(factor, i, step)
    const last = this.stages[STAGES - 1] as State
    this.end.edge.set(last.edge)
    let worst = 0
    this.system.lines.forEach((line, k) => {
      const to = this.end.lines[k] as Float64Array
      const peaks = this.peaks[k] as Float64Array
      to.set(last.lines[k] as Float64Array)
      for (let r = 0; r < line.size; r++) {
        if ((line.stored[r] as number) === 0) continue
        let wrong = 0
        for (let i = 0; i < STAGES; i++)
          wrong += (WRONG[i] as number) * ((this.slopes[i] as State).lines[k]?.[r] as number)
        const isNode = (line.toPlateF[r] as number) > 0 || r === line.load
        const floor = FLOOR * (isNode ? line.fullV : line.fullA)
        const scale = Math.max(floor, peaks[r] as number, Math.abs(to[r] as number))
        worst = Math.max(worst, Math.abs(step * wrong) / (TOLERANCE * scale))
      }
    })
    return worst
  }

  /** Slope and value of one stage: (E − γh·A)·k = A·z + b·s + c at z = z0 + h·Σ a·k. */
  private stage(factor: Factor, i: number, step: number): void {
    const { lines, rails, bondOhm } = this.system
    const before = BEFORE[i] as readonly number[]
    const slope = this.slopes[i] as State
    const value = this.stages[i] as State
    const { width } = factor
    const gather = (from: Float64Array, to: Float64Array, of: (stage: State) => Float64Array) => {
      to.set(from)
      for (let j = 0; j < i; j++) {
        const share = step * (before[j] as number)
        const k = of(this.slopes[j] as State)
        for (let r = 0; r < to.length; r++) to[r] = (to[r] as number) + share * (k[r] as number)
      }
    }
    gather(this.edge, this.at.edge, (stage) => stage.edge)
    const edge = this.at.edge
    const sums = new Float64Array(width)
    sums[PLATE] = edge[BOND] as number
    sums[BOND] = (edge[PLATE] as number) - bondOhm * (edge[BOND] as number)
    rails.forEach(({ pieces }, r) => {
      const piece = pieces[this.pieces.rails[r] as number]
      const amps = (piece?.sie ?? 0) * (edge[FIRST_RAIL + r] as number) + (piece?.offsetA ?? 0)
      sums[FIRST_RAIL + r] = (sums[FIRST_RAIL + r] as number) - amps
      sums[PLATE] = (sums[PLATE] as number) - amps
    })
    const sec = this.sec + (AT[i] as number) * step
    lines.forEach((line, k) => {
      const at = this.at.lines[k] as Float64Array
      gather(this.x[k] as Float64Array, at, (stage) => stage.lines[k] as Float64Array)
      const right = this.right(line, k, at, edge, sec, sums)
      const free = slope.lines[k] as Float64Array
      const inverse = factor.inverses[k] as Float64Array
      const { size } = line
      for (let r = 0; r < size; r++) {
        let sum = 0
        for (let c = 0; c < size; c++) sum += (inverse[r * size + c] as number) * (right[c] as number)
        free[r] = sum
      }
      const rows = factor.edges[k] as Float64Array
      for (let e = 0; e < width; e++) {
        let sum = 0
        for (let c = 0; c < size; c++) sum += (rows[e * size + c] as number) * (free[c] as number)
        sums[e] = (sums[e] as number) - sum
      }
    })
    for (let e = 0; e < width; e++) {
      let sum = 0
      for (let c = 0; c < width; c++) sum += (factor.corner[e * width + c] as number) * (sums[c] as number)
      slope.edge[e] = sum
      value.edge[e] = (edge[e] as number) + (step / 4) * sum
    }
    lines.forEach(({ size }, k) => {
      const own = slope.lines[k] as Float64Array
      const reach = factor.reaches[k] as Float64Array
      const at = this.at.lines[k] as Float64Array
      const to = value.lines[k] as Float64Array
      for (let r = 0; r < size; r++) {
        let sum = own[r] as number
        for (let e = 0; e < width; e++) sum -= (reach[r * width + e] as number) * (slope.edge[e] as number)
        own[r] = sum
        to[r] = (at[r] as number) + (step / 4) * sum
      }
    })
  }

  /** A·z + b·s + c of a line, and its part of the edge's rows. */
  private right(
    line: LineRows,
    k: number,
    at: Float64Array,
    edge: Float64Array,
    sec: number,
    sums: Float64Array,
  ): Float64Array {
    const { size, a, b, plateA, junctions, count } = line
    const s = this.drive(line, sec)
    const plate = edge[PLATE] as number
    const right = new Float64Array(size)
    for (let r = 0; r < size; r++) {
      let sum = (b[r] as number) * s + (plateA[r] as number) * plate
      for (let c = 0; c < size; c++) sum += (a[r * size + c] as number) * (at[c] as number)
      right[r] = sum
    }
    junctions.forEach(({ node, rail, pieces }, j) => {
      const piece = pieces[this.pieces.lines[k]?.[j] as number]
      const volts = (at[node] as number) - (rail === undefined ? 0 : (edge[FIRST_RAIL + rail] as number))
      const amps = (piece?.sie ?? 0) * volts + (piece?.offsetA ?? 0)
      right[node] = (right[node] as number) - amps
      if (rail === undefined) sums[PLATE] = (sums[PLATE] as number) - count * amps
      else sums[FIRST_RAIL + rail] = (sums[FIRST_RAIL + rail] as number) + count * amps
    })
    return right
  }

  /** How far the junction that is farthest beyond its piece is, of its own volts; below 0 = none is. */
  private beyond(): number {
    return farthestBeyond(this.system, this.pieces, this.end)
  }
  private beyondNow(): number {
    return Math.min(-1e-12, farthestBeyond(this.system, this.pieces, { lines: this.x, edge: this.edge }))
  }

  private take(): void {
    this.sec += this.lastStep
    if (this.pieces.rails.some(isConducting) || this.pieces.lines.some((line) => line.some(isConducting)))
      this.conductedSec = this.sec
    this.edge.set(this.end.edge)
    this.x.forEach((x, k) => {
      const end = this.end.lines[k] as Float64Array
      const peaks = this.peaks[k] as Float64Array
      x.set(end)
      for (let r = 0; r < end.length; r++) peaks[r] = Math.max(peaks[r] as number, Math.abs(end[r] as number))
    })
  }
}
