/** From a connector to the question of its strike: which contacts are struck, by what, and what is missing. */
import type { SurgeGiven } from '../../../checks/surge/inputs.ts'
import { refusalIssue } from '../../../checks/surge/words/refusals.ts'
import type { Express } from '../../../line/fields.ts'
import type { SurgeAsked } from '../../../surge/asked.ts'
import { type SurgeSetup, setUpSurge } from '../../../surge/setup.ts'
import type { DecidedContact } from '../../decided.ts'
import type { Connector } from '../../types.ts'
import { typedNumber } from '../given.ts'
import { groupOfContact, strictSurge } from '../part-of-group.ts'
import { questionOf, type Ready } from './runs.ts'
import { STRIKE_CASES, type StrikeCase, type StrikeQuestion } from './strike.ts'

export type StrikeAsked =
  | { readonly is: 'question'; readonly question: StrikeQuestion }
  | { readonly is: 'missing'; readonly sentence: string }

/** The question, or what is missing before there is one. */
export function strikeQuestion(
  connector: Connector,
  decided: readonly DecidedContact[],
  express?: Express,
): StrikeAsked {
  const { strikeWaveform = '', strikeLevel, bundleLevel, bundleShareFrac } = connector.texts
  const waveform = strikeWaveform.trim()
  if (waveform === '')
    return { is: 'missing', sentence: 'Choose the waveform that strikes the connector, and its level.' }
  const number = (text: string | undefined, what: string, quantity: 'count' | 'fraction', example: string) =>
    typedNumber(text, { quantity, what, example }, express)
  const pins = number(strikeLevel, 'level', 'count', '3')
  const bundle = number(bundleLevel, 'bundle level', 'count', '3')
  const share = number(bundleShareFrac, 'share of the bundle current', 'fraction', '20 %')
  const refused = [pins, bundle, share].find((one) => one.refused !== undefined)?.refused
  if (refused !== undefined) return { is: 'missing', sentence: refused }
  if (pins.si === undefined && bundle.si === undefined)
    return {
      is: 'missing',
      sentence:
        'Enter the pin level, or the level of the bundle test and the share of its current that the contacts take.',
    }
  if (bundle.si !== undefined && (share.si === undefined || share.si <= 0 || share.si > 1))
    return {
      is: 'missing',
      sentence:
        'Enter the share of the bundle current that all contacts take together, 0 to 100 %; the shield takes the rest.',
    }
  const level = {
    ...(pins.si === undefined ? {} : { pins: pins.si }),
    ...(bundle.si === undefined ? {} : { bundle: bundle.si }),
  }
  const groups = groupOfContact(connector)
  const given = decided.flatMap((contact) => {
    const asked =
      contact.type === 'line' && contact.by !== 'nobody' && contact.by !== 'barred'
        ? strictSurge(contact, express)
        : undefined
    if (asked === undefined) return []
    const { given: own, taken, isLeadEntered } = asked
    const isShared = groups.has(contact.id)
    const isClamped = isShared || own.standoffV !== undefined || own.breakdownV !== undefined
    return [
      {
        contact,
        asked: askedOf(contact, own, waveform, isShared),
        isClamped,
        // that of a shared part is in no run
        isLeadOpen: isClamped && (isShared || !isLeadEntered),
        taken: isClamped ? taken : [],
      },
    ]
  })
  const clamping = given.filter(({ isClamped }) => isClamped).length
  const shares = (share.si ?? 0) / Math.max(1, clamping > 0 ? clamping : given.length)
  const left: { id: string; why: string }[] = decided
    .filter(({ id, type }) => type === 'line' && !given.some(({ contact }) => contact.id === id))
    .map(({ id, by }) => ({
      id,
      why: by === 'barred' ? 'barred' : by === 'nobody' ? 'undecided' : 'its surge texts cannot be read',
    }))
  const ready: Ready[] = []
  for (const one of given) {
    const setups = new Map<StrikeCase, SurgeSetup>()
    let why: string | undefined
    for (const of of STRIKE_CASES) {
      if (level[of] === undefined) continue
      const answer = setUpSurge({
        ...one.asked,
        ...(of === 'pins' ? { level: level.pins } : { bundleLevel: level.bundle, bundleShareFrac: shares }),
      })
      if (answer.is === 'setup') setups.set(of, answer.setup)
      else if (answer.is === 'refused') {
        const { message, key } = refusalIssue(answer.refusal)
        if (key === 'level' || key === 'bundleLevel') return { is: 'missing', sentence: message }
        why = message
      } else why = 'its suppressor or filter is not complete'
    }
    if (why === undefined) ready.push({ ...one, setups })
    else left.push({ id: one.contact.id, why })
  }
  const [first] = ready.flatMap(({ setups }) => [...setups.values()])
  if (first === undefined)
    return {
      is: 'missing',
      sentence: 'No contact is ready to be struck: decide some, and enter what their circuits withstand.',
    }
  return {
    is: 'question',
    question: questionOf({
      connector,
      decided,
      ready,
      level,
      left,
      taken: [...new Set(given.flatMap(({ taken }) => taken))],
      share: share.si,
      row: first.pulse.row,
      express,
      riseSec: first.pulse.shape.riseSec,
    }),
  }
}

/** The Line's own surge facts, struck by the connector's pulse, with the part that is decided. */
function askedOf(contact: DecidedContact, given: SurgeGiven, waveform: string, isGrouped: boolean): SurgeAsked {
  const { part } = contact
  return {
    ...given,
    waveform,
    level: undefined,
    bundleLevel: undefined,
    bundleShareFrac: undefined,
    openCircuitV: undefined,
    sourceOhm: undefined,
    polarity: 'positive',
    surgeMode: 'common',
    topology: part?.topology ?? 'none',
    capacitanceF: part?.capacitanceF,
    capacitance2F: undefined,
    inductanceH: part?.inductanceH ?? given.inductanceH,
    inductance2H: undefined,
    ...(isGrouped ? { standoffV: undefined, breakdownV: undefined } : {}),
  }
}
