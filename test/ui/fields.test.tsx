// @vitest-environment happy-dom
import { describe, expect, it, vi } from 'vitest'
import { windowCheck } from '../../src/calc/checks/window/check.ts'
import { type Field, readFields } from '../../src/calc/line/fields.ts'
import type { Fact } from '../../src/calc/types.ts'
import { FieldView } from '../../src/ui/parts/field.tsx'
import { matching } from '../../src/ui/parts/option-match.ts'
import { fakeCheck } from './fake-check.ts'
import { allBy, by, show, tap, type } from './support.ts'

function fieldOf(key: string, text?: string): Field {
  const field = readFields(fakeCheck, text === undefined ? {} : { [key]: text }).find((each) => each.key === key)
  if (!field) throw new Error(`no field ${key}`)
  return field
}

describe('a field', () => {
  it('carries its key as name and in its id, and asks the phone to leave the text alone', () => {
    show(<FieldView field={fieldOf('capacitanceF', '4n7')} onType={() => undefined} />)
    const input = by('textbox', 'Capacitance') as HTMLInputElement
    expect(input.value).toBe('4n7')
    expect({ id: input.id, name: input.name, type: input.type }).toEqual({
      id: 'in-capacitanceF',
      name: 'capacitanceF',
      type: 'text',
    })
    expect(input.getAttribute('autocapitalize')).toBe('none')
    expect(input.getAttribute('autocorrect')).toBe('off')
    expect(input.getAttribute('aria-invalid')).toBe('false')
  })

  it('hands on what is typed, letter for letter', async () => {
    const onType = vi.fn()
    show(<FieldView field={fieldOf('capacitanceF')} onType={onType} />)
    await type(by('textbox', 'Capacitance'), ' 0,0047uF')
    expect(onType).toHaveBeenCalledWith(' 0,0047uF', '')
  })

  it('names the receivers that listen at each typed noise frequency', () => {
    const field = (text: string) => {
      const found = readFields(windowCheck, { frequencyHz: text }).find(({ key }) => key === 'frequencyHz')
      if (!found) throw new Error('no noise frequency')
      return found
    }
    const said = (text: string) =>
      show(<FieldView field={field(text)} onType={() => undefined} />).textContent?.replaceAll('\u00a0', ' ')
    expect(said('121.5M; 55M')).toMatch(/121\.5 MHz is heard by VHF communication, ELT 121\.5 MHz\./)
    expect(said('121.5M; 55M')).not.toContain('55 MHz is')
    for (const text of ['55M', '', 'loud']) expect(said(text)).not.toContain('heard by')
  })

  it('keeps refused text, marks itself and says why where a screen reader looks', () => {
    show(<FieldView field={fieldOf('capacitanceF', '33 kg')} onType={() => undefined} />)
    const input = by('textbox', 'Capacitance') as HTMLInputElement
    expect(input.value).toBe('33 kg')
    expect(input.getAttribute('aria-invalid')).toBe('true')
    const note = document.getElementById(input.getAttribute('aria-describedby') ?? '')
    expect(note?.textContent).toContain('capacitance')
  })

  it('shows what is assumed, why, and that it is favourable, beside the empty field', () => {
    show(<FieldView field={fieldOf('toleranceFrac')} onType={() => undefined} />)
    expect(document.getElementById('note-toleranceFrac')?.textContent).toBe('assumed 20 %: usual (favourable)')
  })

  it('says how to find a missing fact out and offers a text to go on with', async () => {
    const onType = vi.fn()
    show(<FieldView field={fieldOf('sourceOhm')} onType={onType} />)
    expect(document.getElementById('note-sourceOhm')?.textContent).toContain('Rarely known.')
    await tap(by('button', 'Use 1;10;50'))
    expect(onType).toHaveBeenCalledWith('1;10;50')
  })

  it('says where its text comes from, and leads to the check it comes from', () => {
    const note = (field: Field) => {
      show(<FieldView field={field} onType={() => undefined} addressOf={(check) => `#/check/${check}`} />)
      return document.getElementById(`note-${field.key}`)
    }
    const field = fieldOf('capacitanceF', '4n7')
    expect(note({ ...field, origin: { by: 'user' } })?.textContent).toBe('')
    expect(note({ ...field, origin: { by: 'answer', node: 'kind' } })?.textContent).toBe('from your answer')
    expect(note({ ...field, origin: { by: 'kind', source: 'derived' } })?.textContent).toBe('from the line kind')
    expect(note({ ...field, origin: { by: 'trial', id: 't1' } })?.textContent).toBe('from a trial')
    expect(note({ ...field, origin: { by: 'assumed', why: 'not answered', favourable: false } })?.textContent).toBe(
      'assumed: not answered',
    )
    const fromCheck = note({ ...field, origin: { by: 'check', check: 'need' } })
    expect(fromCheck?.textContent).toBe('from Need')
    expect(by('link', 'Need').getAttribute('href')).toBe('#/check/need')
    expect(note(fieldOf('topology'))?.textContent).toBe('preset')
  })

  it('shows what else is said of it, and takes that with one tap', async () => {
    const other: Fact = { text: '10n', origin: { by: 'check', check: 'need' } }
    const onTake = vi.fn()
    const field: Field = { ...fieldOf('capacitanceF', '4n7'), origin: { by: 'user' }, others: [other] }
    show(<FieldView field={field} onType={() => undefined} onTake={onTake} />)
    expect(document.getElementById('note-capacitanceF')?.textContent).toBe('typed')
    await tap(by('button', 'Take 10n from Need'))
    expect(onTake).toHaveBeenCalledWith(other)
  })

  it('takes the usual value back after it was emptied on purpose', async () => {
    const onTake = vi.fn()
    const field: Field = { ...fieldOf('topology', ''), origin: { by: 'user' } }
    show(<FieldView field={field} onType={() => undefined} onTake={onTake} />)
    await tap(by('button', 'Take the usual C'))
    expect(onTake).toHaveBeenCalledWith(undefined)
  })

  it('says what the line holds where it cannot take it', () => {
    const unsuited: Fact = { text: '2M;12M', origin: { by: 'user' } }
    show(<FieldView field={{ ...fieldOf('capacitanceF'), unsuited }} onType={() => undefined} />)
    expect(document.getElementById('note-capacitanceF')?.textContent).toContain(
      'The Line holds 2M; 12M; this check takes one.',
    )
  })

  it('lines up a few choices, with the chosen one marked', async () => {
    const onType = vi.fn()
    show(<FieldView field={fieldOf('topology', 'PI')} onType={onType} />)
    expect((by('radio', 'Pi') as HTMLInputElement).checked).toBe(true)
    expect((by('radio', 'C') as HTMLInputElement).name).toBe('topology')
    await tap(by('radio', 'C'))
    expect(onType).toHaveBeenCalledWith('C')
  })

  it('offers to leave a choice open once it is empty', () => {
    show(<FieldView field={fieldOf('topology', '')} onType={() => undefined} />)
    expect((by('radio', 'not known') as HTMLInputElement).checked).toBe(true)
  })

  it('writes true and false for a switch', async () => {
    const onType = vi.fn()
    show(<FieldView field={fieldOf('navyRule', 'true')} onType={onType} />)
    const flag = by('checkbox', 'Navy rule') as HTMLInputElement
    expect(flag.checked).toBe(true)
    await tap(flag)
    expect(onType).toHaveBeenCalledWith('false')
  })

  it('searches many choices instead of lining them up', async () => {
    const options = Array.from({ length: 12 }, (_, index) => ({ value: `k${index}`, label: `Kind ${index}` }))
    const field = fieldOf('topology', 'k3')
    const many = { ...field, input: { ...field.input, type: { is: 'choice', options } as const } }
    const onType = vi.fn()
    show(<FieldView field={many} onType={onType} />)
    await tap(by('button', 'Topology Kind 3'))
    expect(allBy('button', /^Kind 1/u)).toHaveLength(3)
    await tap(by('button', 'Kind 11'))
    expect(onType).toHaveBeenCalledWith('k11')
  })
})

describe('searching options', () => {
  const options = [
    { value: 'arinc-429-high', label: 'ARINC 429, high speed' },
    { value: 'power-28-vdc', label: '28 V DC power' },
  ]
  it('finds a kind however it is spaced or capitalised, and by what people call it', () => {
    expect(matching(options, 'arinc429')).toEqual([options[0]])
    expect(matching(options, 'POWER 28')).toEqual([options[1]])
    expect(matching(options, '  ')).toEqual(options)
    expect(matching(options, 'zebra')).toEqual([])
  })
})
