/**
 * A table being pasted into a connector: its text, what the user said of it, and what would change. It stays while the
 * window does, so that a look elsewhere loses nothing.
 *
 * `pasteInto(complaintId, connectorId)`   the model, the same one each time
 */
import { computed, type ReadonlySignal, signal } from '@preact/signals'
import { meaningOfWord, unknownWords, type WordMeaning } from '../calc/connector/kind-words.ts'
import { type PastePlan, planPaste } from '../calc/connector/paste-plan.ts'
import { type Pasted, type PastedChoice, readPasted, wordKey } from '../calc/connector/pasted.ts'
import { newLine } from '../store/line.ts'
import { complaints } from './complaints.ts'
import { changeConnector, connectorsOf } from './connectors.ts'
import { expressionReading } from './expression.ts'

/** A word of the table for a kind of line, and what it is taken for; undefined = still to be asked. */
export type TableWord = { readonly word: string; readonly rows: number; readonly meaning: WordMeaning | undefined }

export type PasteModel = {
  readonly text: ReadonlySignal<string>
  readonly choice: ReadonlySignal<PastedChoice>
  readonly pairsByName: ReadonlySignal<boolean>
  /** undefined while there is no text */
  readonly pasted: ReadonlySignal<Pasted | undefined>
  readonly words: ReadonlySignal<readonly TableWord[]>
  /** undefined while there is no table, or a word is still to be asked about */
  readonly plan: ReadonlySignal<PastePlan | undefined>
  readonly type: (text: string) => void
  readonly choose: (choice: PastedChoice) => void
  readonly say: (word: string, meaning: WordMeaning) => void
  readonly pairByName: (isOn: boolean) => void
  /** carries out all of it as one step; false where there is nothing to carry out */
  readonly takeOver: () => boolean
}

const models = new Map<string, PasteModel>()

export function pasteInto(complaintId: string, connectorId: string): PasteModel {
  const key = `${complaintId} ${connectorId}`
  const model = models.get(key) ?? createPaste(complaintId, connectorId)
  models.set(key, model)
  return model
}

function createPaste(complaintId: string, connectorId: string): PasteModel {
  const text = signal('')
  const choice = signal<PastedChoice>({})
  const said = signal<ReadonlyMap<string, WordMeaning>>(new Map())
  const pairsByName = signal(true)
  const pasted = computed(() => (text.value.trim() === '' ? undefined : readPasted(text.value, choice.value)))
  const words = computed((): readonly TableWord[] =>
    pasted.value?.ok
      ? pasted.value.kindWords.map(({ word, rows }) => ({
          word,
          rows,
          meaning: said.value.get(wordKey(word)) ?? meaningOfWord(word),
        }))
      : [],
  )
  const plan = computed((): PastePlan | undefined => {
    const connector = connectorsOf(complaintId).value?.find(({ id }) => id === connectorId)
    const complaint = complaints.value?.find(({ id }) => id === complaintId)
    if (!pasted.value?.ok || connector === undefined || complaint === undefined) return undefined
    if (unknownWords(pasted.value.kindWords, said.value).length > 0) return undefined
    return planPaste({
      pasted: pasted.value,
      connector,
      lines: complaint.lines,
      said: said.value,
      pairsByName: pairsByName.value,
      newLine,
      express: expressionReading,
    })
  })
  return {
    text,
    choice,
    pairsByName,
    pasted,
    words,
    plan,
    type: (next) => {
      text.value = next
      // columns were chosen for another table
      if (next.trim() === '') choice.value = {}
    },
    choose: (next) => {
      choice.value = next
    },
    say: (word, meaning) => {
      said.value = new Map(said.value).set(wordKey(word), meaning)
    },
    pairByName: (isOn) => {
      pairsByName.value = isOn
    },
    takeOver: () => {
      const now = plan.value
      if (!now?.ok || now.rows.every(({ state }) => state === 'same')) return false
      changeConnector(complaintId, connectorId, { contacts: now.contacts }, now.lines)
      text.value = ''
      choice.value = {}
      return true
    },
  }
}
