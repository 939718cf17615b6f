/** The shelf of sounds: one card a noise signature, with what it is taken for and the test that separates the two. */
import type { Source } from '../../../calc/types.ts'
import { capital } from '../../../calc/verdict.ts'
import { DERIVED } from '../../../reference/line-kinds/cite.ts'
import { NOISE_SIGNATURES, type NoiseSignature } from '../../../reference/noise-signatures.ts'
import { hertz } from '../../print.ts'
import { SUSPECTS } from '../../suspects/suspects.ts'
import { cautionsOfTests } from '../test-cautions.ts'
import type { Block, BookPage, BookRow } from '../types.ts'
import { SOUND_CARDS, type SoundCard, soundPageId } from './cards.ts'
import { alternatorHz, commutatorHz, EXAMPLE, popsPerSec, whistleHz } from './example.ts'

/** A phrase of a table as a sentence. */
const sentence = (phrase: string): string => `${capital(phrase)}${phrase.endsWith('…') ? '' : '.'}`

/** Pitches of the sound that is played, worked out for the machine of the example. */
const PLAYED: Readonly<Record<string, () => string>> = {
  'leakage-400': () => `a bus of ${hertz(EXAMPLE.busHz)}`,
  'rectifier-400': () => `${EXAMPLE.rectifierPulses} pulses on a bus of ${hertz(EXAMPLE.busHz)}: ${hertz(whistleHz())}`,
  'alternator-whine': () =>
    `${EXAMPLE.polePairs} pole pairs driven at ${EXAMPLE.driveRatio} times the engine, ${EXAMPLE.rpm[0]} to ${EXAMPLE.rpm[1]} rpm: ${hertz(alternatorHz(EXAMPLE.rpm[0]))} to ${hertz(alternatorHz(EXAMPLE.rpm[1]))}`,
  commutator: () =>
    `${EXAMPLE.commutatorBars} bars at ${EXAMPLE.motorRpm} rpm: a whirr of ${hertz(commutatorHz())} under the rush`,
  ignition: () =>
    `${EXAMPLE.cylinders} cylinders, ${EXAMPLE.rpm[0]} to ${EXAMPLE.rpm[1]} rpm: ${popsPerSec(EXAMPLE.rpm[0])} to ${popsPerSec(EXAMPLE.rpm[1])} sparks a second`,
  strobe: () => `${EXAMPLE.flashesPerMin} flashes a minute`,
  'ground-transmitter': () => `an antenna that turns ${EXAMPLE.sweepsPerMin} times a minute`,
}

function pageOf(signature: NoiseSignature, card: SoundCard): BookPage {
  const suspect = SUSPECTS.find(({ id }) => id === card.suspect)
  if (suspect === undefined) throw new RangeError(`no suspect "${card.suspect}"`)
  const played = PLAYED[signature.id]
  const titleOf = (id: string) => SOUND_CARDS.find((one) => one.signature === id)?.title ?? id
  const facts: readonly BookRow[] = [
    { label: 'Heard', text: sentence(signature.heard) },
    { label: 'First test', text: sentence(signature.firstTest) },
    { label: 'When it comes', text: card.comes },
    { label: 'Rhythm', text: card.rhythm },
    { label: 'Pitch', text: sentence(signature.rule) },
  ]
  const blocks: readonly Block[] = [
    { is: 'sound', sound: signature.id, said: `${card.listen} ${card.rhythm}` },
    { is: 'rows', rows: facts },
    {
      is: 'text',
      text: played === undefined ? card.listen : `${card.listen} Made for ${played()}.`,
      name: 'What is played',
    },
    { is: 'heading', text: 'Taken for it' },
    { is: 'rows', rows: card.alike.map((other) => ({ label: titleOf(other.signature), text: other.test })) },
    { is: 'heading', text: 'If it is this' },
    { is: 'text', text: suspect.oneLine },
  ]
  return {
    id: soundPageId(signature.id),
    shelf: 'sounds',
    title: card.title,
    inShort: `${signature.source}: ${signature.heard}`,
    words: [signature.source, ...card.words],
    blocks,
    cautions: cautionsOfTests([suspect.proof]),
    sources: sourcesOf(signature, played !== undefined),
    related: [
      ...card.alike.map(({ signature: other }) => ({ page: soundPageId(other) })),
      { item: suspect.proof },
      { check: 'tone' },
      { page: 'noise-signatures' },
    ],
  }
}

function sourcesOf({ citations }: NoiseSignature, isWorkedOut: boolean): readonly [Source, ...Source[]] {
  const [first, ...rest] = citations
  const cited: readonly Source[] = rest
  const isThere = citations.some(({ id }) => id === DERIVED.id)
  return [first, ...cited, ...(isWorkedOut && !isThere ? [DERIVED] : [])]
}

/** Every signature of the reference has its card; one without is a fault of ours. */
export function pages(): readonly BookPage[] {
  return NOISE_SIGNATURES.map((signature) => {
    const card = SOUND_CARDS.find((one) => one.signature === signature.id)
    if (card === undefined) throw new RangeError(`no card for the signature "${signature.id}"`)
    return pageOf(signature, card)
  })
}

export { pages as built }
