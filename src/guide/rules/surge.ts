/** Rules about suppressors: whether, how shared, which side of the filter, and the facts to collect before one is sized. */
import { RINGING_CASE } from '../../reference/surge-cases.ts'
import { farads, henries, ohms, volts } from '../print.ts'
import type { AdviceItem } from '../types.ts'
import { type Context, DERIVED, PRACTICE, type Rule } from './context.ts'
import { type Decision, sharingOf, sideOf, THREAT_ITEM, THREAT_WORDS, threatOf } from './surge-decision.ts'

/** Facts without which nobody can size a suppressor. */
export const SURGE_FACTS: readonly string[] = [
  'waveform of the pulse',
  'level: open-circuit volts and short-circuit amperes',
  'single stroke or repeats, and both polarities',
  'highest and lowest voltage of the line itself, and what its supply is built to',
  'whether the suppressor sits from each leg to chassis or across the pair',
  'what the input withstands, volts and for how long',
  'temperature range',
]

/** From here up a plain suppressor of hundreds of picofarads spends the whole room of the line. */
const FAST_HZ = 100e3

const isFast = ({ kind }: Context): boolean => (kind?.usefulHz?.hz ?? 0) >= FAST_HZ || (kind?.bitRateHz ?? 0) >= FAST_HZ

function formWords(context: Context): string {
  if (context.kind === undefined) return 'Its capacitance comes off the room of the signal.'
  return isFast(context)
    ? 'This line is fast: the low-capacitance form, a small rectifier in series with the suppressor, one string for each direction. Its capacitance still comes off the room.'
    : `This line is slow enough for a plain form; its capacitance at ${volts(0)} still comes off the room in full.`
}

const suppressor: Rule = {
  id: 'suppressor',
  advisesPart: true,
  say: (context) => {
    const threat = threatOf(context)
    const words =
      threat === undefined
        ? 'Not for noise: a suppressor’s capacitance earns no attenuation. Yes only if this line sees lightning, static or coils.'
        : threat === 'none'
          ? 'No: you answered that nothing but noise reaches these contacts.'
          : `Yes, once sized: ${THREAT_WORDS[threat]}.`
    return {
      title: 'Suppressor: yes or no',
      text: threat === 'none' ? words : `${words} ${formWords(context)}`,
      basis: [PRACTICE, { id: 'R30', standing: 'read' }],
      missing: [
        ...(context.kind === undefined ? ['kind of line'] : []),
        ...(threat === undefined ? ['whether the line is exposed to lightning, static or coils'] : []),
      ],
      ...(threat === undefined && { asks: [THREAT_ITEM] }),
    }
  },
}

/** A decision as advice. */
const said = (
  title: string,
  decision: Decision,
): Pick<AdviceItem, 'title' | 'text' | 'missing' | 'decided' | 'asks'> =>
  decision.is === 'decided'
    ? {
        title: [`${title}: ${decision.words}`, ...(decision.where === undefined ? [] : [decision.where])].join(', '),
        text: decision.reason,
        missing: [],
        decided: decision.words,
      }
    : {
        title,
        text: `${decision.reason} What decides: ${decision.fact}.`,
        missing: [decision.fact],
        asks: [decision.ask],
      }

const isDecidedNone = (context: Context): boolean => threatOf(context) === 'none'

const sharing: Rule = {
  id: 'sharing',
  advisesPart: true,
  say: (context) => ({ ...said('One for each contact, or shared', sharingOf(context)), basis: [PRACTICE, DERIVED] }),
}

function caseWords(): string {
  const { openCircuitV, sourceOhm, inductanceH, capacitanceF, loadOhm, ahead, behind } = RINGING_CASE
  const parts = [henries(inductanceH), farads(capacitanceF), ohms(loadOhm)].join(', ')
  return `Computed case: ${volts(openCircuitV)} behind ${ohms(sourceOhm)}, ${parts}. There the load reached ${volts(ahead.loadV, 2)} over a ${volts(ahead.clampV, 2)} clamp. Behind the filter it stayed at ${volts(behind.loadV, 2)}, and the capacitor at the connector saw ${volts(behind.capacitorV)}.`
}

const filterSide: Rule = {
  id: 'filter-side',
  advisesPart: true,
  say: (context) => {
    if (isDecidedNone(context)) return undefined
    const side = said('Which side of the filter', sideOf(context))
    return {
      ...side,
      text: `${side.text} A lightly loaded filter rings. ${caseWords()} The surge check computes both sides for yours.`,
      basis: [{ id: 'S39', standing: 'read' }, DERIVED, PRACTICE],
      missing: ['lead length of the suppressor', 'load of the filter', 'what the capacitors withstand'],
    }
  },
}

const surgeFacts: Rule = {
  id: 'surge-facts',
  advisesPart: false,
  say: () => ({
    title: 'Facts to collect',
    text: 'No estimate is made without them. Write each down with where it came from; the test plan and the maker of the box have most.',
    basis: [PRACTICE, { id: 'do-160', standing: 'memory' }],
    missing: SURGE_FACTS,
  }),
}

/** Rules about suppressors. */
export const SURGE_RULES: readonly Rule[] = [surgeFacts, suppressor, sharing, filterSide]
