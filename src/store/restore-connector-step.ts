/** Reads a change to a connector back from text that anything may have touched. */
import { readPlace, restoreConnector } from './connector.ts'
import type { ConnectorPatch, ConnectorStep, LineStep } from './connector-edits.ts'
import type { When } from './edits.ts'
import { isRecord } from './plain.ts'
import type { Step } from './steps.ts'

const isLineStep = (step: Step): step is LineStep =>
  ['addLine', 'fact', 'settleFact', 'line', 'removeLine', 'undoRemoveLine'].includes(step.do)

/** The step; undefined where it does not fit. `readStep` reads the changes to lines that are part of it. Never throws. */
export function restoreConnectorStep(
  raw: Record<string, unknown>,
  readStep: (raw: Record<string, unknown>) => Step | undefined,
): ConnectorStep | undefined {
  const held = raw['lines']
  const read = (Array.isArray(held) ? held : []).flatMap((one) => (isRecord(one) ? (readStep(one) ?? []) : []))
  const lines = Array.isArray(held) ? { lines: read.filter(isLineStep) } : {}
  if (raw['do'] === 'addConnector')
    return isRecord(raw['connector'])
      ? { do: 'addConnector', connector: restoreConnector(raw['connector']), ...lines }
      : undefined
  const { id, connectorId, base, next, text, left } = raw
  const when = restoreWhen(raw)
  if (typeof id !== 'string' || typeof connectorId !== 'string' || when === undefined) return undefined
  const own = { id, connectorId, ...when }
  const where = isRecord(raw['place']) ? readPlace(raw['place']) : undefined
  switch (raw['do']) {
    case 'connectorText':
      return where && typeof next === 'string'
        ? { do: 'connectorText', ...own, place: where, next, base: typeof base === 'string' ? base : '' }
        : undefined
    case 'settleConnector': {
      const seen = Array.isArray(left) ? left.filter((one): one is string => typeof one === 'string') : []
      return where && typeof text === 'string'
        ? { do: 'settleConnector', ...own, place: where, text, left: seen }
        : undefined
    }
    case 'changeConnector':
      return { do: 'changeConnector', ...own, patch: restorePatch(raw['patch']), base: restorePatch(base), ...lines }
    case 'removeConnector':
    case 'undoRemoveConnector':
      return { do: raw['do'], ...own, ...lines }
    default:
      return undefined
  }
}

/** When a change was made; undefined where it does not say so. */
export function restoreWhen({ at, seen, on, turn }: Record<string, unknown>): When | undefined {
  if (typeof at !== 'string') return undefined
  const counted = isCount(on) && isCount(turn) ? { on, turn } : {}
  return { at, ...(typeof seen === 'string' && Number.isFinite(Date.parse(seen)) && { seen }), ...counted }
}

const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && Number(value) >= 0

const PARTS = ['shape', 'contacts', 'suppressors', 'adjacent'] as const

/** The parts that the patch names, each through the gate. */
function restorePatch(raw: unknown): ConnectorPatch {
  if (!isRecord(raw)) return {}
  const whole = restoreConnector(raw)
  return Object.fromEntries(PARTS.flatMap((key) => (raw[key] === undefined ? [] : [[key, whole[key]]])))
}
