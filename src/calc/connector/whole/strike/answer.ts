/** The strike worked out run by run, and the worst of each contact. Plain numbers in and out. */
import { FORWARD_RECOVERY } from '../../../../reference/suppressors.ts'
import { waveformById } from '../../../../reference/waveforms.ts'
import { within } from '../../../surge/progress.ts'
import { shapeFactor, usedByPulse } from '../../../surge/rating.ts'
import { shapeOf, shapeTimes } from '../../../surge/shape.ts'
import { usageOf } from '../../../surge/usage.ts'
import type { Progress } from '../../../types.ts'
import { strikeTogether } from './solve-together.ts'
import type { StrikeCase, StrikeQuestion, StrikeRating, StrikeRun } from './strike.ts'

/** Worst of one contact over the runs of a case. */
export type ContactStruck = {
  readonly id: string
  readonly connectorV: number
  readonly loadV: number
  readonly capacitorV: number
  readonly clampA: number
  readonly energyJ: number
  /** of what is left of its rating; undefined without a rating, Infinity where none is left */
  readonly usedFrac: number | undefined
}

export type SharedStruck = {
  readonly id: string
  readonly clampA: number
  readonly energyJ: number
  readonly usedFrac: number | undefined
}

export type CaseStruck = {
  readonly of: StrikeCase
  readonly contacts: readonly ContactStruck[]
  readonly groups: readonly SharedStruck[]
  readonly bounceV: number
  readonly bondA: number
  readonly isWhole: boolean
}

export type StrikeAnswer = { readonly cases: readonly CaseStruck[] }

/** Runs them all, in slices; may be abandoned between two. */
export function* strikeAnswer(question: StrikeQuestion): Generator<Progress, StrikeAnswer> {
  const cases = new Map<StrikeCase, Gathered>()
  for (const [i, run] of question.runs.entries()) {
    const figures = yield* within(runInto(question, run), i / question.runs.length, (i + 1) / question.runs.length)
    const before = cases.get(run.of)
    cases.set(run.of, before === undefined ? figures : worseOf(before, figures))
  }
  return {
    cases: [...cases.entries()].map(([of, { contacts, groups, ...rest }]) => ({
      of,
      contacts: [...contacts.values()],
      groups: [...groups.values()],
      ...rest,
    })),
  }
}

type Gathered = {
  readonly contacts: ReadonlyMap<string, ContactStruck>
  readonly groups: ReadonlyMap<string, SharedStruck>
  readonly bounceV: number
  readonly bondA: number
  readonly isWhole: boolean
}

function* runInto(question: StrikeQuestion, run: StrikeRun): Generator<Progress, Gathered> {
  const found = yield* strikeTogether(run.struck)
  const { sec } = found
  const shape = shapeOf(run.struck.spec, run.struck.ring)
  const factor = shapeFactor(shape, run.struck.ring ? undefined : shapeTimes(shape))
  const used = (watts: Float64Array, energyJ: number, rating: StrikeRating | undefined) =>
    rating === undefined || watts.length === 0
      ? undefined
      : usedOf({ sec, watts, energyJ, rating, factor, question, run })
  const recoveryV = question.isSteep ? 2 * FORWARD_RECOVERY.value.volts : 0
  const byId = new Map(question.contacts.map((contact) => [contact.id, contact]))
  const contacts = new Map<string, ContactStruck>()
  for (const [k, ids] of run.contacts.entries()) {
    const line = found.lines[k]
    if (line === undefined) continue
    for (const id of ids) {
      const contact = byId.get(id)
      const extraV = contact?.group === undefined ? 0 : recoveryV
      contacts.set(id, {
        id,
        connectorV: line.connectorV + extraV,
        loadV: line.loadV + extraV,
        capacitorV: line.capacitorV + extraV,
        clampA: line.clampA,
        energyJ: line.energyJ,
        usedFrac: used(line.watts, line.energyJ, contact?.rating),
      })
    }
    yield { doneFrac: 1 }
  }
  const groups = new Map<string, SharedStruck>()
  for (const [g, { id, rating }] of question.groups.entries()) {
    const own = found.groups[g]
    if (own === undefined) continue
    groups.set(id, { id, clampA: own.clampA, energyJ: own.energyJ, usedFrac: used(own.watts, own.energyJ, rating) })
    yield { doneFrac: 1 }
  }
  return { contacts, groups, bounceV: found.bounceV, bondA: found.bondA, isWhole: found.isWhole }
}

/** Share of the rating with temperature, wear and the repeats of the test. A later pulse is taken to bring its share of the drive. */
function usedOf(q: {
  readonly sec: Float64Array
  readonly watts: Float64Array
  readonly energyJ: number
  readonly rating: StrikeRating
  readonly factor: number
  readonly question: StrikeQuestion
  readonly run: StrikeRun
}): number {
  const { sec, watts, energyJ, rating, factor, question, run } = q
  const peakW = watts.reduce((most, each) => Math.max(most, each), 0)
  const usage = usageOf(
    { used: usedByPulse({ sec, watts, peakW, ratedW: rating.ratedW, factor }), energyJ, peakW },
    {
      factor,
      ambientC: rating.ambientC,
      derateZeroC: rating.derateZeroC,
      repeats: waveformById(question.waveform)?.repeats ?? [],
      test: run.of === 'pins' ? 'pin' : 'bundle',
      type: rating.type,
      laterHeat: (share, { heat, energyJ: first }) => ({ heat: heat * share, energyJ: first * share }),
    },
  )
  return usage?.totalFrac ?? Number.POSITIVE_INFINITY
}

function worseOf(a: Gathered, b: Gathered): Gathered {
  const contacts = new Map(a.contacts)
  for (const [id, one] of b.contacts) {
    const before = contacts.get(id)
    contacts.set(
      id,
      before === undefined
        ? one
        : {
            id,
            connectorV: Math.max(before.connectorV, one.connectorV),
            loadV: Math.max(before.loadV, one.loadV),
            capacitorV: Math.max(before.capacitorV, one.capacitorV),
            clampA: Math.max(before.clampA, one.clampA),
            energyJ: Math.max(before.energyJ, one.energyJ),
            usedFrac: moreOf(before.usedFrac, one.usedFrac),
          },
    )
  }
  const groups = new Map(a.groups)
  for (const [id, one] of b.groups) {
    const before = groups.get(id)
    groups.set(
      id,
      before === undefined
        ? one
        : {
            id,
            clampA: Math.max(before.clampA, one.clampA),
            energyJ: Math.max(before.energyJ, one.energyJ),
            usedFrac: moreOf(before.usedFrac, one.usedFrac),
          },
    )
  }
  return {
    contacts,
    groups,
    bounceV: Math.max(a.bounceV, b.bounceV),
    bondA: Math.max(a.bondA, b.bondA),
    isWhole: a.isWhole && b.isWhole,
  }
}

const moreOf = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined ? b : b === undefined ? a : Math.max(a, b)
