/** Reads steps back from text that anything may have touched. */
import type { Fact, FactKey, Line } from '../calc/types.ts'
import { COMPLAINT_TEXTS, type ComplaintPatch, type ComplaintTexts } from './complaint.ts'
import { isConnectorStep } from './connector-edits.ts'
import type { CellEdit, FactEdit, LinePatch, When } from './edits.ts'
import { isFactKey, isLineText } from './ids.ts'
import { restoreKeptLine, restoreLoose } from './line.ts'
import { restoreTriage } from './meta.ts'
import { entriesOf, isRecord } from './plain.ts'
import { restoreRecord } from './restore.ts'
import { restoreComplaint } from './restore-complaint.ts'
import { restoreConnectorStep, restoreWhen } from './restore-connector-step.ts'
import type { Step } from './steps.ts'

/** Reads steps back from text that anything may have touched; what does not fit is left out. Never throws. */
export function restoreSteps(raw: unknown): readonly Step[] {
  return Array.isArray(raw) ? raw.flatMap((one) => (isRecord(one) ? (restoreStep(one) ?? []) : [])) : []
}

const textOf = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined)

function restoreStep(raw: Record<string, unknown>): Step | undefined {
  const at = textOf(raw['at']) ?? new Date().toISOString()
  if (isConnectorStep(raw)) return restoreConnectorStep(raw, (line) => restoreStep(line))
  switch (raw['do']) {
    case 'put': {
      const { complaint } = raw
      if (!isRecord(complaint)) return undefined
      return { do: 'put', complaint: restoreComplaint(complaint, 'stored'), lineId: textOf(raw['lineId']) }
    }
    case 'addLine':
      return isRecord(raw['line']) ? { do: 'addLine', line: restoreKeptLine(raw['line']) } : undefined
    case 'triage': {
      const base = textOf(raw['base'])
      return { do: 'triage', draft: restoreTriage(raw['draft']), ...(base === undefined ? {} : { base }) }
    }
    case 'scratch': {
      const line = restoreLoose(raw['line'])
      const edit = isRecord(raw['edit']) ? restoreFactEdit(raw['edit']) : undefined
      return { do: 'scratch', line, at, edit }
    }
    default: {
      const [id, when] = [textOf(raw['id']), restoreWhen(raw)]
      return id === undefined || when === undefined ? undefined : restoreEdit(raw, { id, ...when })
    }
  }
}

function restoreEdit(raw: Record<string, unknown>, place: { readonly id: string } & When): Step | undefined {
  const { patch, check, base, left } = raw
  const lineId = textOf(raw['lineId'])
  const text = textOf(raw['text'])
  const seen = Array.isArray(left) ? left.filter((one): one is string => typeof one === 'string') : []
  switch (raw['do']) {
    case 'change':
      return isRecord(patch)
        ? { do: 'change', ...place, patch: restorePatch(patch), base: restoreBase(base) }
        : undefined
    case 'check': {
      const [saved] = restorePatch({ checks: [check] }).checks ?? []
      return saved && { do: 'check', ...place, check: saved }
    }
    case 'cell': {
      const cell = restoreCell(raw)
      return cell && { do: 'cell', ...place, ...cell }
    }
    case 'settle': {
      const field = COMPLAINT_TEXTS.find((one) => one === raw['field'])
      return field && text !== undefined ? { do: 'settle', ...place, field, text, left: seen } : undefined
    }
    case 'delete':
    case 'undelete':
      return { do: raw['do'], ...place }
    case 'removeLine':
    case 'undoRemoveLine':
      return lineId === undefined ? undefined : { do: raw['do'], ...place, lineId }
    case 'settleFact':
      return lineId !== undefined && text !== undefined && isLineText(raw['fact'])
        ? { do: 'settleFact', ...place, lineId, fact: raw['fact'], text, left: seen }
        : undefined
    case 'line':
      return lineId !== undefined && isRecord(patch)
        ? { do: 'line', ...place, lineId, patch: restoreLinePatch(patch), base: textOf(base) }
        : undefined
    case 'fact': {
      const edit = restoreFactEdit(raw)
      return lineId !== undefined && edit !== undefined ? { do: 'fact', ...place, lineId, ...edit } : undefined
    }
    default:
      return undefined
  }
}

/** The parts of a complaint that the patch names, each through the gate. */
function restorePatch(raw: Record<string, unknown>): ComplaintPatch {
  const whole: Record<string, unknown> = { ...restoreRecord(raw) }
  return Object.fromEntries(entriesOf(raw).flatMap(([key]) => (key in whole ? [[key, whole[key]]] : [])))
}

function restoreCell(raw: Record<string, unknown>): CellEdit | undefined {
  const [table, column, text] = [textOf(raw['table']), textOf(raw['column']), textOf(raw['text'])]
  const row = Number(raw['row'])
  if (table === undefined || column === undefined || text === undefined) return undefined
  return isRowNumber(row) ? { table, row, column, text, base: textOf(raw['base']) ?? '' } : undefined
}

/** Nobody fills in more lines by hand; a wild number would make a list of that length. */
const MOST_ROWS = 1000
const isRowNumber = (row: number): boolean => Number.isSafeInteger(row) && row >= 0 && row < MOST_ROWS

const LINE_PARTS = ['name', 'gate', 'trials'] as const

function restoreLinePatch(raw: Record<string, unknown>): LinePatch {
  const line: Line = restoreLoose(raw)
  return Object.fromEntries(LINE_PARTS.flatMap((key) => (raw[key] === undefined ? [] : [[key, line[key]]])))
}

function restoreBase(raw: unknown): ComplaintTexts {
  if (!isRecord(raw)) return {}
  return Object.fromEntries(COMPLAINT_TEXTS.flatMap((key) => (textOf(raw[key]) === undefined ? [] : [[key, raw[key]]])))
}

function restoreFactEdit(raw: unknown): FactEdit | undefined {
  if (!isRecord(raw) || !isFactKey(raw['fact'])) return undefined
  const fact: FactKey = raw['fact']
  const next: Fact | undefined = restoreLoose({ facts: { [fact]: raw['next'] } }).facts[fact]
  if (raw['next'] !== undefined && next === undefined) return undefined
  return { fact, base: textOf(raw['base']) ?? '', next }
}
