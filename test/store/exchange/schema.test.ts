import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { COMPLAINT_SCHEMA } from '../../../src/store/complaint.ts'
import { CONNECTOR_FIELDS } from '../../../src/store/connector.ts'
import { COMPLAINT_IN_FILE, FILE_SCHEMA, type Schema } from '../../../src/store/exchange/schema.ts'
import { misfitOf } from '../../../src/store/exchange/schema-check.ts'
import { restoreWhole } from '../../../src/store/exchange/whole.ts'
import { LINE_FIELDS } from '../../../src/store/line.ts'
import { COMPLAINT_FIELDS } from '../../../src/store/restore.ts'
import fc from '../../support/property.ts'
import { fitting } from './by-schema.ts'

const PUBLISHED = join(import.meta.dirname, '../../../public/schema/complaints-1.json')
const asText = `${JSON.stringify(FILE_SCHEMA, null, 2)}\n`
if (process.env['UPDATE'] !== undefined) writeFileSync(PUBLISHED, asText)

const fieldsOf = (schema: Schema | undefined): string[] => Object.keys(schema?.properties ?? {}).sort()
const without = (fields: readonly string[], names: readonly string[]): string[] =>
  fields.filter((field) => !names.includes(field)).sort()

describe('the schema of a file of complaints', () => {
  it('is published with the app as it is checked here (UPDATE=1 writes it)', () => {
    expect(readFileSync(PUBLISHED, 'utf8')).toBe(asText)
  })

  it('names the fields of every record the gate knows, but what stays on the device', () => {
    const { lines, connectors } = COMPLAINT_IN_FILE.properties ?? {}
    expect(fieldsOf(COMPLAINT_IN_FILE)).toEqual(
      [...without(COMPLAINT_FIELDS, ['deletedAt', 'turn']), 'connectors', 'lines'].sort(),
    )
    expect(fieldsOf(lines?.items)).toEqual(without(LINE_FIELDS.kept, ['complaintId', 'removedAt', 'gate', 'turn']))
    expect(fieldsOf(connectors?.items)).toEqual(without(CONNECTOR_FIELDS, ['complaintId', 'removedAt', 'turn']))
  })

  it('agrees with the gate: of what fits, nothing is set aside but words only a newer version has', () => {
    fc.assert(
      fc.property(fitting(COMPLAINT_IN_FILE, false), (raw) => {
        expect(misfitOf(COMPLAINT_IN_FILE, raw)).toBeUndefined()
        const { complaint, connectors } = restoreWhole(raw, 'import')
        const given = JSON.stringify(raw)
        const aside = [complaint, ...complaint.lines, ...connectors]
          .flatMap(({ kept }) => kept)
          .filter(({ at }) => !given.includes(JSON.stringify(at)))
          .map(({ at }) => at.replace(/\d+/g, '0'))
        // names of facts and checks, and what is said of a text of one, only grow
        const growing = /^(facts\..*|checks\.0|rivals\.0|lines\..*)$/s
        expect(aside.filter((at) => !growing.test(at))).toEqual([])
      }),
      { numRuns: 120 },
    )
  })

  it('agrees with the gate: what the gate sets aside of a known field does not fit', () => {
    const wrong = fc.constantFrom<unknown>(7, -1, 0.5, true, null, [], {}, 'x y', 'square', [7], { a: 7 })
    const names = Object.keys(COMPLAINT_IN_FILE.properties ?? {})
    fc.assert(
      fc.property(fc.constantFrom(...names), wrong, (name, value) => {
        const raw = { id: 'c-1', schemaVersion: COMPLAINT_SCHEMA, updatedAt: '2026-11-26T08:00:00.000Z', [name]: value }
        const { complaint } = restoreWhole(raw, 'import')
        const isRefused = complaint.kept.some(({ at }) => at === name || at.startsWith(`${name}.`))
        if (isRefused && name !== 'kept') expect(misfitOf(COMPLAINT_IN_FILE, raw)).toBeDefined()
      }),
      { numRuns: 600 },
    )
  })
})
