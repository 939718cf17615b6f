/** Suppressors of the connector: one for each contact or one for several through steering, and how many of which class. */
import { lineKindById } from '../../../reference/line-kinds.ts'
import { FORWARD, SIMILAR_VOLTS, TEMPERATURE_COEFFICIENT } from '../../../reference/suppressors.ts'
import type { Express } from '../../line/fields.ts'
import { against } from '../../surge/judge.ts'
import { blockingOf, type LineReason, lineReasons } from '../../surge/line.ts'
import { type FittedPart, partOf } from '../../surge/part.ts'
import { hotBreakdownV, temperatureCoefficient } from '../../surge/suppressor.ts'
import type { Verdict } from '../../types.ts'
import { capital, worse } from '../../verdict.ts'
import type { DecidedContact } from '../decided.ts'
import type { ConnectorFinding } from '../finding.ts'
import type { Connector, SuppressorGroup } from '../types.ts'
import { acrossPart, needsBridge, type Reach, reachOf } from './group-reach.ts'
import { groupOfContact, groupPart, membersOf, surgeGiven } from './part-of-group.ts'
import { basisOf, contactsNamed, exact, PRACTICE, show, step } from './said.ts'

type Member = Reach & { readonly id: string; readonly withstandV: number | undefined }

export function suppressorFindings(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): readonly ConnectorFinding[] {
  return [
    ...connector.suppressors.map(
      (group) => inTwo(connector, group) ?? groupFinding(group, membersOf(group, decided), express),
    ),
    ...classFindings(connector, decided, express),
  ]
}

/** A contact hangs on one suppressor: which of two it is, nobody can tell. */
function inTwo({ suppressors }: Connector, group: SuppressorGroup): ConnectorFinding | undefined {
  const others = suppressors.filter((other) => other !== group).flatMap(({ contacts }) => contacts)
  const twice = group.contacts.filter((id) => others.includes(id))
  if (twice.length === 0) return undefined
  return {
    id: `shared-suppressor-${group.id}`,
    verdict: 'unknown',
    sentence: `${capital(contactsNamed(twice))} ${twice.length === 1 ? 'is' : 'are'} named by two shared suppressors: leave each with one.`,
    contacts: group.contacts,
  }
}

function memberOf(contact: DecidedContact, express: Express | undefined): Member {
  const given = surgeGiven(contact, express)
  const kind = contact.kind === undefined ? undefined : lineKindById(contact.kind)
  const reach = reachOf({ kind, busMaxV: given?.busMaxV, busMinV: given?.busMinV })
  return { id: contact.id, ...reach, withstandV: given?.withstandV }
}

function groupFinding(
  group: SuppressorGroup,
  contacts: readonly DecidedContact[],
  express: Express | undefined,
): ConnectorFinding {
  const id = `shared-suppressor-${group.id}`
  const ids = contacts.map((one) => one.id)
  const said = (verdict: Verdict, sentence: string): ConnectorFinding => ({ id, verdict, sentence, contacts: ids })
  if (contacts.length < 2)
    return said(
      'unknown',
      `One suppressor for several contacts needs at least two of them; this group has ${contacts.length}.`,
    )
  const names = capital(contactsNamed(ids))
  const answer = groupPart(contacts, express)
  if (answer.is === 'none')
    return said(
      'unknown',
      `${names} share a suppressor of which nothing is known: enter stand-off and power on the line of one of them.`,
    )
  if (answer.is === 'unlike')
    return said(
      'unknown',
      `${names} share one suppressor, but ${contactsNamed(answer.ids)} name unlike ones: enter the same on all, or on one alone.`,
    )
  if (answer.is === 'incomplete')
    return said('unknown', `The suppressor that ${names} share needs its rated power or its dynamic resistance.`)
  const members = contacts.map((one) => memberOf(one, express))
  const unknown = members.filter(({ highV }) => highV === undefined).map((one) => one.id)
  if (unknown.length > 0)
    return said(
      'unknown',
      `What volts ${contactsNamed(unknown)} carry is not known, and the common node stands at the highest of them.`,
    )
  const unsaid = members.filter(({ lowV }) => lowV === undefined).map((one) => one.id)
  if (unsaid.length > 0)
    return said(
      'unknown',
      `Whether ${contactsNamed(unsaid)} ${unsaid.length === 1 ? 'goes' : 'go'} below chassis is not known, and a line that does takes a bridge: choose the kind of line, or enter its lowest peak (0 if it never does).`,
    )
  const highs = members.map(({ highV = 0, lowV = 0 }) => Math.max(Math.abs(highV), Math.abs(lowV)))
  const highest = Math.max(...highs)
  const lowest = Math.min(...highs)
  const across = acrossPart(members)
  const ends = across.lines.map((i) => (members[i] as Member).id)
  const isBridge = needsBridge(members)
  const { part } = answer
  const coldV = blockingOf(part).highV
  const clampV = part.mostV + 2 * FORWARD.dropV
  const hotV = hotBreakdownV({ mostV: part.mostV, ambientC: answer.ambientC }) + 2 * FORWARD.dropV
  const hotWords = hotV > clampV ? ` at ${show(answer.ambientC, 'temperature')}` : ''
  const reasons: { readonly verdict: Verdict; readonly sentence: string }[] = []
  if (across.volts >= coldV)
    reasons.push({
      verdict: across.volts >= part.leastV ? 'fails' : 'marginal',
      sentence: `${isBridge ? 'the ends of the bridge' : 'the common node'} ${isBridge ? 'stand' : 'stands'} at ${show(across.volts, 'voltage', 'least')}${isBridge ? ' from each other' : ''} (${contactsNamed(ends)}), and the part conducts from ${show(coldV, 'voltage', 'most')} when cold`,
    })
  const held = members.filter(({ withstandV }) => withstandV !== undefined && clampV >= withstandV)
  const close = members.filter(
    (one) => !held.includes(one) && one.withstandV !== undefined && against(hotV, one.withstandV) !== 'ok',
  )
  if (held.length > 0)
    reasons.push({
      verdict: 'fails',
      sentence: `with both forward drops it conducts only from ${show(clampV, 'voltage', 'least')}, which ${contactsNamed(held.map((one) => one.id))} ${held.length === 1 ? 'does' : 'do'} not withstand`,
    })
  if (close.length > 0)
    reasons.push({
      verdict: 'marginal',
      sentence: `with both forward drops it conducts only from ${show(hotV, 'voltage', 'least')}${hotWords}, close to what ${contactsNamed(close.map((one) => one.id))} ${close.length === 1 ? 'withstands' : 'withstand'} or above it, before a strike adds to it`,
    })
  const open = members.filter(({ withstandV }) => withstandV === undefined).map((one) => one.id)
  if (open.length > 0)
    reasons.push({
      verdict: 'unknown',
      sentence: `what ${contactsNamed(open)} ${open.length === 1 ? 'withstands' : 'withstand'} is not known`,
    })
  const latched = contacts.flatMap((one) => {
    const worst = latchVerdict(one, part, express)
    return worst === undefined ? [] : [{ id: one.id, verdict: worst }]
  })
  if (latched.length > 0)
    reasons.push({
      verdict: latched.reduce<Verdict>((all, one) => worse(all, one.verdict), 'unknown'),
      sentence: `once it has turned on, the current of ${contactsNamed(latched.map(({ id }) => id))} may keep it on: it needs a holding current above that of all its lines together`,
    })
  const surged = contacts.filter((one) => isSurged(one, part, express)).map((one) => one.id)
  if (surged.length > 0)
    reasons.push({
      verdict: 'unknown',
      sentence: `long surges of the supply of ${contactsNamed(surged)} may flow through it: the surge check of a line says which, once the category of the supply is chosen`,
    })
  if (highest > SIMILAR_VOLTS.value * lowest)
    reasons.push({
      verdict: 'marginal',
      sentence: `the lines are unlike, ${exact(lowest, 'voltage')} to ${exact(highest, 'voltage')}: the lowest waits for the stand-off of the highest`,
    })
  const verdict = reasons.reduce<Verdict>((all, one) => worse(all, one.verdict), 'ok')
  const how = isBridge
    ? 'Some swing below zero, so it takes a bridge: two steering diodes for each contact, and two for the plate.'
    : 'One steering diode for each contact, and one to the plate for the other sign.'
  const loss = `If the part opens, all ${ids.length} are bare at once; if it shorts, a steering diode holds each line down to the plate; if a steering diode opens, its line alone is bare; if one shorts, its line hangs on the common node at ${show(highest, 'voltage', 'least')}.`
  const why =
    reasons.length === 0
      ? `it conducts from ${show(hotV, 'voltage', 'least')}${hotWords}, both forward drops included`
      : reasons.map(({ sentence }) => sentence).join('; ')
  return {
    id,
    verdict,
    sentence: `${names} share one suppressor: ${why}. ${how} ${loss}`,
    contacts: ids,
    basis: basisOf(
      [
        step(
          isBridge ? 'highest line less lowest, the plate at 0 V among them' : 'highest volts of any of its lines',
          contactsNamed(ends),
          across.volts,
          'voltage',
        ),
        step(
          'Vbr,most + 2·Vf',
          `${exact(part.mostV, 'voltage')} + 2 · ${exact(FORWARD.dropV, 'voltage')}`,
          clampV,
          'voltage',
        ),
        ...(hotV > clampV
          ? [
              step(
                'Vbr,most·(1 + a·(T − 25)) + 2·Vf',
                `${exact(temperatureCoefficient(part.mostV), 'number')} per °C, T = ${show(answer.ambientC, 'temperature')}`,
                hotV,
                'voltage',
              ),
            ]
          : []),
        step('Vbr,least when cold', '−55 °C', coldV, 'voltage'),
      ],
      [
        'the part is the one entered on the lines of these contacts; forward recovery is added where a strike has a steep front',
        'its temperature is the hottest entered on these lines; where none is, it is taken strictly',
        `lines are alike while the highest is at most ${SIMILAR_VOLTS.value} times the lowest`,
      ],
      [PRACTICE, TEMPERATURE_COEFFICIENT.high.source],
    ),
  }
}

/** Whether a surge of its supply that lasts would flow through the shared part, or nobody said which can come. */
function isSurged(contact: DecidedContact, part: FittedPart, express: Express | undefined): boolean {
  const kind = contact.kind === undefined ? undefined : lineKindById(contact.kind)
  if (kind?.ownPeaks?.surgesOf === undefined) return false
  return reasonsOn(contact, part, express).some(({ is, verdict }) => verdict !== 'ok' && LASTING.has(is))
}

/** What a part that latches comes to on this line; undefined where the line lets it go by itself. */
function latchVerdict(contact: DecidedContact, part: FittedPart, express: Express | undefined): Verdict | undefined {
  const found = reasonsOn(contact, part, express).find(({ is }) => is === 'crowbar-held' || is === 'holding-missing')
  return found?.verdict
}

function reasonsOn(contact: DecidedContact, part: FittedPart, express: Express | undefined): readonly LineReason[] {
  const given = surgeGiven(contact, express)
  if (given === undefined) return []
  const kind = contact.kind === undefined ? undefined : lineKindById(contact.kind)
  const { busMaxV, busMinV, supplyCategory, busSourceOhm, ratedPulseW, holdingA } = given
  return lineReasons({ part, kind, busMaxV, busMinV, supplyCategory, busSourceOhm, ratedPulseW, holdingA })
}

const LASTING: ReadonlySet<string> = new Set(['conducts-bus', 'category-missing', 'category-empty'])

/** How many suppressors of which class the connector takes. */
function classFindings(
  connector: Connector,
  decided: readonly DecidedContact[],
  express: Express | undefined,
): readonly ConnectorFinding[] {
  const groups = groupOfContact(connector)
  const classes = new Map<string, string[]>()
  for (const contact of decided) {
    if (contact.type !== 'line' || groups.has(contact.id)) continue
    const given = surgeGiven(contact, express)
    if (given === undefined || partOf(given).is === 'none') continue
    const { standoffV, breakdownV, ratedPulseW, bidirectional } = given
    const volts =
      standoffV === undefined
        ? `${exact(breakdownV ?? 0, 'voltage')} breakdown`
        : `${exact(standoffV, 'voltage')} stand-off`
    const power = ratedPulseW === undefined ? '' : `, ${exact(ratedPulseW, 'power')}`
    const name = `${volts}${power}, ${bidirectional ? 'both signs' : 'one sign'}`
    classes.set(name, [...(classes.get(name) ?? []), contact.id])
  }
  const shared = connector.suppressors.length
  if (classes.size === 0 && shared === 0) return []
  const own = [...classes.entries()].map(([name, ids]) => `${ids.length} × ${name}`)
  const listed = [...own, ...(shared === 0 ? [] : [`${shared} shared by several contacts`])].join('; ')
  return [
    {
      id: 'suppressor-classes',
      sentence: `Suppressors, ${classes.size + shared} ${classes.size + shared === 1 ? 'kind' : 'kinds'}: ${listed}.`,
      contacts: [...classes.values()].flat(),
    },
  ]
}
