// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { beforeEach, expect, it } from 'vitest'
import { createFromCheck, loadComplaints } from '../../src/state/complaints.ts'
import { newLine } from '../../src/store/line.ts'
import { ConnectorScreen } from '../../src/ui/screens/connector/connector.tsx'
import { by, settle, show } from './support.ts'

beforeEach(() => loadComplaints())

const made = () => createFromCheck({ title: 'Intercom buzz', check: 'need', line: newLine('mic') })

it('says of a connector that is not there what became of it, with the way back', async () => {
  const { id } = made()
  show(<ConnectorScreen complaintId={id} steps={['gone']} />)
  await settle()
  expect(by('heading', 'No such connector')).toBeDefined()
  expect(document.body.textContent).toContain('“Intercom buzz” holds no connector at this address. It was deleted, or')
  expect(by('link', 'Intercom buzz').getAttribute('href')).toBe(`#/log/${id}`)
})

it('names the address of a view or a complaint there is not', async () => {
  const { id } = made()
  show(<ConnectorScreen complaintId={id} steps={['k', 'elsewhere']} />)
  await settle()
  expect(document.querySelector('code')?.textContent).toBe(`#/log/${id}/connector/k/elsewhere`)
  show(<ConnectorScreen complaintId="nobody" steps={['k']} />)
  await settle()
  expect(by('heading', 'No such complaint on this device')).toBeDefined()
})
