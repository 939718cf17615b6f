/**
 * Two windows type into the same complaint, its lines and its connector by chance, each onto what it shows just then,
 * while the clock is set back and forward.
 * At the end every word that was typed is there: in the text itself, or beside it as a rival.
 */
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import type { Connector } from '../../src/calc/connector/types.ts'
import { newLine } from '../../src/store/line.ts'
import { importLog } from '../state/log-modules.ts'
import { freshStore } from '../store/fresh-store.ts'
import { type Chance, chance } from './support/random.ts'
import { note, turns } from './support/table.ts'

const SEED = Number(process.env['SEED'] ?? 20_261_128)
const STEPS = turns(500, 10_000)

const LINE = { ...newLine('contact 19'), id: 'line-19' }
const CONNECTOR: Connector = {
  id: 'j1',
  name: 'J1',
  shape: 'rectangular',
  contacts: [{ id: '1', type: 'line', lineId: LINE.id, texts: {} }],
  shared: {},
  texts: {},
  suppressors: [],
  adjacent: [],
}

async function open() {
  vi.resetModules()
  const [log, queue, connectors] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/connectors.ts'),
  ])
  await log.loadComplaints()
  return { ...log, ...queue, ...connectors }
}
type Window = Awaited<ReturnType<typeof open>>

type Complaint = NonNullable<Window['complaints']['value']>[number]
type Kept = NonNullable<ReturnType<Window['connectorsOf']>['value']>[number]

/** A text both windows write: what a window shows of it, how it writes it, and every text of it that is kept. */
type Place = {
  readonly name: string
  readonly shown: (app: Window, id: string) => string | undefined
  readonly write: (app: Window, id: string, text: string, base: string) => void
  readonly kept: (complaint: Complaint, connector: Kept) => readonly (string | undefined)[]
}

const complaintOf = (app: Window, id: string) => app.complaints.value?.find((one) => one.id === id)
const connectorOf = (app: Window, id: string) => app.connectorsOf(id).value?.find((one) => one.id === CONNECTOR.id)
const lineOf = (complaint: Complaint | undefined) => complaint?.lines.find((one) => one.id === LINE.id)

const PLACES: readonly Place[] = [
  ...(['title', 'note', 'aircraft'] as const).map(
    (field): Place => ({
      name: field,
      shown: (app, id) => complaintOf(app, id)?.[field] ?? '',
      write: (app, id, text, base) => app.writeText(id, field, text, base),
      kept: (complaint) => [
        complaint[field],
        ...(complaint.rivals ?? []).filter((one) => one.field === field).map(({ text }) => text),
      ],
    }),
  ),
  ...(['noiseHz', 'neededDb'] as const).map(
    (fact): Place => ({
      name: `line ${fact}`,
      shown: (app, id) => lineOf(complaintOf(app, id))?.facts[fact]?.text ?? '',
      write: (app, id, text, base) => app.writeLineFact(id, LINE.id, fact, { text, origin: { by: 'user' } }, base),
      kept: (complaint) => [
        lineOf(complaint)?.facts[fact]?.text,
        ...(lineOf(complaint)?.rivals ?? []).filter((one) => one.fact === fact).map(({ text }) => text),
      ],
    }),
  ),
  {
    name: 'contact wire',
    shown: (app, id) => connectorOf(app, id)?.contacts[0]?.texts.wire ?? '',
    write: (app, id, text, base) => app.writeContactText(id, CONNECTOR.id, '1', 'wire', text, base),
    kept: (_complaint, connector) => [
      connector.contacts[0]?.texts.wire,
      ...(connector.rivals ?? []).filter(({ field }) => field === 'wire').map(({ text }) => text),
    ],
  },
  {
    name: 'connector equipment',
    shown: (app, id) => connectorOf(app, id)?.texts.equipment ?? '',
    write: (app, id, text, base) => app.writeConnectorText(id, CONNECTOR.id, 'equipment', text, base),
    kept: (_complaint, connector) => [
      connector.texts.equipment,
      ...(connector.rivals ?? []).filter(({ field }) => field === 'equipment').map(({ text }) => text),
    ],
  },
]

const breathe = () => new Promise((done) => setImmediate(done))

async function pauseOf(by: Chance, app: Window): Promise<void> {
  const draw = by.whole(10)
  if (draw < 4) return
  if (draw < 7) await breathe()
  else if (draw < 9) await app.settled()
  else for (let turn = 0; turn < 20; turn++) await breathe()
}

const NOON = Date.parse('2026-06-01T12:00:00.000Z')
const DAY_MS = 86_400_000

beforeAll(async () => {
  vi.useFakeTimers({ toFake: ['Date'], now: NOON })
  await freshStore()
})
afterAll(() => vi.useRealTimers())

describe(`two windows, ${STEPS} steps, seed ${SEED}`, { timeout: 3_600_000 }, () => {
  it('lose no word', async () => {
    const by = chance(SEED)
    const first = await open()
    const { id } = first.createFromCheck({ title: '', check: 'window', line: LINE })
    first.addConnector(id, CONNECTOR)
    await first.settled()
    const second = await open()
    const windows = [first, second]
    for (const app of windows) await vi.waitFor(() => expect(connectorOf(app, id)).toBeDefined())
    const typed: { readonly place: Place; readonly word: string }[] = []
    for (let step = 0; step < STEPS; step++) {
      const at = by.whole(2)
      const app = windows[at] as Window
      const place = by.pick(PLACES)
      // the clock of a device is set back and forward
      if (by.happens(0.2)) vi.setSystemTime(NOON + (by.whole(7) - 3) * DAY_MS)
      const base = place.shown(app, id)
      if (base === undefined) throw new Error(`${place.name} is gone`)
      // typing goes on for a few keys in the same field
      const word = `${at === 0 ? 'a' : 'b'}${step}`
      const whole = `${base} ${word}`
      place.write(app, id, `${base} ${word.slice(0, 1)}`, base)
      if (by.happens(0.5)) await pauseOf(by, app)
      place.write(app, id, whole, `${base} ${word.slice(0, 1)}`)
      typed.push({ place, word })
      await pauseOf(by, app)
    }
    for (const app of windows) await app.settled()
    for (const app of windows) expect(app.saveState.value).toBe('saved')
    const last = await open()
    await vi.waitFor(() => expect(connectorOf(last, id)).toBeDefined())
    const complaint = complaintOf(last, id) as Complaint
    const connector = connectorOf(last, id) as Kept
    const lost = typed.filter(({ place, word }) => {
      const texts = place.kept(complaint, connector)
      return !texts.some((text) => text?.split(' ').includes(word) === true)
    })
    note({ attack: 'two windows typing into one complaint', times: STEPS, seed: SEED, bad: lost.length })
    expect(lost.slice(0, 10).map(({ place, word }) => `${place.name}: ${word}`)).toEqual([])
  })
})
