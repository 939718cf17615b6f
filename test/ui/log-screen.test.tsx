// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { needCheck } from '../../src/calc/checks/need/check.ts'
import { wordlessNeed } from '../../src/calc/checks/need/wordless.ts'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import { wordlessWindow } from '../../src/calc/checks/window/wordless.ts'
import type { CheckId } from '../../src/calc/ids.ts'
import type { WordlessCheck } from '../../src/calc/types.ts'
import {
  addLine,
  change,
  complaints,
  forgetRemoved,
  loadComplaints,
  remove,
  writeNote,
} from '../../src/state/complaints.ts'
import { loadGuide } from '../../src/state/guide-content.ts'
import { createFromCheck } from '../../src/state/new-complaint.ts'
import { triage } from '../../src/state/session.ts'
import { newLine } from '../../src/store/line.ts'
import { ComplaintScreen } from '../../src/ui/screens/complaint.tsx'
import { Log } from '../../src/ui/screens/log.tsx'
import { Notices } from '../../src/ui/shell/notices.tsx'
import { allBy, by, eventually, settle, show, tap, type, until } from './support.ts'

function made() {
  const line = { ...newLine('J3-14'), facts: { noiseHz: { text: '12M', origin: { by: 'user' } as const } } }
  return createFromCheck({ title: 'Intercom buzz', check: 'need', line })
}

describe('the log on screen', () => {
  beforeEach(async () => {
    await loadComplaints()
    await loadGuide()
    for (const complaint of complaints.value ?? []) remove(complaint.id)
    forgetRemoved()
  })

  it('offers a start and the demo while it is empty; the demo opens like any other', async () => {
    show(<Log />)
    expect(by('link', 'Start a triage').getAttribute('href')).toBe('#/ask')
    await tap(by('button', 'Load the demo'))
    const demo = await eventually('the demo', () => complaints.value?.find((complaint) => complaint.isDemo))
    await settle()
    expect(location.hash).toBe(`#/log/${demo.id}`)
    show(<ComplaintScreen id={demo.id} />)
    await settle()
    expect(document.querySelector('h1')?.textContent).toBe(demo.title)
    expect((await until('.line-window svg[role=img]')).getAttribute('aria-label')).toContain('Window')
  })

  it('takes back every deletion of the visit, the last first, and each from the Log', async () => {
    const [first, second, third] = [made(), made(), made()]
    show(
      <>
        <Log />
        <Notices />
      </>,
    )
    for (const { id } of [first, second, third]) await act(async () => remove(id))
    expect(allBy('link', /^Intercom buzz/u)).toHaveLength(0)
    for (const _again of [1, 2]) await tap(await eventually('the way back', () => allBy('button', 'Undo')[0]))
    expect(complaints.value?.map(({ id }) => id).toSorted()).toEqual([second.id, third.id].toSorted())
    await act(async () => forgetRemoved())
    expect(allBy('button', 'Undo')).toHaveLength(0)
    await tap(allBy('button', /^Bring back Intercom buzz/u)[0] as HTMLElement)
    expect(complaints.value?.some(({ id }) => id === first.id)).toBe(true)
  })

  it('keeps the way back beside a title of any length', async () => {
    const { id } = createFromCheck({ title: 'buzz '.repeat(2000), check: 'need', line: newLine() })
    show(<Notices />)
    await act(async () => remove(id))
    const undo = await eventually('the way back', () => allBy('button', 'Undo')[0])
    const said = undo.closest('.bar')?.textContent ?? ''
    expect(said.length).toBeLessThan(120)
  })

  it('lists what was kept, and takes a deletion back', async () => {
    made()
    show(
      <>
        <Log />
        <Notices />
      </>,
    )
    expect(allBy('link', /^Intercom buzz/u)).toHaveLength(1)
    await tap(by('button', 'Delete Intercom buzz'))
    expect(allBy('link', /^Intercom buzz/u)).toHaveLength(0)
    await tap(await eventually('the offer to undo', () => allBy('button', 'Undo')[0]))
    expect(allBy('link', /^Intercom buzz/u)).toHaveLength(1)
    expect(allBy('button', 'Undo')).toHaveLength(0)
  })

  it('takes the title, the aircraft and the note of a complaint as one types, and shows its facts with where they came from', async () => {
    const { id, lines } = made()
    show(<ComplaintScreen id={id} />)
    await settle()
    await type(by('textbox', 'Title'), 'Buzz on ship 3')
    await type(by('textbox', 'Aircraft'), 'Lantern Two, ship 3')
    await type(by('textbox', 'Note'), 'Only with the strobe on.')
    const [kept] = complaints.value ?? []
    expect(kept).toMatchObject({
      title: 'Buzz on ship 3',
      aircraft: 'Lantern Two, ship 3',
      note: 'Only with the strobe on.',
    })
    expect(by('region', 'Facts J3-14').textContent).toContain('12M typed')
    expect(by('region', 'Checks J3-14').querySelector('a')?.getAttribute('href')).toBe(
      `#/log/${id}/${lines[0]?.id}/need`,
    )
  })

  it('takes what is typed beside the window into the line', async () => {
    const { id } = made()
    show(<ComplaintScreen id={id} />)
    await type(await eventually('the field', () => allBy('textbox', 'Attenuation needed')[0]), '23 dB')
    expect(complaints.value?.[0]?.lines[0]?.facts.neededDb).toEqual({ text: '23 dB', origin: { by: 'user' } })
  })

  it('computes nothing while a note is typed, and of a changed line only what reads the change', async () => {
    const { id } = made()
    const [line] = complaints.value?.[0]?.lines ?? []
    const other = { ...newLine('J3-15'), facts: { noiseHz: { text: '9M', origin: { by: 'user' } as const } } }
    addLine(id, other)
    show(<ComplaintScreen id={id} />)
    // The lines come once it is known which of them a connector carries.
    await eventually('the lines', () => allBy('textbox', 'Noise load')[1])
    await settle()
    const spies = [windowCheck, wordlessWindow, needCheck, wordlessNeed].map((check: WordlessCheck) =>
      vi.spyOn(check, 'figures'),
    )
    const counts = () => spies.map((spy) => spy.mock.calls.length)
    const count = () => counts().reduce((sum, calls) => sum + calls)
    await type(by('textbox', 'Note'), 'Only with')
    await type(by('textbox', 'Note'), 'Only with the strobe on.')
    expect(count()).toBe(0)
    expect(complaints.value?.[0]?.lines).toContain(line)
    await type(allBy('textbox', 'Noise load')[0] as HTMLElement, '75')
    const [window = 0, wordless = 0, ...need] = counts()
    expect([window + wordless, ...need]).toEqual([1, 0, 0])
    expect(complaints.value?.[0]?.lines[1]).toMatchObject({ id: other.id, facts: other.facts })
    vi.restoreAllMocks()
  })

  it('takes over what another window stored while a field is not being typed in', async () => {
    const { id } = made()
    show(<ComplaintScreen id={id} />)
    await settle()
    await act(async () => writeNote(id, 'written elsewhere'))
    expect((by('textbox', 'Note') as HTMLTextAreaElement).value).toBe('written elsewhere')
  })

  it('gives a check that was kept as an address a line with its facts, and loses nothing of it', async () => {
    const { id } = made()
    const addresses = [
      '#/check/need?measuredDb=61&limitDb=50&marginDb=6&tint=red',
      '#/check/need?measuredDb=61&limitDb=50',
      '#/check/filter?frequencyHz=12M',
    ]
    change(id, {
      checks: addresses.map((address) => ({ check: address.includes('need') ? 'need' : 'filter', address })),
    })
    show(<ComplaintScreen id={id} />)
    await eventually('the lines', () => allBy('region', 'Checks line 2')[0])
    const kept = complaints.value?.[0]
    const [first, second] = kept?.lines ?? []
    expect(kept?.lines).toHaveLength(2)
    expect(first?.facts.noiseHz?.text).toBe('12M')
    expect([second?.facts.measuredDb?.text, second?.facts.limitDb?.text]).toEqual(['61', '50'])
    expect(kept?.checks.map(({ address }) => address)).toEqual(addresses)
    expect(kept?.checks.map(({ lineId }) => lineId)).toEqual([second?.id, second?.id, first?.id])
    expect(by('region', 'Checks line 2').querySelectorAll('ul')[0]?.textContent).toMatch(/^Need/)
    const said = await eventually('the sentence of the check', () =>
      /17.dB must come off: 11.dB over the limit, 6.dB margin\./u.exec(by('region', 'Checks line 2').textContent ?? ''),
    )
    expect(said).toHaveLength(1)
  })

  it('lists a check this version does not have by its address', async () => {
    const { id } = made()
    change(id, { checks: [{ check: 'later' as CheckId, address: '#/check/later?spanHz=9M' }] })
    show(<ComplaintScreen id={id} />)
    await settle()
    expect(by('link', 'later').getAttribute('href')).toBe('#/check/later?spanHz=9M')
    expect(complaints.value?.[0]?.lines).toHaveLength(1)
  })

  it('goes on with the triage of a complaint', async () => {
    const { id } = made()
    show(<ComplaintScreen id={id} />)
    await settle()
    await tap(by('button', 'Start the triage'))
    expect(triage.value.complaintId).toBe(id)
    expect(location.hash).toBe('#/ask/gate-danger')
  })

  it('says so by name when a complaint is not on this device', async () => {
    show(<ComplaintScreen id="0000" />)
    await settle()
    expect(by('heading', 'No such complaint on this device')).toBeDefined()
  })
})
