// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { beforeEach, expect, it } from 'vitest'
import { addLine, complaints, loadComplaints } from '../../src/state/complaints.ts'
import { connectorsOf } from '../../src/state/connectors.ts'
import { newLine } from '../../src/store/line.ts'
import { ComplaintScreen } from '../../src/ui/screens/complaint.tsx'
import { ConnectorScreen } from '../../src/ui/screens/connector/connector.tsx'
import { Log } from '../../src/ui/screens/log.tsx'
import { Notices } from '../../src/ui/shell/notices.tsx'
import { connectorIn, made, withConnector } from './connector-support.tsx'
import { allBy, by, eventually, settle, show, tap, type } from './support.ts'

beforeEach(() => loadComplaints())

it('says of a connector that is not there what became of it, with the way back', async () => {
  const { id } = made()
  show(<ConnectorScreen complaintId={id} steps={['gone']} />)
  await eventually('what became of it', () => allBy('heading', 'No such connector')[0])
  expect(document.body.textContent).toContain('“Intercom buzz” holds no connector at this address. It was deleted, or')
  expect(by('link', 'Intercom buzz').getAttribute('href')).toBe(`#/log/${id}`)
})

it('names the address of a view or a complaint there is not', async () => {
  const { id } = made()
  show(<ConnectorScreen complaintId={id} steps={['k', 'elsewhere']} />)
  const address = await eventually('the address', () => document.querySelector('code') ?? undefined)
  expect(address.textContent).toBe(`#/log/${id}/connector/k/elsewhere`)
  show(<ConnectorScreen complaintId="nobody" steps={['k']} />)
  await eventually('the other', () => allBy('heading', 'No such complaint on this device')[0])
})

it('is begun from its complaint with a label of its own, and is taken back', async () => {
  const { id } = made()
  show(<ComplaintScreen id={id} />)
  await tap(await eventually('the button', () => allBy('button', 'Add a connector')[0]))
  const [added] = (await eventually('a connector', () => connectorsOf(id).value)) ?? []
  expect(added).toMatchObject({ name: 'J1', contacts: [] })
  expect(location.hash).toBe(`#/log/${id}/connector/${added?.id}`)
  show(
    <>
      <ConnectorScreen complaintId={id} steps={[added?.id ?? '']} />
      <Notices />
    </>,
  )
  await tap(await eventually('the way out', () => allBy('button', 'Delete the connector')[0]))
  expect(connectorsOf(id).value).toEqual([])
  await tap(await eventually('the offer to undo', () => allBy('button', 'Undo')[0]))
  expect(connectorsOf(id).value).toHaveLength(1)
})

it('makes contacts by scheme and count, refuses what cannot be by a sentence, and adds to those that are there', async () => {
  const { open, now } = await withConnector()
  await open()
  await type(await eventually('the field', () => allBy('textbox', 'How many')[0] as HTMLElement), '300')
  await tap(by('button', 'Make the contacts'))
  expect(document.querySelector('form [role=alert]')?.textContent).toContain('1 to 256 contacts')
  expect((by('textbox', 'How many') as HTMLInputElement).value).toBe('300')
  await tap(by('radio', 'letters'))
  expect(document.body.textContent).toContain('A to Z without I, O, Q')
  await type(by('textbox', 'How many'), '10')
  await tap(by('button', 'Make 10 contacts'))
  expect(
    now()
      ?.contacts.map(({ id }) => id)
      .join(''),
  ).toBe('ABCDEFGHJK')
  expect(now()?.shape).toBe('ring')
  await tap(by('radio', 'own list'))
  await type(by('textbox', 'Names of the contacts'), 'H-L GND')
  await tap(by('button', 'Make 2 contacts'))
  expect(
    now()
      ?.contacts.map(({ id }) => id)
      .slice(-3),
  ).toEqual(['K', 'L', 'GND'])
})

it('speaks of a description only where it contradicts itself', async () => {
  const { open, now } = await withConnector({ contacts: [{ id: '1', type: 'line', texts: {} }] })
  await open()
  await eventually('the fields', () => allBy('textbox', 'Insert arrangement')[0])
  expect(document.querySelector('.against')).toBeNull()
  await type(by('textbox', 'Insert arrangement'), '37-way')
  expect(document.querySelector('.against')?.textContent).toBe(
    'The text says 37 contacts, the connector has 1 of them listed.',
  )
  await tap(by('radio', 'plug'))
  await type(by('textbox', 'Shell'), 'flange receptacle')
  expect(now()?.texts).toMatchObject({ arrangement: '37-way', half: 'plug', shell: 'flange receptacle' })
  expect(document.body.textContent).toContain('The shell is written as a receptacle')
})

it('keeps the lines a contact carries off the page of the complaint, and shows the others', async () => {
  const { complaint } = await withConnector()
  const loose = newLine('loose')
  addLine(complaint.id, loose)
  connectorIn(complaint.id, {
    contacts: [{ id: '1', type: 'line', lineId: complaint.lines[0]?.id ?? '', texts: {} }],
  })
  show(<ComplaintScreen id={complaint.id} />)
  await eventually('the loose line', () => allBy('region', 'Facts loose')[0])
  expect(allBy('region', 'Facts mic')).toHaveLength(0)
})

it('starts a design without a complaint from the log', async () => {
  show(<Log />)
  await tap(by('button', 'New design, without a complaint'))
  const design = await eventually('the design', () => complaints.value?.find(({ purpose }) => purpose === 'design'))
  expect(location.hash).toBe(`#/log/${design.id}`)
  show(<ComplaintScreen id={design.id} />)
  await settle()
  expect(allBy('region', 'Triage')).toHaveLength(0)
  expect(allBy('region', 'Connectors')).toHaveLength(1)
})
