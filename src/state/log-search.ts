/** Finds complaints of the Log by words of their title, their aircraft and their note. */
import type { Complaint } from '../store/complaint.ts'

const folded = new WeakMap<Complaint, string>()

/** What is searched of a complaint, in small letters; worked out once. */
export function searchedText(complaint: Complaint): string {
  const known = folded.get(complaint)
  if (known !== undefined) return known
  const text = `${complaint.title}\n${complaint.aircraft ?? ''}\n${complaint.note}`.toLowerCase()
  folded.set(complaint, text)
  return text
}

export const wantedWords = (text: string): readonly string[] => text.toLowerCase().split(/\s+/).filter(Boolean)

/** Those that hold every word, in the order they stand in. */
export function withWords(log: readonly Complaint[], words: string): readonly Complaint[] {
  const wanted = wantedWords(words)
  return wanted.length === 0 ? log : log.filter((one) => wanted.every((word) => searchedText(one).includes(word)))
}
