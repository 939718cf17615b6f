/** Rules about the place: receptacle, adapter, source, coil, choke, and what a trial needs. All of them advise parts. */
import { formatQuantity } from '../../calc/quantity/format.ts'
import { FEED_THROUGH, KILLS_ABOVE } from '../../reference/field-figures.ts'
import { hertz } from '../print.ts'
import { type Context, numbersOf, PRACTICE, type Rule } from './context.ts'

/** A pair whose signal reaches past this has too little room for a capacitor to do the work alone. */
const FAST_PAIR_HZ = 5e6

const isFast = ({ facts, kind }: Context): boolean => {
  const rate = numbersOf(facts, 'bitRateHz', 'frequency')[0] ?? kind?.bitRateHz ?? 0
  return kind?.isPair === true && ((kind.usefulHz?.hz ?? 0) >= FAST_PAIR_HZ || rate >= FAST_PAIR_HZ)
}

function chokeWords(context: Context): string {
  if (!isFast(context) || context.mode === 'differential') return ''
  return ' This is a fast pair: a common-mode choke over both legs comes first, then small matched capacitors; no Pi.'
}

type Place = { readonly title: string; readonly text: string; readonly decided?: string }

const BOX: Place = {
  title: 'Place: the receptacle of the box',
  text: `Filtered contacts in the receptacle, shell all round on clean metal of the case, case bonded. Feed-through parts above ${hertz(FEED_THROUGH.fromHz)}: a leaded part is an inductor there.`,
  decided: 'filter in the receptacle of the box',
}
const INLINE: Place = {
  title: 'Place: an in-line adapter on the cable side',
  text: 'The box stays as it is qualified. Adapter between its receptacle and the cable, shell to shell all round. It sits on every contact: none where the connector also carries a line of the safety list. As a trial it is a test tool; to stay it is a design change that needs approved data, even if the box is untouched.',
  decided: 'an in-line adapter on the cable side',
}
const TRAY: Place = {
  title: 'Place: the tray wiring or a disconnect',
  text: 'A blind-mated tray takes no adapter: the wiring behind the tray or a disconnect carries the part, as near to the wall of the box as it can sit.',
}
const OPEN: Place = {
  title: 'Place: receptacle or in-line adapter',
  text: 'Receptacle when the box is new or open for change. In-line adapter on the cable when it is already qualified or cannot be changed. A blind-mated tray takes no adapter: there the tray wiring or a disconnect carries the part. Either way at the wall of the box, never in the middle of the cable.',
}

/** The place by the answer whether the box can be changed. */
const BY_ANSWER: Readonly<Record<string, Place>> = { yes: BOX, no: INLINE, tray: TRAY }

const place = (id: string, placeIn: (context: Context) => Place): Rule => ({
  id,
  advisesPart: true,
  say: (context) => {
    const { title, text, decided } = placeIn(context)
    return {
      title,
      text: `${text}${chokeWords(context)}`,
      basis: [PRACTICE, { id: 'S40', standing: 'read' }, { id: 'S47', standing: 'read' }],
      missing: context.kind === undefined ? ['kind of line'] : [],
      ...(decided !== undefined && { decided }),
    }
  },
})

/** The headline of an outcome with a place of its own says it already. */
const inHeadline = ({ title, text }: Place): Place => ({ title, text })

const RULES: readonly Rule[] = [
  place('place-box', () => inHeadline(BOX)),
  place('place-inline', () => inHeadline(INLINE)),
  place('place-either', ({ box }) => BY_ANSWER[box ?? ''] ?? OPEN),
  {
    id: 'place-choke',
    advisesPart: true,
    say: () => ({
      title: 'Place: a choke on the whole cable',
      text: 'All wires of the cable through one core, at the box to be protected, or at the source for noise that leaves it. The signal passes: only current that all wires share meets the core. It is weight on the cable, so the place and the tie need leave.',
      basis: [PRACTICE, { id: 'S47', standing: 'read' }],
      missing: ['diameter of the cable with its connector', 'frequency of the noise'],
    }),
  },
  {
    id: 'place-coil',
    advisesPart: true,
    say: () => ({
      title: 'Place: across the coil',
      text: 'The quench goes to the coil’s own terminals, the loop as short as it can be. At the driver only what is left: both impedances are low there, so a series bead or a T.',
      basis: [{ id: 'S1', standing: 'read' }, PRACTICE],
      missing: ['coil inductance and current', 'release time allowed'],
    }),
  },
]

function ladderWords({ kind }: Context): string {
  const ladder = kind?.trial
  if (ladder === undefined) return 'No trial values are known for this kind of line.'
  const values = [ladder.lowF, ladder.mediumF, ladder.highF].map((si) => formatQuantity(si, 'capacitance')).join(', ')
  const counts = ladder.counts === 'leg' ? 'from each leg to the shell' : 'from line to line'
  return `Trial values, small to large: ${values}, ${counts}; stay below the ceiling of the window check.`
}

const trial: Rule = {
  id: 'trial',
  advisesPart: true,
  say: (context) => {
    const { kind } = context
    const title = 'A trial: whose leave, and off again'
    const why = kind?.noTrialWhy ?? ((kind?.steadyPeakV ?? 0) > KILLS_ABOVE.dcV ? 'The voltage can kill.' : undefined)
    if (why !== undefined)
      return {
        title,
        text: `No in-line trial on this line. ${why} The figures serve a design for a dead line, by approved data.`,
        basis: [PRACTICE],
        missing: [],
      }
    return {
      title,
      text: `${kind === undefined ? 'Without the kind of line no trial value is proposed.' : ladderWords(context)} Needs the leave of the certifying staff for this aircraft. Before the connector is opened: power off, tagged, discharged through a resistor, measured dead. Never mated hot. A trial adapter does not fly. Remove it and record both fitting and removal.`,
      basis: [PRACTICE],
      missing: kind === undefined ? ['kind of line'] : [],
    }
  },
}

/** Rules about place and trial. */
export const PLACE_RULES: readonly Rule[] = [...RULES, trial]
