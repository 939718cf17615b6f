/**
 * Every call to a storage fails in turn, once or from then on: what was typed stays on the screen, nothing is shown as
 * saved that is not, and the next start finds it wherever one storage still took it.
 */
import { afterEach, describe, expect, it, vi } from 'vitest'
import { newLine } from '../../src/store/line.ts'
import { importLog } from '../state/log-modules.ts'
import { callsSoFar, emptyBrowser, expectFailure, type Failure } from './support/faulty.ts'
import { IS_LONG, note } from './support/table.ts'

const LINE = { ...newLine('contact 19'), id: 'line-19' }

async function start() {
  vi.resetModules()
  const [log, queue, session, disk] = await Promise.all([
    importLog(),
    import('../../src/state/save-queue.ts'),
    import('../../src/state/session.ts'),
    import('../../src/store/complaints.ts'),
  ])
  await Promise.all([log.loadComplaints(), session.resumeSession()])
  return { ...log, ...queue, ...session, getComplaint: disk.getComplaint }
}

type App = Awaited<ReturnType<typeof start>>

const TYPED = { title: 'Squeal on ICS 2 at the hold', note: 'asked in the meeting, twice' } as const

/** A visit: a complaint from a triage, a title and a note typed key by key, a fact, a check, a scratch fact. */
async function visit(app: App): Promise<string> {
  const { id } = app.createFromTriage({
    title: 'Squeal',
    answers: { rhythm: 'with-engine' },
    guideVersion: 2,
    line: LINE,
  })
  for (const end of [12, 20, TYPED.title.length]) app.rename(id, TYPED.title.slice(0, end))
  await app.settled()
  for (const end of [5, 14, TYPED.note.length]) app.writeNote(id, TYPED.note.slice(0, end))
  app.writeLineFact(id, LINE.id, 'noiseHz', { text: '121.5M', origin: { by: 'user' } })
  app.addCheck(id, { check: 'window', lineId: LINE.id })
  await app.settled()
  app.writeScratchFact('noiseSourceOhm', { text: '50', origin: { by: 'user' } })
  await app.settled()
  return id
}

type Shown = {
  readonly title: string
  readonly note: string
  readonly fact: string | undefined
  readonly checks: number
}

const shownOf = (complaint: Awaited<ReturnType<App['getComplaint']>>): Shown | undefined =>
  complaint && {
    title: complaint.title,
    note: complaint.note,
    fact: complaint.lines.find(({ id }) => id === LINE.id)?.facts.noiseHz?.text,
    checks: complaint.checks.length,
  }

const WHOLE: Shown = { ...TYPED, fact: '121.5M', checks: 1 }

/** What a failure did that it must not do. */
async function faultsOf(failure: Failure): Promise<readonly string[]> {
  emptyBrowser()
  expectFailure(failure)
  const app = await start()
  const id = await visit(app)
  const faults: string[] = []
  const inMemory = shownOf(app.complaints.value?.find((one) => one.id === id))
  if (JSON.stringify(inMemory) !== JSON.stringify(WHOLE)) faults.push(`on the screen: ${JSON.stringify(inMemory)}`)
  const claimsSaved = app.saveState.value === 'saved' && app.storeNotice.value === undefined
  const isToldOff = app.saveState.value === 'failed' || app.storeNotice.value !== undefined
  expectFailure(undefined)
  const onDisk = shownOf(await app.getComplaint(id).catch(() => undefined))
  const isOnDisk = JSON.stringify(onDisk) === JSON.stringify(WHOLE)
  if (claimsSaved && !isOnDisk) faults.push(`says saved, but the disk has ${JSON.stringify(onDisk)}`)
  if (!isOnDisk && !isToldOff) faults.push(`says ${app.saveState.value}, and the disk has ${JSON.stringify(onDisk)}`)
  const next = await start()
  await next.settled()
  const after = shownOf(next.complaints.value?.find((one) => one.id === id))
  const isLost = JSON.stringify(after) !== JSON.stringify(WHOLE)
  // where the database and the small storage both refuse for good, nothing can be kept, and that was said
  if (isLost && !(failure.forGood && isToldOff)) faults.push(`the next start finds ${JSON.stringify(after)}`)
  return faults
}

afterEach(() => expectFailure(undefined))

describe('every call to a storage failing in turn', { timeout: 3_600_000 }, () => {
  it('loses no text and never says saved of what is not', async () => {
    emptyBrowser()
    expectFailure(undefined)
    const app = await start()
    await visit(app)
    const total = callsSoFar()
    expect(await faultsOf({ at: Number.POSITIVE_INFINITY, how: 'throws', forGood: false })).toEqual([])
    expect(total).toBeGreaterThan(20)
    const ways: readonly Omit<Failure, 'at'>[] = [
      { how: 'throws', forGood: false },
      { how: 'full', forGood: true },
      { how: 'aborts', forGood: false },
      { how: 'throws', forGood: true },
      { how: 'full', forGood: false },
    ]
    const bad: string[] = []
    let times = 0
    for (let at = 1; at <= total; at++) {
      for (const way of IS_LONG ? ways : [ways[at % ways.length] ?? { how: 'throws', forGood: false }]) {
        const failure = { at, ...way }
        bad.push(...(await faultsOf(failure)).map((fault) => `${JSON.stringify(failure)}: ${fault}`))
        times++
      }
    }
    note({ attack: 'storage calls failing in turn', times, seed: 0, bad: bad.length })
    expect(bad.slice(0, 12)).toEqual([])
  })
})
