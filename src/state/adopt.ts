/** Checks that were kept as an address alone become part of the complaint: their facts go to a line. */
import { resolve } from '../calc/line/resolver.ts'
import { checkById } from '../calc/registry.ts'
import type { Check, Line } from '../calc/types.ts'
import { addLine, type Complaint, change, type SavedCheck } from './complaints.ts'
import { lineFrom } from './opening.ts'
import { readHash } from './router.ts'

type Adopted = { readonly saved: SavedCheck; readonly line: Line }

const isStray = ({ lineId, address }: SavedCheck): boolean => lineId === undefined && address !== undefined

/** Whether a check reads the same texts on both lines, usual values included. */
function readsSame(check: Check, one: Line, other: Line): boolean {
  const texts = (line: Line) =>
    JSON.stringify(
      resolve(line)
        .fields(check)
        .map(({ text }) => text.trim()),
    )
  return texts(one) === texts(other)
}

function adopt(saved: SavedCheck, lines: readonly Line[]): Adopted | undefined {
  const check = checkById(saved.check)
  const route = readHash(saved.address ?? '')
  if (!isStray(saved) || check === undefined || route.place !== 'check') return undefined
  const fresh = lineFrom(check, route.query)
  const line = lines.find((known) => readsSame(check, known, fresh)) ?? fresh
  // The address stays: it may hold keys this version does not know.
  return { saved: { ...saved, lineId: line.id }, line }
}

/** Gives each check that is kept as an address a line with its facts: one that has them already, or a new one. */
export function adoptChecks(complaint: Complaint): void {
  if (!complaint.checks.some(isStray)) return
  const lines: Line[] = [...complaint.lines]
  const checks = complaint.checks.map((saved) => {
    const adopted = adopt(saved, lines)
    if (adopted === undefined) return saved
    if (!lines.includes(adopted.line)) lines.push(adopted.line)
    return adopted.saved
  })
  if (checks.every((saved, index) => saved === complaint.checks[index])) return
  for (const line of lines.slice(complaint.lines.length)) addLine(complaint.id, line)
  change(complaint.id, { checks })
}
