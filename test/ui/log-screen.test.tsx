// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import { complaints, createFromCheck, forgetRemoved, loadComplaints, remove } from '../../src/state/complaints.ts'
import { loadGuide } from '../../src/state/guide-content.ts'
import { triage } from '../../src/state/session.ts'
import { newLine } from '../../src/store/complaint.ts'
import { ComplaintScreen } from '../../src/ui/screens/complaint.tsx'
import { Log } from '../../src/ui/screens/log.tsx'
import { Notices } from '../../src/ui/shell/notices.tsx'
import { allBy, by, eventually, settle, show, tap, type, until } from './support.ts'

const address = '#/check/need?measuredDb=61&limitDb=50&marginDb=6'

function made() {
  const line = { ...newLine('J3-14'), facts: { noiseHz: { text: '12M', origin: { by: 'user' } as const } } }
  return createFromCheck({ title: 'Intercom buzz', check: 'need', address, line })
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
    await tap(by('button', 'Undo'))
    expect(allBy('link', /^Intercom buzz/u)).toHaveLength(1)
    expect(allBy('button', 'Undo')).toHaveLength(0)
  })

  it('renames and notes a complaint as one types, and shows its facts with where they came from', async () => {
    const { id } = made()
    show(<ComplaintScreen id={id} />)
    await settle()
    await type(by('textbox', 'Title'), 'Buzz on ship 3')
    await type(by('textbox', 'Note'), 'Only with the strobe on.')
    const [kept] = complaints.value ?? []
    expect(kept).toMatchObject({ title: 'Buzz on ship 3', note: 'Only with the strobe on.' })
    expect(by('region', 'Facts J3-14').textContent).toContain('12M typed')
    expect(by('region', 'Checks').querySelector('a')?.getAttribute('href')).toBe(address)
  })

  it('takes what is typed beside the window into the line', async () => {
    const { id } = made()
    show(<ComplaintScreen id={id} />)
    await settle()
    await type(by('textbox', 'Attenuation needed'), '23 dB')
    expect(complaints.value?.[0]?.lines[0]?.facts.neededDb).toEqual({ text: '23 dB', origin: { by: 'user' } })
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
