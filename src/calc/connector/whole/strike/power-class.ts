/**
 * Which surges decide the power class of the suppressor each contact is proposed: the test its Line names, else the pin
 * level of the connector, on this contact alone. Equal surges once. Plain numbers, so that they can be run elsewhere.
 */
import { surgeCheck } from '../../../checks/surge/check.ts'
import { refusalIssue } from '../../../checks/surge/words/refusals.ts'
import { listed } from '../../../explain/sentence.ts'
import type { Express } from '../../../line/fields.ts'
import { type Resolution, resolve } from '../../../line/resolver.ts'
import { lineQuestionOf } from '../../../surge/answer.ts'
import type { SurgeAsked } from '../../../surge/asked.ts'
import { lineReasons } from '../../../surge/line.ts'
import { type SurgeSetup, setUpSurge } from '../../../surge/setup.ts'
import type { Line } from '../../../types.ts'
import type { ContactRow } from '../../contact-row.ts'
import type { Connector } from '../../types.ts'
import { typedNumber } from '../given.ts'
import { groupOfContact } from '../part-of-group.ts'
import { strictly } from '../strict.ts'

/** One contact: which of the surges is its own, or what it needs before there is one. */
export type ContactClass =
  | {
      readonly id: string
      readonly stress: number
      /** "Waveform 4, level 3" */
      readonly test: string
      /** in V; undefined: not entered */
      readonly withstandV: number | undefined
      /** what nobody entered, taken the stricter way: "temperature 85 °C" */
      readonly taken: readonly string[]
      /** its own capacitance was entered, so it counts against the signal */
      readonly isCounted: boolean
    }
  | { readonly id: string; readonly needs: string }

export type ClassQuestion = { readonly contacts: readonly ContactClass[]; readonly stresses: readonly SurgeAsked[] }

/** The question for these rows of a schedule; contacts that are proposed no stand-off are not asked about. */
export function classQuestion(connector: Connector, rows: readonly ContactRow[], express?: Express): ClassQuestion {
  const stresses = new Map<string, { readonly at: number; readonly asked: SurgeAsked }>()
  const groups = groupOfContact(connector)
  const contacts = rows.flatMap((row): readonly ContactClass[] => {
    const { id } = row.contact
    if (row.line === undefined || row.suppressor?.standoffV === undefined) return []
    if (groups.has(id))
      return [{ id, needs: 'is that of the part it shares; strike all contacts to see what that one uses' }]
    if (row.decided.by === 'nobody') return [{ id, needs: 'needs what is fitted here to be decided' }]
    const stress = stressOf(connector, row, row.line, express)
    if ('needs' in stress) return [{ id, needs: stress.needs }]
    const key = JSON.stringify(stress.asked)
    const one = stresses.get(key) ?? { at: stresses.size, asked: stress.asked }
    stresses.set(key, one)
    const { asked: _asked, ...said } = stress
    return [{ id, stress: one.at, ...said }]
  })
  return { contacts, stresses: [...stresses.values()].map(({ asked }) => asked) }
}

type Stress = {
  readonly asked: SurgeAsked
  readonly test: string
  readonly taken: readonly string[]
  readonly withstandV: number | undefined
  readonly isCounted: boolean
}
type Needs = { readonly needs: string }

function stressOf(connector: Connector, row: ContactRow, line: Line, express: Express | undefined): Stress | Needs {
  const resolution = resolve(line, express)
  const fields = resolution.fields(surgeCheck)
  const unread = fields.filter(({ state }) => state === 'refused' || state === 'pending')
  if (unread.length > 0)
    return { needs: `needs texts that can be read: ${listed(unread.map(({ input }) => input.label.toLowerCase()))}` }
  const { part } = row.decided
  const { values, taken } = strictly(fields, line, { part, keys: STRICT })
  const isOwn = OWN_TEST.some((key) => (resolution.fact(key)?.text.trim() ?? '') !== '')
  // the part of a test that a Line leaves out is never made up from another's
  const pulse = isOwn ? ownPulse(resolution) : pinPulse(connector, express)
  if ('needs' in pulse) return pulse
  const asked: SurgeAsked = {
    ...values,
    ...pulse,
    topology: part?.topology ?? 'none',
    capacitanceF: part?.capacitanceF,
    capacitance2F: undefined,
    inductanceH: part?.inductanceH ?? values.inductanceH,
    inductance2H: undefined,
    placement: 'connector',
    suppressorPlace: 'leg',
    suppressorType: 'avalanche',
    seriesCount: 1,
    standoffV: row.suppressor?.standoffV,
    breakdownV: undefined,
    bidirectional: row.suppressor?.isBidirectional === true,
    // a class of its own brings both
    ratedPulseW: undefined,
    dynamicOhm: 1,
  }
  const answer = setUpSurge(asked)
  if (answer.is === 'refused') return { needs: `needs another test: ${refusalIssue(answer.refusal).message}` }
  if (answer.is === 'missing') return { needs: `needs ${listed(answer.wanted.map(namesOf))}` }
  const unfit = unfitWords(asked, answer.setup)
  if (unfit !== undefined) return { needs: unfit }
  const level = asked.bundleLevel ?? asked.level
  const { pulse: run, withstandV } = answer.setup
  return {
    asked,
    taken,
    withstandV,
    isCounted: values.suppressorF !== undefined,
    test: `${run.row.name}${level === undefined ? '' : `, ${run.bundle ? 'bundle level' : 'level'} ${level}`}`,
  }
}

/** What the line itself does that no power class of this part stands, or may do for all that is entered. */
function unfitWords(asked: SurgeAsked, { part, kind }: SurgeSetup): string | undefined {
  const reasons = part === undefined ? [] : lineReasons(lineQuestionOf(asked, part, kind))
  if (reasons.some(({ verdict }) => verdict === 'fails')) return 'is not said: the line itself makes this part conduct'
  return reasons.some(({ is }) => is === 'category-missing' || is === 'category-empty')
    ? 'needs the category of the supply: its surges last longer than any pulse of a test'
    : undefined
}

const NAMES: Readonly<Record<string, string>> = {
  waveform: 'the waveform of the test',
  level: 'the level of the test',
  openCircuitV: 'its open-circuit volts',
}

function namesOf([key, ...others]: readonly [string, ...string[]]): string {
  return [key, ...others]
    .map((one) => NAMES[one] ?? surgeCheck.inputs.find((input) => input.key === one)?.label.toLowerCase() ?? one)
    .join(' or ')
}

/** Its rating, its lead, and what bias leaves of the capacitor: no class may rest on kindly assumed ones. */
const STRICT: readonly string[] = ['ambientC', 'suppressorLeadH', 'biasFrac']

const UNSAID = {
  level: undefined,
  bundleLevel: undefined,
  bundleShareFrac: undefined,
  openCircuitV: undefined,
  sourceOhm: undefined,
} as const

/** Facts of a Line that name a test. */
const OWN_TEST = ['surgeWaveform', 'surgeLevel', 'surgeBundleLevel', 'surgeOpenCircuitV'] as const

/** The Line's own fields are the pulse; a waveform that is only a default names none. */
const ownPulse = (resolution: Resolution): Partial<SurgeAsked> =>
  (resolution.fact('surgeWaveform')?.text.trim() ?? '') === '' ? { waveform: undefined } : {}

/** The pin level of the connector. */
function pinPulse({ texts }: Connector, express: Express | undefined): Partial<SurgeAsked> | Needs {
  const chosen = texts.strikeWaveform?.trim() ?? ''
  const pins = typedNumber(texts.strikeLevel, { quantity: 'count', what: 'level', example: '3' }, express)
  if (pins.refused !== undefined) return { needs: `needs the pin level of the test: ${pins.refused}` }
  if (chosen === '') return { needs: 'needs the waveform and level of the test' }
  if (pins.si === undefined) return { needs: 'needs the pin level of the test' }
  return { ...UNSAID, waveform: chosen, level: pins.si, surgeMode: 'common' }
}
