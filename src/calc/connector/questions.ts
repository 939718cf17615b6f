/** What only the maker of the connector can say, from what is open in its rows. Practice is asked, never taken for granted. */
import { hasInductor, TOPOLOGY_LABEL } from '../network/circuit.ts'
import { formatExact } from '../quantity/format.ts'
import { thinAirWords } from './build-words.ts'
import type { ContactRow } from './contact-row.ts'
import { LARGE_IN_CONTACT_F } from './place.ts'
import { partWords } from './said.ts'
import type { MakerQuestion, SchedulePart } from './schedule.ts'
import type { Connector } from './types.ts'

export function questionsOf(
  connector: Connector,
  rows: readonly ContactRow[],
  parts: readonly SchedulePart[],
): readonly MakerQuestion[] {
  const capacitors = parts.filter(({ valueF }) => valueF !== undefined)
  if (parts.length === 0) return []
  const at = new Map(rows.map(({ contact }, i) => [contact.id, i]))
  const inOrder = (contacts: readonly string[]) =>
    contacts.toSorted((one, other) => (at.get(one) ?? 0) - (at.get(other) ?? 0))
  return [
    ...planeQuestions(connector, capacitors),
    ...parts.flatMap(partQuestions),
    ...rowQuestions(rows),
    ...bondQuestion(connector, rows),
  ].map((question) => ({ ...question, contacts: inOrder(question.contacts) }))
}

const idsOf = (parts: readonly SchedulePart[]): readonly string[] => parts.flatMap(({ contacts }) => contacts)

function planeQuestions({ texts }: Connector, parts: readonly SchedulePart[]): readonly MakerQuestion[] {
  const isOpen = (texts.valueRatio?.trim() ?? '') === ''
  const values = new Set(parts.map(({ valueF }) => valueF))
  const isPi = parts.filter(({ topology }) => topology === 'PI')
  return [
    ...(values.size > 1
      ? [
          {
            id: 'plane-practice',
            sentence:
              'Is one ceramic one plane here, with one dielectric class and the thickness of its highest voltage for all its contacts? (Practice, not confirmed.)',
            contacts: idsOf(parts),
          },
        ]
      : []),
    ...(values.size > 1 && isOpen
      ? [
          {
            id: 'plane-ratio',
            sentence: `What is the largest ratio of values in one plane? Here it is ${ratioOf([...values])}.`,
            contacts: idsOf(parts),
          },
        ]
      : []),
    ...(isPi.length > 0
      ? [
          {
            id: 'pi-planes',
            sentence:
              'A Pi takes two planes with inductors between: is there room, and may plain capacitors share one of them?',
            contacts: idsOf(isPi),
          },
        ]
      : []),
  ]
}

const ratioOf = (values: readonly (number | undefined)[]): string => {
  const known = values.filter((value) => value !== undefined)
  return `${Number((Math.max(...known) / Math.min(...known)).toPrecision(2))} : 1`
}

function partQuestions(part: SchedulePart): readonly MakerQuestion[] {
  const { topology, valueF = 0, inductanceH, contacts } = part
  return [
    ...(valueF > LARGE_IN_CONTACT_F
      ? [
          {
            id: `fits-${valueF}`,
            sentence: `Does ${formatExact(valueF, 'capacitance')} fit a contact at its voltage class, and what is the largest that does?`,
            contacts,
          },
        ]
      : []),
    ...(hasInductor(topology) && inductanceH !== undefined
      ? [
          {
            id: `inductor-${topology}-${inductanceH}`,
            sentence: `${TOPOLOGY_LABEL[topology]}: what is left of ${formatExact(inductanceH, 'inductance')} at the current of the contact, hot and cold?`,
            contacts,
          },
        ]
      : []),
  ]
}

/** Questions of the rows, each once with all its contacts. */
function rowQuestions(rows: readonly ContactRow[]): readonly MakerQuestion[] {
  const found = new Map<string, { sentence: string; contacts: string[] }>()
  const ask = (id: string, sentence: string, contact: string) => {
    const one = found.get(id) ?? { sentence, contacts: [] }
    one.contacts.push(contact)
    found.set(id, one)
  }
  for (const row of rows) {
    const { build, decided, contact } = row
    if (build === undefined || decided.part === undefined) continue
    const part = partWords({ topology: 'C', valueF: decided.part.capacitanceF })
    if (build.series === 'none')
      ask(
        `series-${decided.part.capacitanceF}`,
        `${part} is no standard value: can it be made, and to which tolerance?`,
        contact.id,
      )
    if (build.ratedV === undefined && build.passingV !== undefined)
      ask('above-classes', `Which build stands ${formatExact(build.passingV, 'voltage')} peak?`, contact.id)
    if (decided.window?.restsOn?.includes('biasFrac') === true)
      ask(
        'bias',
        'What does the capacitor lose at the working volts of the contact, and what over its life?',
        contact.id,
      )
    const air = thinAirWords(build)
    if (air !== undefined) ask(`thin-air-${build.thinAir}`, `${air} How is it filled and spaced?`, contact.id)
  }
  return [...found].map(([id, one]) => ({ id, ...one }))
}

function bondQuestion({ shared }: Connector, rows: readonly ContactRow[]): readonly MakerQuestion[] {
  const isOpen = [shared.bondOhm, shared.bondH].some((text) => (text?.trim() ?? '') === '')
  if (!isOpen) return []
  return [
    {
      id: 'bond',
      sentence:
        'What resistance and inductance has the path from the filter plate to the case, through the shell joint?',
      contacts: rows.flatMap(({ decided }) => (decided.part === undefined ? [] : [decided.id])),
    },
  ]
}
