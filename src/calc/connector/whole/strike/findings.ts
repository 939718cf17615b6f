/** What a strike does to the connector, in sentences: does each circuit live, each capacitor, each suppressor, and how far the plate jumps. */
import { listed } from '../../../explain/sentence.ts'
import { against, MOSTLY_USED } from '../../../surge/judge.ts'
import type { Source, Step, Verdict } from '../../../types.ts'
import { VERDICT_RANK, worse } from '../../../verdict.ts'
import type { ConnectorFinding } from '../../finding.ts'
import { basisOf, contactsNamed, DERIVED, exact, show, step } from '../said.ts'
import type { CaseStruck, ContactStruck, StrikeAnswer } from './answer.ts'
import type { StrikeContact, StrikeQuestion } from './strike.ts'

const MEMORY: Source = { id: 'do-160', clause: 'section 22', standing: 'memory' }

export function strikeFindings(question: StrikeQuestion, answer: StrikeAnswer): readonly ConnectorFinding[] {
  const left = question.left
  return [
    ...(left.length === 0
      ? []
      : [
          {
            id: 'strike-left',
            verdict: 'unknown' as const,
            sentence: `Not struck, and in none of these sums: ${left
              .slice(0, 4)
              .map(({ id, why }) => `${id} (${why})`)
              .join(', ')}${left.length > 4 ? ` and ${left.length - 4} more` : ''}.`,
            contacts: left.map(({ id }) => id),
          },
        ]),
    ...answer.cases.flatMap((one) => caseFindings(question, one)),
    ...pairsFinding(question),
  ]
}

/** Each leg is struck against the reference; how far the legs part is in no sum. */
function pairsFinding({ pairs }: StrikeQuestion): readonly ConnectorFinding[] {
  if (pairs.length === 0) return []
  const contacts = pairs.flat()
  return [
    {
      id: 'strike-pairs',
      sentence: `Between the legs of a pair nothing is judged here (${contactsNamed(contacts)}): ask the surge check of the line.`,
      contacts,
    },
  ]
}

type Judged = { readonly id: string; readonly verdict: Verdict; readonly words: string; readonly used: number }

function caseFindings(question: StrikeQuestion, found: CaseStruck): readonly ConnectorFinding[] {
  const byId = new Map(question.contacts.map((contact) => [contact.id, contact]))
  const judged = found.contacts.flatMap((one) => {
    const contact = byId.get(one.id)
    return contact === undefined
      ? []
      : [...circuitOf(contact, one).map((each) => withPair(contact, each)), ...capacitorOf(contact, one)].map((each) =>
          withRest(contact, withLead(question, contact, each)),
        )
  })
  const suppressors = [
    ...found.contacts.flatMap((one) => {
      const contact = byId.get(one.id)
      return contact?.hasPart ? [ratingOf(`contact ${one.id}`, one.id, one)] : []
    }),
    ...found.groups.flatMap((one) => {
      const group = question.groups.find(({ id }) => id === one.id)
      return group === undefined
        ? []
        : [ratingOf(`the one shared by ${contactsNamed(group.contacts)}`, group.contacts[0] ?? '', one)]
    }),
  ]
  const name = nameOf(question, found)
  const caps = capsOf(question, found)
  return [
    sentenceOf(question, found, `strike-${found.of}-circuits`, `${name}: `, judged, {
      steps: circuitSteps(found),
      caps: [...caps, ...bondCap(question), ...wayCap(question, found)],
    }),
    ...(suppressors.length === 0
      ? []
      : [
          sentenceOf(question, found, `strike-${found.of}-suppressors`, `${name}, the suppressors: `, suppressors, {
            steps: energySteps(found),
            caps,
          }),
        ]),
    {
      id: `strike-${found.of}-bounce`,
      sentence: `${name}: the plate jumps by up to ${show(found.bounceV, 'voltage', 'least')} against the reference while ${show(found.bondA, 'current', 'least')} pass the bond of ${exact(question.bond.ohm, 'resistance')} and ${exact(question.bond.henries, 'inductance')}; quiet circuits see it through their capacitors.`,
      contacts: [],
      basis: basisOf(
        [
          step('Vp = R·i + L·di/dt', 'all contacts on one plate, implicit steps', found.bounceV, 'voltage'),
          step('i through the bond', 'peak', found.bondA, 'current'),
        ],
        takenOf(question, found),
        [DERIVED, MEMORY],
      ),
    },
  ]
}

function nameOf({ name, level, share }: StrikeQuestion, { of }: CaseStruck): string {
  return of === 'pins'
    ? `${name}, pin level ${level.pins} on every contact at once (harsher than any test)`
    : `${name}, bundle level ${level.bundle}, ${show(share ?? 0, 'fraction')} of it on the contacts`
}

/** A case that no test asks for is no reason for a no. */
const softened = ({ of }: CaseStruck, verdict: Verdict): Verdict =>
  of === 'pins' && verdict === 'fails' ? 'marginal' : verdict

type Cap = { readonly verdict: Verdict; readonly words: string }

/** What no yes may rest on: a run cut short, a ring between the ends that were run, parts of a current nobody measured. */
function capsOf(question: StrikeQuestion, found: CaseStruck): readonly Cap[] {
  return [
    ...(found.isWhole ? [] : [{ verdict: 'unknown', words: 'a run was cut short' } as const]),
    ...(question.isRing
      ? [{ verdict: 'marginal', words: 'between the ends that were run a ring may build up more' } as const]
      : []),
    ...(isInUnlikeParts(question, found)
      ? [
          {
            verdict: 'marginal',
            words: 'its current taken in equal parts, of which a contact of lower impedance takes more',
          } as const,
        ]
      : []),
  ]
}

const isInUnlikeParts = ({ runs }: StrikeQuestion, { of }: CaseStruck): boolean =>
  of === 'bundle' && runs.some((run) => run.of === of && run.struck.lines.length > 1)

/** The jump of the plate adds to what a circuit sees, not to what its suppressor takes. */
const bondCap = ({ bond }: StrikeQuestion): readonly Cap[] =>
  bond.isTyped
    ? []
    : [{ verdict: 'unknown', words: 'the bond is not entered, and a strap adds its jump to every circuit' }]

/** The wire between the coupling of a bundle test and the connector can ring with a capacitor there. */
const wayCap = ({ isWayOpen }: StrikeQuestion, { of }: CaseStruck): readonly Cap[] =>
  of === 'bundle' && isWayOpen
    ? [{ verdict: 'marginal', words: 'the inductance of the cable ahead of it is not entered, and may ring higher' }]
    : []

function sentenceOf(
  question: StrikeQuestion,
  found: CaseStruck,
  id: string,
  before: string,
  judged: readonly Judged[],
  { steps, caps }: { readonly steps: readonly Step[]; readonly caps: readonly Cap[] },
): ConnectorFinding {
  const soft = (one: Judged) => softened(found, one.verdict)
  const proved = judged.reduce<Verdict>((all, one) => worse(all, soft(one)), 'ok')
  const verdict = caps.reduce<Verdict>((all, cap) => worse(all, cap.verdict), proved)
  const capping = verdict === proved ? [] : caps.filter((cap) => VERDICT_RANK[cap.verdict] > VERDICT_RANK[proved])
  const worst = judged
    .filter((one) => soft(one) === proved)
    .reduce<Judged | undefined>((most, one) => (most === undefined || one.used > most.used ? one : most), undefined)
  const others = [...new Set(judged.filter((one) => VERDICT_RANK[one.verdict] > 0).map((one) => one.id))]
  const more = others.length > 1 ? ` In all ${contactsNamed(others)}.` : ''
  return {
    id,
    verdict,
    sentence:
      worst === undefined
        ? `${before}nothing is struck.`
        : `${before}${worst.words}${capping.map(({ words }) => `; ${words}`).join('')}.${more}`,
    contacts: others.length > 0 ? others : worst === undefined ? [] : [worst.id],
    basis: basisOf(steps, takenOf(question, found), [DERIVED, MEMORY]),
  }
}

/** On a steep front some nanohenries add volts. */
function withLead({ isSteep }: StrikeQuestion, { isLeadOpen }: StrikeContact, one: Judged): Judged {
  if (!isSteep || !isLeadOpen || one.verdict !== 'ok') return one
  return {
    ...one,
    verdict: 'marginal',
    words: `${one.words}; what the lead of its suppressor adds on so steep a front is not counted`,
  }
}

/** What the line holds by itself comes on top of the pulse. */
function withRest({ isRestOpen }: StrikeContact, one: Judged): Judged {
  if (!isRestOpen || one.verdict === 'fails' || one.verdict === 'unknown') return one
  return { ...one, verdict: 'unknown', words: `${one.words}; what its line holds by itself is not known` }
}

/** A figure that was entered between the legs is held against nothing here. */
function withPair({ pairWithstandV }: StrikeContact, one: Judged): Judged {
  if (pairWithstandV === undefined || one.verdict === 'fails' || one.verdict === 'unknown') return one
  return {
    ...one,
    verdict: 'unknown',
    words: `${one.words}; what stands between its legs is not judged against the ${exact(pairWithstandV, 'voltage')} entered there`,
  }
}

function circuitOf(contact: StrikeContact, one: ContactStruck): readonly Judged[] {
  if (contact.isInsulated) return [judgedAs(one.id, 'the insulation of', one.connectorV, contact.insulationV)]
  return [judgedAs(one.id, 'the circuit of', one.loadV, contact.withstandV)]
}

function capacitorOf(contact: StrikeContact, one: ContactStruck): readonly Judged[] {
  return contact.hasCapacitor ? [judgedAs(one.id, 'the capacitor of', one.capacitorV, contact.capacitorWithstandV)] : []
}

function judgedAs(id: string, what: string, volts: number, limitV: number | undefined): Judged {
  const seen = `${what} contact ${id} sees ${show(volts, 'voltage', 'least')}`
  if (limitV === undefined)
    return { id, verdict: 'unknown', words: `${seen}; what it withstands is not known`, used: volts }
  return {
    id,
    verdict: against(volts, limitV),
    words: `${seen} and withstands ${exact(limitV, 'voltage')}`,
    used: volts / limitV,
  }
}

function ratingOf(
  what: string,
  id: string,
  { energyJ, clampA, usedFrac }: Pick<ContactStruck, 'energyJ' | 'clampA' | 'usedFrac'>,
): Judged {
  const seen = `${what} takes ${show(energyJ, 'energy', 'least')} at up to ${show(clampA, 'current', 'least')}`
  if (usedFrac === undefined)
    return { id, verdict: 'unknown', words: `${seen}; its rated power is not known`, used: energyJ }
  if (!Number.isFinite(usedFrac))
    return { id, verdict: 'fails', words: `${seen}, and no rating is left at its temperature`, used: usedFrac }
  const verdict: Verdict = usedFrac > 1 ? 'fails' : usedFrac > MOSTLY_USED ? 'marginal' : 'ok'
  return {
    id,
    verdict,
    words: `${seen}, ${show(usedFrac, 'fraction', 'least')} of its rating with the repeats of the test`,
    used: usedFrac,
  }
}

const most = (found: CaseStruck, of: (one: ContactStruck) => number): ContactStruck | undefined =>
  found.contacts.reduce<ContactStruck | undefined>(
    (worst, one) => (worst === undefined || of(one) > of(worst) ? one : worst),
    undefined,
  )

function circuitSteps(found: CaseStruck): readonly Step[] {
  const load = most(found, ({ loadV }) => loadV)
  const connector = most(found, ({ connectorV }) => connectorV)
  return [
    ...(load ? [step('highest at a load, against the reference', `contact ${load.id}`, load.loadV, 'voltage')] : []),
    ...(connector
      ? [step('highest at the connector', `contact ${connector.id}`, connector.connectorV, 'voltage')]
      : []),
  ]
}

function energySteps(found: CaseStruck): readonly Step[] {
  const totalJ = [...found.contacts, ...found.groups].reduce((sum, { energyJ }) => sum + energyJ, 0)
  const worst = most(found, ({ energyJ }) => energyJ)
  return [
    ...(worst ? [step('most energy in one suppressor, ∫v·i dt', `contact ${worst.id}`, worst.energyJ, 'energy')] : []),
    step('all suppressors together', `${found.contacts.length} contacts struck`, totalJ, 'energy'),
  ]
}

function takenOf({ bond, isRing, taken }: StrikeQuestion, { of }: CaseStruck): readonly string[] {
  return [
    'breakdown at either end of its spread, the high one as hot as the part may be, every capacitor and every inductor at its least and at its most, both signs where they differ; the worst of all runs',
    ...(isRing
      ? ['a ring may build up most at a capacitance between those ends: the surge check of a line searches for it']
      : []),
    ...(of === 'bundle'
      ? [
          'the contacts that clamp take equal parts of what the shield leaves them; a contact of lower impedance takes more',
        ]
      : ['a pin test strikes one contact at a time: this is what no test asks']),
    ...(taken.length === 0
      ? []
      : [`not entered on every contact with a suppressor, so taken strictly there: ${listed(taken)}`]),
    ...(bond.isTyped
      ? []
      : [`bond not entered: ${exact(bond.ohm, 'resistance')} and ${exact(bond.henries, 'inductance')} are taken`]),
    'Later pulses of a train bring their share of the first one’s heat',
  ]
}
