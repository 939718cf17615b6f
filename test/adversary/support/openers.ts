/**
 * Follows what is said to open a shut window, as a reader would: the values of the sentence go into the fields, and the
 * window they make may not be refused.
 */
import { windowCheck } from '../../../src/calc/checks/window/check.ts'
import { TOPOLOGIES, TOPOLOGY_LABEL } from '../../../src/calc/network/circuit.ts'
import { parseQuantity } from '../../../src/calc/quantity/parse.ts'
import type { Success } from '../../../src/calc/types.ts'
import { run } from '../../support/run-check.ts'

type Texts = Readonly<Record<string, string>>
type Followed = { readonly texts: Texts; readonly sentence: string }

const FIGURE = '([\\d.,]+ [pnµmkM]?[FHΩ])'
const LABELS = TOPOLOGIES.map((topology) => TOPOLOGY_LABEL[topology]).join('|')
const MEETS = new RegExp(`^(${LABELS}) (?:opens it: .*|alone meets the need)\\.$`, 'u')
const INDUCTOR = new RegExp(`^(${LABELS}) with ${FIGURE} opens it: `, 'u')
const DAMPING = new RegExp(
  `^(${LABELS})(?: of ${FIGURE})? with ${FIGURE} and ${FIGURE} in series across its .* opens it(?:, marginally)?: enter them`,
  'u',
)
const CHOKE = new RegExp(
  `^A common-mode choke of ${FIGURE} (?:alone opens it|opens it|and ${FIGURE} in (${LABELS}) on each leg open it): leakage ${FIGURE} at most, ${FIGURE} across each winding`,
  'u',
)
const CROSS = new RegExp(`^A line-to-line capacitor of ${FIGURE} opens it: `, 'u')
const SUPPRESSOR = new RegExp(`^A suppressor of ${FIGURE} or less per leg opens it`, 'u')
const EXISTING = new RegExp(`^Taking ${FIGURE} off what is already on the line opens it`, 'u')
const NEED = /^([\d.,]+) dB less at the source/u

/** Room for the third digit of a figure that was rounded in its sentence: what lies exactly at a limit. */
const ROUNDED = 0.006

const topologyNamed = (label: string): string =>
  TOPOLOGIES.find((topology) => TOPOLOGY_LABEL[topology] === label) ?? label

function si(text: string): number {
  const quantity = text.endsWith('F') ? 'capacitance' : 'inductance'
  const read = parseQuantity(text, quantity)
  if (read.is !== 'value') throw new RangeError(`no figure “${text}”`)
  return read.si
}

/** The fields a sentence asks for; undefined for what is no opener, or has no value to follow. */
function fieldsOf(sentence: string, texts: Texts): Texts | undefined {
  const meets = MEETS.exec(sentence)
  if (meets) return { topology: topologyNamed(meets[1] ?? '') }
  const inductor = INDUCTOR.exec(sentence)
  if (inductor) return { topology: topologyNamed(inductor[1] ?? ''), inductanceH: inductor[2] ?? '' }
  const damping = DAMPING.exec(sentence)
  if (damping) return { topology: topologyNamed(damping[1] ?? ''), dampOhm: damping[3] ?? '', dampF: damping[4] ?? '' }
  const choke = CHOKE.exec(sentence)
  if (choke)
    return {
      ...(choke[3] === undefined ? {} : { topology: topologyNamed(choke[3]) }),
      chokeH: choke[1] ?? '',
      chokeLeakageH: choke[4] ?? '',
      chokeF: choke[5] ?? '',
      chokeWires: 'all',
    }
  const cross = CROSS.exec(sentence)
  if (cross) return { crossF: cross[1] ?? '' }
  if (sentence.startsWith('A 5 % C0G capacitor opens it'))
    return {
      dielectric: texts['dielectric'] === '' ? '' : 'c0g',
      toleranceFrac: '5 %',
      temperatureFrac: '0.3 %',
      biasFrac: '0',
      ageingDecades: '0',
      ageingFracPerDecade: '0',
    }
  if (sentence.startsWith('A perfect bond opens it')) return { bondOhm: '0', bondH: '0' }
  if (sentence.startsWith('Feed-through parts on a perfect bond open it'))
    return { bondOhm: '0', bondH: '0', esrOhm: '0', eslH: '0' }
  const suppressor = SUPPRESSOR.exec(sentence)
  if (suppressor) return { suppressorF: String(si(suppressor[1] ?? '') * (1 - ROUNDED)) }
  const existing = EXISTING.exec(sentence)
  if (existing)
    return { existingF: String(Math.max(0, Number(texts['existingF']) - si(existing[1] ?? '') * (1 + ROUNDED))) }
  const need = NEED.exec(sentence)
  if (need) return { neededDb: easedBy(Number(need[1]) * (1 + ROUNDED) + 0.01, texts['neededDb'] ?? '') }
  return undefined
}

const easedBy = (db: number, texts: string): string =>
  texts
    .split(';')
    .map((text) => String(Math.max(0, Number(text) - db)))
    .join(';')

/** Every opener of an answer that can be followed. */
export function followedOf(answer: Success, texts: Texts): readonly Followed[] {
  return answer.findings.flatMap(({ sentence }) => {
    const plain = sentence.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ')
    const fields = fieldsOf(plain, texts)
    return fields === undefined ? [] : [{ texts: { ...texts, ...fields }, sentence: plain }]
  })
}

/** The first opener whose own window is refused; undefined when none is. */
export function refusedOpener(followed: readonly Followed[]): string | undefined {
  for (const { texts, sentence } of followed)
    if (run(windowCheck, texts).verdict === 'fails') return `its opener is refused: ${sentence}`
  return undefined
}
