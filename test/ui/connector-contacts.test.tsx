// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Contact } from '../../src/calc/connector/types.ts'
import { complaints, loadComplaints, writeLineFact } from '../../src/state/complaints.ts'
import { readCode } from '../support/read-code.ts'
import { withConnector } from './connector-support.tsx'
import { allBy, by, eventually, settle, tap, type } from './support.ts'

beforeEach(() => loadComplaints())

const plain = (id: string, more: Partial<Contact> = {}): Contact => ({ id, type: 'line', texts: {}, ...more })
const many = (count: number) => Array.from({ length: count }, (_, i) => plain(String(i + 1)))
const listOf = (name: string) => document.querySelector<HTMLElement>(`ul[aria-label="${name}"]`) ?? undefined
const linesOf = (id: string) => complaints.value?.find((one) => one.id === id)?.lines ?? []

describe('the contacts of a connector', () => {
  it('stand in a list of which only those near the screen are in the page, counted as they all are', async () => {
    const { open } = await withConnector({ contacts: many(128) })
    await open()
    const list = await eventually('the list', () => listOf('Contacts'))
    const rows = list.querySelectorAll('li')
    expect(rows.length).toBeLessThan(80)
    expect(rows[0]?.getAttribute('aria-setsize')).toBe('128')
    expect(rows[4]?.getAttribute('aria-posinset')).toBe('5')
  })

  it('stand on a face that says each in words and opens it', async () => {
    const { open, connector, complaint } = await withConnector({
      shape: 'rectangular',
      contacts: [plain('1', { texts: { function: 'Mic' } }), ...many(9).slice(1, 8), plain('9', { type: 'ground' })],
    })
    await open()
    const face = await eventually('the face with its schedule', () => {
      const found = document.querySelector<HTMLElement>('[role=listbox]')
      return found?.getAttribute('aria-label')?.includes('not known') ? found : undefined
    })
    expect(face.getAttribute('aria-label')).toContain('seen at the pins, 9 contacts: 8 not known, 1 ground.')
    const options = [...face.querySelectorAll('[role=option]')].map((one) => one.getAttribute('aria-label'))
    expect(options).toHaveLength(9)
    expect(options[0]).toBe('1, Mic, not known')
    const press = async (key: string) => {
      face.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true }))
      await settle()
    }
    await press('ArrowRight')
    await press('ArrowRight')
    expect(document.getElementById(face.getAttribute('aria-activedescendant') ?? '')?.getAttribute('aria-label')).toBe(
      '2, not known',
    )
    await press('Enter')
    expect(location.hash).toBe(`#/log/${complaint.id}/connector/${connector.id}/contact/2`)
  })

  it('are changed together: named by a span, one kind and one fact for all of them, taken back step by step', async () => {
    const { open, now, complaint } = await withConnector({ contacts: [...many(4), plain('G', { type: 'ground' })] })
    await open()
    await tap(await eventually('the button', () => allBy('button', 'Edit several')[0]))
    await type(by('textbox', 'Choose by name'), '2-9')
    await tap(by('button', 'Choose these'))
    expect(document.body.textContent).toContain('“2-9” is no contact of this connector')
    await type(by('textbox', 'Choose by name'), '2-3 G')
    await tap(by('button', 'Choose these'))
    expect(by('region', 'Edit several').textContent).toContain('3 chosen.')
    await type(by('textbox', 'Noise frequency'), 'many')
    await tap(by('button', 'Say it of all chosen'))
    expect(document.querySelector('#many-fact-refused')).not.toBeNull()
    expect(linesOf(complaint.id)).toHaveLength(1)
    await type(by('textbox', 'Noise frequency'), '12M')
    await tap(by('button', 'Say it of all chosen'))
    expect(document.body.textContent).toContain('2 contacts changed. G carry no line')
    expect(linesOf(complaint.id).map(({ facts }) => facts.noiseHz?.text)).toEqual([undefined, '12M', '12M'])
    expect(now()?.contacts.map(({ lineId }) => lineId !== undefined)).toEqual([false, true, true, false, false])
    await tap(by('radio', 'spare'))
    expect(now()?.contacts.map(({ type: of }) => of)).toEqual(['line', 'spare', 'spare', 'line', 'spare'])
    await tap(by('button', 'Undo the last change'))
    expect(now()?.contacts.map(({ type: of }) => of)).toEqual(['line', 'line', 'line', 'line', 'ground'])
    await tap(by('button', 'Undo the last change'))
    expect(linesOf(complaint.id)).toHaveLength(1)
  })
})

it('asks the safety question of its lines once, and is heard', async () => {
  const { open, now, complaint } = await withConnector({ contacts: many(2) })
  await open('contact', '1')
  await tap(await eventually('the button', () => allBy('button', 'New line')[0]))
  await open()
  const asked = await eventually('the question', () => allBy('region', 'Safety question')[0])
  expect(asked.textContent).toContain('is contact 1,')
  await tap(by('button', 'None of that, checked on the diagram'))
  expect(linesOf(complaint.id).find(({ id }) => id === now()?.contacts[0]?.lineId)?.gate).toBe('clear')
  expect(allBy('region', 'Safety question')).toHaveLength(0)
})

describe('one contact', () => {
  it('takes its texts, its type and a line of its own, renamed and deleted from here', async () => {
    const { open, now, complaint } = await withConnector({ contacts: [plain('1'), plain('2')] })
    await open('contact', '2')
    await type(await eventually('the field', () => allBy('textbox', 'Function')[0] as HTMLElement), 'Mic low')
    await type(by('textbox', 'Wire'), 'W17')
    await tap(by('radio', 'unpressurised'))
    await tap(by('button', 'New line'))
    const line = linesOf(complaint.id)[1]
    expect(line?.name).toBe('J1-2 Mic low')
    expect(now()?.contacts[1]).toMatchObject({
      lineId: line?.id,
      texts: { function: 'Mic low', wire: 'W17', zone: 'unpressurised' },
    })
    await type(by('textbox', 'Name of the line'), 'microphone, low')
    expect(linesOf(complaint.id)[1]?.name).toBe('microphone, low')
    expect(allBy('link', /^Need/u)[0]?.getAttribute('href')).toBe(`#/log/${complaint.id}/${line?.id}/need`)
    await tap(by('button', 'Delete the line'))
    expect(linesOf(complaint.id)).toHaveLength(1)
    expect(by('region', 'Its line').textContent).toContain('No line yet')
    await tap(by('radio', 'spare'))
    expect(now()?.contacts[1]).toMatchObject({ type: 'spare', texts: { function: 'Mic low' } })
    expect(allBy('region', 'Its line')).toHaveLength(0)
  })

  it('is the other leg of a pair, and says so', async () => {
    const { open, now, complaint } = await withConnector({ contacts: [plain('1'), plain('2')] })
    await open('contact', '1')
    await tap(await eventually('the button', () => allBy('button', 'New line')[0]))
    await open('contact', '2')
    await tap(await eventually('the button', () => allBy('button', 'The other leg of a pair')[0]))
    await tap(by('button', '1'))
    expect(now()?.contacts.map(({ leg, lineId }) => [leg, lineId === now()?.contacts[0]?.lineId])).toEqual([
      ['a', true],
      ['b', true],
    ])
    expect(by('region', 'Its line').textContent).toContain('Leg b of a pair, with contact 1')
    await tap(by('button', 'Change the legs over'))
    expect(now()?.contacts.map(({ leg }) => leg)).toEqual(['b', 'a'])
    await tap(by('button', 'Take it off this contact'))
    expect(now()?.contacts).toEqual([plain('1', { lineId: now()?.contacts[0]?.lineId ?? '' }), plain('2')])
    expect(linesOf(complaint.id)).toHaveLength(2)
  })

  it('has a code that brings another device to its window, drawn where it is opened', async () => {
    const { open, complaint } = await withConnector({ contacts: [plain('1'), plain('2', { type: 'ground' })] })
    await open('contact', '1')
    await tap(await eventually('the button', () => allBy('button', 'New line')[0]))
    const line = linesOf(complaint.id)[1]
    writeLineFact(complaint.id, line?.id ?? '', 'lineKind', { text: 'rs-422', origin: { by: 'user' } })
    await settle()
    const codes = () => [...document.querySelectorAll('.code svg')]
    const fold = await eventually('the fold', () =>
      [...document.querySelectorAll('details')].find((one) => one.textContent?.includes('Code of this window')),
    )
    expect(codes()).toEqual([])
    fold.open = true
    fold.dispatchEvent(new Event('toggle'))
    const [svg] = await eventually('the code', () => (codes().length > 0 ? codes() : undefined))
    const modules = Number(svg?.getAttribute('viewBox')?.split(' ')[2])
    const address = readCode(svg?.querySelector('path')?.getAttribute('d') ?? '', modules)
    expect(address).toContain('#/check/window?')
    expect(address).toContain('lineKind=rs-422')
    await open('contact', '2')
    expect(document.body.textContent).not.toContain('Code of this window')
  })

  it('has its neighbours one tap away, and says of one that is not there where the others are', async () => {
    const { open, connector, complaint } = await withConnector({ contacts: many(3) })
    await open('contact', '2')
    const own = `#/log/${complaint.id}/connector/${connector.id}`
    expect((await eventually('a link', () => allBy('link', 'Next contact, 3')[0])).getAttribute('href')).toBe(
      `${own}/contact/3`,
    )
    expect(by('link', 'Previous contact, 1').getAttribute('href')).toBe(`${own}/contact/1`)
    await open('contact', '7')
    await eventually('the sentence', () => /“J1” has no contact “7”/u.exec(document.body.textContent ?? ''))
    expect(by('link', 'Its contacts').getAttribute('href')).toBe(own)
  })
})

describe('a pasted table', () => {
  const paste = async (text: string) => {
    await type(
      await eventually('the field', () => allBy('textbox', 'Table, pasted from a spreadsheet')[0] as HTMLElement),
      text,
    )
  }

  it('asks for a word once, shows what changes and takes all of it over in one step that is taken back in one', async () => {
    const { open, now, complaint, connector } = await withConnector()
    await open('paste')
    await paste('pin;function;kind\n1;Bus 1 A;429\n2;Bus 1 B;429\n3;spare;\n4;Mic;mic')
    expect(document.body.textContent).toContain('One word for the kind of line to be told first')
    expect(allBy('button', 'Take over')).toHaveLength(0)
    await tap(by('button', 'ARINC 429, high speed (100 kb/s)'))
    expect(by('region', 'What changes').textContent).toContain('4 new.')
    expect((listOf('Rows of the table') as HTMLElement).querySelectorAll('[data-state=new]')).toHaveLength(4)
    expect((listOf('Rows of the table') as HTMLElement).textContent).toContain('leg b of a pair with 1')
    expect(now()?.contacts).toEqual([])
    await tap(by('button', 'Take over'))
    expect(location.hash).toBe(`#/log/${complaint.id}/connector/${connector.id}`)
    expect(now()?.contacts.map(({ type: of, leg }) => [of, leg])).toEqual([
      ['line', 'a'],
      ['line', 'b'],
      ['spare', undefined],
      ['line', undefined],
    ])
    expect(linesOf(complaint.id).map(({ name }) => name)).toEqual(['mic', 'J1-1/2 Bus 1', 'J1-4 Mic'])
    await open()
    await tap(await eventually('the way back', () => allBy('button', 'Undo the last change')[0]))
    expect(now()?.contacts).toEqual([])
    expect(linesOf(complaint.id)).toHaveLength(1)
  })

  it('takes nothing over while a cell is refused, and says where', async () => {
    const { open, now } = await withConnector({ contacts: many(2) })
    await open('paste')
    await paste('pin;function;load\n1;ok;50\n2;bad;lots')
    const said = await eventually('the refusal', () => allBy('region', 'Not taken over')[0])
    expect(said.textContent).toMatch(/Line 3, column “Noise load impedance”: /u)
    expect(allBy('button', 'Take over')).toHaveLength(0)
    expect(now()?.contacts).toEqual(many(2))
    await paste('pin;function;load\n1;ok;50\n2;bad;75')
    expect(by('region', 'What changes').textContent).toContain('2 changed.')
    await paste('"never closed')
    expect(document.querySelector('[role=alert]')?.textContent).toContain('never closed')
  })

  it('lets columns be said where no heading names the contacts', async () => {
    const { open, now } = await withConnector()
    await open('paste')
    await paste('Function;Line kind;Nummer\nfirst;CAN;7\nsecond;CAN;8')
    expect(document.querySelector('[role=alert]')?.textContent).toContain('No column names the contacts')
    const pick = async (at: number, value: string) => {
      const select = document.querySelector<HTMLSelectElement>(`#column-${at}`)
      if (!select) throw new Error('no such column')
      select.value = value
      select.dispatchEvent(new Event('change', { bubbles: true }))
      await settle()
    }
    await pick(2, 'contact')
    await pick(0, 'name')
    await tap(by('button', 'Take over'))
    expect(now()?.contacts.map(({ id, texts }) => [id, texts.function])).toEqual([
      ['7', 'first'],
      ['8', 'second'],
    ])
  })
})
