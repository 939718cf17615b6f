// @vitest-environment happy-dom
/** Files in and out on screen: what would change stands there first; nothing is changed before a tap. */
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { backupDue, lookAtBackup } from '../../src/state/backup.ts'
import { complaints, loadComplaints, remove, rename } from '../../src/state/complaints.ts'
import { addConnector, connectorsOf } from '../../src/state/connectors.ts'
import { exportComplaint } from '../../src/state/export-file.ts'
import { createFromTriage } from '../../src/state/new-complaint.ts'
import { settled } from '../../src/state/save-queue.ts'
import { newConnector } from '../../src/store/connector.ts'
import { newLine } from '../../src/store/line.ts'
import { FileOut } from '../../src/ui/parts/file-out.tsx'
import { differenceWords } from '../../src/ui/screens/bring-in.tsx'
import { Log } from '../../src/ui/screens/log.tsx'
import { watchFiles } from '../../src/ui/shell/files.ts'
import { allBy, by, eventually, show, tap, until } from './support.ts'

async function made(): Promise<string> {
  const { id } = createFromTriage({ title: 'Buzz', answers: {}, guideVersion: 1, line: newLine('bus') })
  await eventually('the connectors', () => connectorsOf(id).value)
  addConnector(id, newConnector('J1'))
  await settled()
  return id
}

/** The Log with its files opened. */
async function open(): Promise<void> {
  show(<Log />)
  const fold = await eventually('the fold of files', () =>
    [...document.querySelectorAll('details')].find((one) => one.textContent?.startsWith('Bring in a file')),
  )
  await act(async () => {
    fold.toggleAttribute('open', true)
    fold.dispatchEvent(new Event('toggle'))
  })
  await until('input[type=file]')
}

async function choose(text: string): Promise<void> {
  const input = (await until('input[type=file]')) as HTMLInputElement
  Object.defineProperty(input, 'files', { configurable: true, value: [new File([text], 'x.json')] })
  await act(async () => {
    input.dispatchEvent(new Event('change', { bubbles: true }))
  })
  await eventually('what the file holds', () =>
    document.querySelector('[role=alert], section[aria-label="What would change"]'),
  )
}

const words = (): string => document.body.textContent?.replace(/\s+/gu, ' ') ?? ''

beforeEach(async () => {
  await loadComplaints()
  for (const complaint of complaints.value ?? []) remove(complaint.id)
  await settled()
})

describe('bringing in a file', () => {
  it('shows a new complaint, brings it in at a tap, and takes it back', async () => {
    const id = await made()
    const text = (await exportComplaint(id))?.parts.join('').replaceAll(id, 'c'.repeat(32)) ?? ''
    remove(id)
    await settled()
    await open()
    await choose(text)
    expect(words()).toContain('Buzznew: one line, one connector')
    expect(complaints.value).toEqual([])
    await tap(by('button', 'Bring it in'))
    await eventually('the complaint', () => complaints.value?.find(({ title }) => title === 'Buzz'))
    await eventually('the way back', () => allBy('button', 'Take it back')[0])
    expect(words()).toContain('One complaint brought in.')
    await tap(by('button', 'Take it back'))
    await eventually('an empty log', () => (complaints.value?.length === 0 ? true : undefined))
    expect(words()).toContain('One complaint taken back.')
  })

  it('shows place by place what is other, and both ways to take it', async () => {
    const id = await made()
    const text = (await exportComplaint(id))?.parts.join('') ?? ''
    rename(id, 'Hum')
    await settled()
    await open()
    await choose(text)
    expect(words()).toContain('here already, other in one place')
    expect(words()).toContain('title: here “Hum”, in the file “Buzz”')
    await tap(by('button', 'Put it in place of what is here'))
    await eventually('the title of the file', () => complaints.value?.find(({ title }) => title === 'Buzz'))
    await choose(text)
    expect(words()).toContain('All of it is here already: there is nothing to bring in.')
    expect(allBy('button', /Bring it in|Lay it over/)).toEqual([])
  })

  it('says of a bad file what is wrong with it, and changes nothing', async () => {
    await made()
    const before = complaints.value
    await open()
    await choose('{"format": "stillpin-complaints",\n "version": 1, "complaints": [{"id": 7}]}')
    expect(words()).toContain(
      'nothing was changed. Line 2, column 38, complaints[0].id: letters, digits, _ and -, 64 at most is expected here, and 7 stands there.',
    )
    expect(complaints.value).toEqual(before)
  })

  it('saves one complaint, and the whole Log, and says what is not in the file', async () => {
    const saved = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(() => undefined)
    const id = await made()
    show(<FileOut id={id} what="as a file" title="Buzz" />)
    await tap(by('button', 'Save as a file'))
    await eventually('what was saved', () => (words().includes('Saved as buzz.stillpin.json') ? true : undefined))
    expect(words()).toContain('The answers to the safety questions are not in the file')
    await open()
    await tap(by('button', 'Save the whole Log as a file'))
    await eventually('what was saved', () => (words().includes('Saved as log-') ? true : undefined))
    expect(saved).toHaveBeenCalledTimes(2)
    saved.mockRestore()
  })

  it('counts what was changed while the Log was handed on as not in the file', async () => {
    const id = await made()
    const share = async () => {
      rename(id, 'Buzz, louder')
      await settled()
    }
    const ways = { canShare: { value: () => true }, share: { value: share } }
    vi.stubGlobal('navigator', Object.create(navigator, ways))
    show(<FileOut what="the whole Log as a file" title="Stillpin log" />)
    await tap(by('button', 'Share the whole Log as a file'))
    await eventually('that it was shared', () => (words().includes('Shared.') ? true : undefined))
    vi.unstubAllGlobals()
    lookAtBackup(Date.now() + 15 * 86_400_000)
    expect(backupDue.value).toBe('One change since the Log was last saved as a file, 15 days ago.')
  })

  it('keeps every file of several that came at once until it was brought in or put away', async () => {
    watchFiles()
    const id = await made()
    const { parts = [] } = (await exportComplaint(id)) ?? {}
    const files = [
      new File([...parts], 'one.json'),
      new File(['no log'], 'two.txt'),
      new File([...parts], 'three.json'),
    ]
    await open()
    await act(async () => {
      const dropped = Object.assign(new Event('drop'), { dataTransfer: { types: ['Files'], files } })
      window.dispatchEvent(dropped)
    })
    await eventually('what the first holds', () => document.querySelector('section[aria-label="What would change"]'))
    expect(words()).toContain('Several files came at once. One is looked at; each stays here until it was')
    expect(words()).toContain('two.txt, came at once')
    const waiting = () => allBy('button', /^Look at it/).map((one) => one.textContent)
    expect(waiting()).toEqual(['Look at it one.json', 'Look at it two.txt', 'Look at it three.json'])
    await tap(by('button', 'Look at it two.txt'))
    await eventually('what the second holds', () => document.querySelector('[role=alert]'))
    await tap(by('button', 'Put it away two.txt'))
    remove(id)
    await settled()
    await tap(by('button', 'Look at it three.json'))
    await tap(await eventually('the way in', () => allBy('button', 'Bring it in')[0]))
    await eventually('one that is left', () => (waiting().length === 1 ? true : undefined))
    expect(waiting()).toEqual(['Look at it one.json'])
    await tap(by('button', 'Put it away one.json'))
    expect(words()).not.toContain('Several files came at once.')
  })

  it('says that files it was opened with did not all come, until others do', async () => {
    type Launched = { readonly files: readonly { readonly getFile: () => Promise<File> }[] }
    let launch: (launched: Launched) => Promise<void> = () => Promise.reject(new Error('nobody takes a launch'))
    vi.stubGlobal('launchQueue', {
      setConsumer: (take: typeof launch) => {
        launch = take
      },
    })
    watchFiles()
    vi.unstubAllGlobals()
    await open()
    const lost = () => words().includes('What came to the app could not be kept here, or not all of it.')
    const here = { getFile: () => Promise.resolve(new File(['no log'], 'here.json')) }
    const gone = { getFile: () => Promise.reject(new DOMException('moved away', 'NotFoundError')) }
    const after: boolean[] = []
    for (const files of [[gone], [here], [here, gone], [here]]) {
      await act(() => launch({ files }))
      after.push(lost())
    }
    expect(after).toEqual([true, false, true, false])
  })

  it('tells a difference in one line', () => {
    expect(differenceWords({ place: 'line bus', here: '' })).toBe('line bus: is not in the file')
    expect(differenceWords({ place: 'line bus', there: '' })).toBe('line bus: comes in')
    expect(differenceWords({ place: 'note', there: 'x'.repeat(100) })).toBe(`note: “${'x'.repeat(79)}…” comes in`)
  })
})
