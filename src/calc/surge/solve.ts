/**
 * Steps a surge through its circuit. Between the corners of the suppressor the circuit is linear: each step is exact
 * (matrix exponential) for a source that is a parabola over the step, so stiff parts cost nothing and nothing rings
 * numerically. Steps come from a halving ladder so that their matrices are computed once. A step is halved until every
 * watched curve is nearly straight over it; corners are found by halving down to where they lie.
 */
import type { Progress } from '../types.ts'
import type { SurgeCircuit } from './circuit.ts'
import { junctionA, type Network, networkOf, type Piece, type Region, WATCHED, watchInto } from './network.ts'
import type { Shape } from './shape.ts'
import { type StepMatrix, stepMatrix } from './step.ts'
import { Recorder, type Trace } from './trace.ts'

export type SolveOptions = {
  /** largest bend of a curve over two steps, as a share of its peak so far */
  readonly bend?: number
}

const BEND = 1e-3
/** Columns of the recorder that steps are chosen by: connector, load, clamp volts, clamp amperes, middle. */
const WATCH_COLUMNS: readonly number[] = [1, 2, 3, 5, 6]
/** Levels of the halving ladder below the longest step. */
const LEVELS = 64
/** Halvings spent on locating a corner of the suppressor: as fine as the answer, or only to find where to look. */
const CORNER_LEVELS = 18
const ROUGH_CORNER_LEVELS = 10
const ROUGH_BEND = 5e-3
const PAIRS_PER_SLICE = 30
/** Columns of the clamp volts, and of the volts at the far end of the lead. */
const CLAMP_COLUMN = 3
const TERMINAL_COLUMN = 4
/**
 * What rings between the lead of a blocked part and its own few picofarads is stepped across exactly and need not be
 * followed in every turn, as long as it stays far from the knee, or small against it: then it moves no peak.
 */
const FAR_SHARE = 0.7
const SMALL_SHARE = 0.1
const QUIET_BEND = 40
const FLOOR = 1e-3
/** Sanity stop: far above what any real pulse needs. */
const MOST_SAMPLES = 400_000

class Stepper {
  private readonly matrices = new Map<number, StepMatrix>()
  private readonly scratch: Float64Array
  private readonly heldX: Float64Array
  private readonly heldVolts = new Float64Array(WATCHED.length)
  private heldSec = 0
  readonly x: Float64Array
  readonly volts = new Float64Array(WATCHED.length)
  sec = 0
  regionIndex = 0
  readonly record = new Recorder()
  private readonly network: Network
  private readonly shape: Shape
  private readonly cornerLevels: number
  readonly longestSec: number

  constructor(network: Network, shape: Shape, longestSec: number, cornerLevels: number) {
    this.cornerLevels = cornerLevels
    this.network = network
    this.shape = shape
    this.longestSec = longestSec
    this.x = network.restX.slice()
    this.scratch = new Float64Array(this.x.length)
    this.heldX = new Float64Array(this.x.length)
    watchInto(this.region, this.x, this.drive(0), this.volts)
    this.sample()
  }

  get region(): Region {
    const region = this.network.regions[this.regionIndex]
    if (!region) throw new RangeError('no such state of the suppressor')
    return region
  }

  private drive(sec: number): number {
    return this.network.restDrive + this.network.drive * this.shape.at(sec)
  }

  private matrix(level: number): StepMatrix {
    const key = this.regionIndex * (LEVELS + CORNER_LEVELS + 1) + level
    let found = this.matrices.get(key)
    if (!found) {
      found = stepMatrix(this.region, this.longestSec * 2 ** -level)
      this.matrices.set(key, found)
    }
    return found
  }

  private sample(): void {
    const { volts } = this
    const clamp = volts[2] ?? 0
    const amps = junctionA(this.region, clamp)
    this.record.push(this.sec, volts[0] ?? 0, volts[1] ?? 0, clamp, volts[3] ?? 0, amps, volts[4] ?? 0)
  }

  /** Moves by one step of a level if the suppressor stays in its state; `force` moves anyway. */
  private move(level: number, force: boolean): boolean {
    const h = this.longestSec * 2 ** -level
    const { phi, start, middle, end, fixed } = this.matrix(level)
    const n = this.x.length
    const s0 = this.drive(this.sec)
    const sm = this.drive(this.sec + h / 2)
    const s1 = this.drive(this.sec + h)
    for (let r = 0; r < n; r++) {
      let sum = (start[r] ?? 0) * s0 + (middle[r] ?? 0) * sm + (end[r] ?? 0) * s1 + (fixed[r] ?? 0)
      for (let c = 0; c < n; c++) sum += (phi[r * n + c] ?? 0) * (this.x[c] ?? 0)
      this.scratch[r] = (this.x[r] ?? 0) + sum
    }
    watchInto(this.region, this.scratch, s1, this.volts)
    if (!force && this.leaves()) return false
    this.x.set(this.scratch)
    this.sec += h
    return true
  }

  private leaves(): boolean {
    const piece = this.region.piece
    if (!piece) return false
    const clamp = this.volts[2] ?? 0
    const slack = 1e-9 * (1 + Math.abs(clamp))
    return clamp > piece.highV + slack || clamp < piece.lowV - slack
  }

  /** Keeps where it stands, for `takeBack`. */
  hold(): void {
    this.heldX.set(this.x)
    this.heldVolts.set(this.volts)
    this.heldSec = this.sec
  }

  takeBack(): void {
    this.x.set(this.heldX)
    this.volts.set(this.heldVolts)
    this.sec = this.heldSec
  }

  /** One step, recorded. False: a corner was met; the steps up to it, and the change of state, are recorded instead. */
  advance(level: number): boolean {
    if (this.move(level, false)) {
      this.sample()
      return true
    }
    // the side it leaves by is known now; at the corner itself rounding would decide
    const next =
      (this.volts[2] ?? 0) > (this.region.piece?.highV ?? 0) ? above(this.regionIndex) : below(this.regionIndex)
    for (let fine = level + 1; fine < level + this.cornerLevels; fine++) if (this.move(fine, false)) this.sample()
    this.move(level + this.cornerLevels, true)
    this.regionIndex = next
    watchInto(this.region, this.x, this.drive(this.sec), this.volts)
    this.sample()
    return false
  }
}

/** Pieces are ordered blocked, breakdown, reverse. */
const above = (index: number): number => (index === 2 ? 0 : 1)
const below = (index: number): number => (index === 1 ? 0 : 2)

/**
 * Runs one pulse into a circuit that starts at rest, with the volts of its line on it, and gives everything watched over time. Yields every few dozen
 * steps. Result independent of `bend` to 1e-4. Throws RangeError for a source without resistance.
 * Source: exact solution of the linear pieces (derived); checked against ngspice.
 */
export function* solveSurge(
  circuit: SurgeCircuit,
  shape: Shape,
  { bend = BEND }: SolveOptions = {},
): Generator<Progress, Trace> {
  const network = networkOf(circuit)
  const endSec = runSec(circuit, shape)
  const cornerLevels = bend > ROUGH_BEND ? ROUGH_CORNER_LEVELS : CORNER_LEVELS
  const stepper = new Stepper(network, shape, endSec / 64, cornerLevels)
  const stops = [...shape.corners.filter((sec) => sec < endSec), endSec]
  const watch = new BendWatch(network, bend)
  let level = startLevel(stepper.longestSec, shape.riseSec)
  let pairs = 0
  for (const stop of stops) {
    const rest = endSec * 1e-12
    while (stop - stepper.sec > rest && stepper.record.count < MOST_SAMPLES) {
      const h = stepper.longestSec * 2 ** -level
      if (stop < endSec && stepper.sec + 2 * h > stop) {
        if (h > rest && level < LEVELS) {
          level += 1
          continue
        }
        break
      }
      level = pair(stepper, watch, level)
      pairs += 1
      if (pairs % PAIRS_PER_SLICE === 0) yield { doneFrac: Math.min(1, stepper.sec / endSec) }
    }
    if (stop === endSec) break
    stepper.sec = stop
    // behind a corner of the source the rise may start anew
    level = Math.max(level - 24, startLevel(stepper.longestSec, shape.riseSec))
  }
  return stepper.record.finish(stepper.record.count < MOST_SAMPLES)
}

/** Two steps of a level; gives the level to try next. A pair that bends too much is taken back. */
function pair(stepper: Stepper, watch: BendWatch, level: number): number {
  const mark = stepper.record.count
  stepper.hold()
  if (!stepper.advance(level) || !stepper.advance(level)) return Math.min(LEVELS, level + 2)
  const bent = watch.worst(stepper.record, mark - 1, stepper.region.piece)
  if (bent > 1 && level < LEVELS) {
    stepper.record.drop(mark)
    stepper.takeBack()
    return level + 1
  }
  watch.note(stepper.record, mark)
  return bent < 0.2 && level > 0 ? level - 1 : level
}

/** Measures how far three neighbouring samples are from a straight line, against the peak so far. */
class BendWatch {
  private readonly peaks = new Float64Array(WATCH_COLUMNS.length)
  private readonly floors: readonly number[]
  private readonly bend: number

  constructor(network: Network, bend: number) {
    this.bend = bend
    const { fullV, fullA } = network
    this.floors = [FLOOR * fullV, FLOOR * fullV, FLOOR * fullV, FLOOR * fullA, FLOOR * fullV]
  }

  /** Worst bend over the allowed one, from sample `from` and the two after it. */
  worst(record: Recorder, from: number, piece: Piece | undefined): number {
    let worst = 0
    for (let k = 0; k < WATCH_COLUMNS.length; k++) {
      const column = WATCH_COLUMNS[k] ?? 1
      const a = record.at(column, from)
      const b = record.at(column, from + 1)
      const c = record.at(column, from + 2)
      const scale = Math.max(this.floors[k] ?? 0, this.peaks[k] ?? 0, Math.abs(b), Math.abs(c))
      const isQuiet = column === CLAMP_COLUMN && piece !== undefined && ringsQuietly(record, from, piece)
      const allowed = this.bend * (isQuiet ? QUIET_BEND : 1)
      if (scale > 0) worst = Math.max(worst, Math.abs(b - (a + c) / 2) / (scale * allowed))
    }
    return worst
  }

  note(record: Recorder, from: number): void {
    for (let k = 0; k < WATCH_COLUMNS.length; k++) {
      for (let i = from; i < record.count; i++)
        this.peaks[k] = Math.max(this.peaks[k] ?? 0, Math.abs(record.at(WATCH_COLUMNS[k] ?? 1, i)))
    }
  }
}

/** Whether a part is blocked, and what rings behind its lead is far from its knee or small against it. */
function ringsQuietly(record: Recorder, from: number, { lowV, highV }: Piece): boolean {
  if (!Number.isFinite(lowV) || !Number.isFinite(highV)) return false
  let isFar = true
  let isSmall = true
  for (let i = from; i < from + 3; i++) {
    const clamp = record.at(CLAMP_COLUMN, i)
    if (clamp > FAR_SHARE * highV || clamp < FAR_SHARE * lowV) isFar = false
    if (Math.abs(clamp - record.at(TERMINAL_COLUMN, i)) > SMALL_SHARE * highV) isSmall = false
  }
  return isFar || isSmall
}

const startLevel = (longestSec: number, riseSec: number): number =>
  Math.min(LEVELS, Math.max(0, Math.ceil(Math.log2(longestSec / (riseSec / 64)))))

/** Long enough for the pulse and for what it leaves ringing, at most twenty times the pulse. */
export function runSec(circuit: SurgeCircuit, shape: Shape): number {
  const { filter, suppressor, lineH, loadF, couplingF = 0 } = circuit
  const farads = filter.capacitanceF + filter.capacitance2F + loadF + (suppressor?.capacitanceF ?? 0) + couplingF
  const henries = lineH + filter.inductanceH + filter.inductance2H + (suppressor?.leadH ?? 0)
  const ohm = Number.isFinite(circuit.source.ohm) ? circuit.source.ohm + circuit.lineOhm : circuit.loadOhm
  const settle = 40 * Math.sqrt(henries * farads) + 5 * ohm * farads
  return Math.min(20 * shape.endSec, 1.2 * shape.endSec + settle)
}
