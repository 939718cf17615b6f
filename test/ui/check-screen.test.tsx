// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { RULES_EDITION } from '../../src/calc/edition.ts'
import type { Line } from '../../src/calc/types.ts'
import { change, complaints, loadComplaints, writeLineFact } from '../../src/state/complaints.ts'
import { lineOfEntry } from '../../src/state/entry.ts'
import { createFromCheck } from '../../src/state/new-complaint.ts'
import { readHash } from '../../src/state/router.ts'
import { restartScratch, scratch } from '../../src/state/session.ts'
import { newLine } from '../../src/store/line.ts'
import { CheckScreen } from '../../src/ui/screens/check.tsx'
import { KeptCheckScreen } from '../../src/ui/screens/kept-check.tsx'
import { isResumed } from '../../src/ui/shell/start.ts'
// what it reads of the other checks is worked out by the build, which takes longer than a screen is waited for
import '../../src/ui/screens/onward.tsx'
import { allBy, by, eventually, output, settle, show, tap, type, until } from './support.ts'

/** Shows the screen of an address as a link does: in an entry of the history that is new. */
async function open(hash: string): Promise<HTMLElement> {
  history.pushState(null, '', hash)
  return reopen(hash)
}

/** The same as after a reload: the entry of the history is the one it was. */
async function reopen(hash: string): Promise<HTMLElement> {
  show(null)
  const route = readHash(hash)
  if (route.place === 'nowhere' || route.id === undefined) throw new Error(`no check in ${hash}`)
  const { id, query, kept } = route
  const place = show(
    kept ? (
      <KeptCheckScreen complaintId={id} lineId={kept.lineId} checkId={kept.check} />
    ) : (
      <CheckScreen id={id} query={query} />
    ),
  )
  await settle()
  // what only this check computes with is fetched with it, and what is folded follows the answer
  await eventually(
    'a screen with all its parts',
    () => !place.querySelector('p.loading, [aria-busy="true"]') || undefined,
  )
  return place
}

const textOf = (name: string) => (by('textbox', name) as HTMLInputElement).value

describe('a check on screen', () => {
  beforeEach(async () => {
    isResumed.value = true
    await loadComplaints()
  })
  afterEach(() => {
    show(null)
    location.hash = ''
    restartScratch()
  })

  it('fills its fields from the address and gives each figure in full precision', async () => {
    await open('#/check/need?measuredDb=71.3&limitDb=46.2&marginDb=8')
    expect((by('textbox', 'Measured level') as HTMLInputElement).value).toBe('71.3')
    // 71.3 − 46.2 + 8
    expect(Number(output('neededDb')?.si)).toBeCloseTo(33.1, 10)
    expect(document.querySelectorAll('h1')).toHaveLength(1)
  })

  it('answers while typing and keeps the address up to date without a new history entry', async () => {
    await open('#/check/need?measuredDb=60&limitDb=50&marginDb=6&extra=7')
    const before = history.length
    await type(by('textbox', 'Measured level'), '63')
    expect(Number(output('neededDb')?.si)).toBeCloseTo(19, 10)
    window.dispatchEvent(new Event('focusout'))
    expect(location.hash).toBe('#/check/need?measuredDb=63&limitDb=50&marginDb=6&extra=7')
    expect(history.length).toBe(before)
  })

  it('leaves an address alone that is not its own any more', async () => {
    await open('#/check/need')
    await type(by('textbox', 'Measured level'), '63')
    history.pushState(null, '', '#/check/need?limitDb=50')
    window.dispatchEvent(new Event('focusout'))
    expect(location.hash).toBe('#/check/need?limitDb=50')
  })

  it('names the usual values it took beside the answer, until they are typed over', async () => {
    const place = await open('#/check/need?measuredDb=71.3&limitDb=50.1')
    expect(place.textContent).toContain('usual values, change them if yours differ: Margin 6')
    await type(by('textbox', 'Margin'), '7.5')
    expect(place.textContent).not.toContain('usual values')
  })

  it('reports keys of the address it does not know', async () => {
    const place = await open('#/check/need?measuredDb=60&extra=7')
    expect([...place.querySelectorAll('.notice')].map((notice) => notice.textContent).join()).toContain('extra=7')
  })

  it('shows no figure while a text is refused, and leads to the field', async () => {
    await open('#/check/need?measuredDb=loud&limitDb=50')
    expect(output('neededDb')).toBeUndefined()
    expect(by('textbox', 'Measured level').getAttribute('aria-invalid')).toBe('true')
    await tap(by('button', 'Measured level'))
    expect(document.activeElement?.id).toBe('in-measuredDb')
  })

  it('keeps an output without a value on the page, empty, with its reason', async () => {
    await open('#/check/need?measuredDb=60')
    expect(output('neededDb')).toMatchObject({ si: '' })
    expect(output('neededDb')?.text).toContain('allowed level')
  })

  it('opens working and source in one tap', async () => {
    const place = await open('#/check/need?measuredDb=60&limitDb=50')
    const folds = [...place.querySelectorAll('details')].filter((fold) => fold.querySelector('.working'))
    expect(folds.length).toBeGreaterThan(0)
    expect(folds[0]?.textContent).toContain('common practice')
  })

  it('becomes a complaint with one tap, with the facts of its line, and goes on there', async () => {
    await open('#/check/need?measuredDb=60&limitDb=50')
    await tap(by('button', 'Keep in the log'))
    const [made] = complaints.value ?? []
    const [line] = made?.lines ?? []
    expect(made?.checks).toEqual([{ check: 'need', lineId: line?.id, rules: RULES_EDITION }])
    expect(line?.facts.measuredDb?.text).toBe('60')
    expect(line?.id).not.toBe(scratch.value.id)
    expect(location.hash).toBe(`#/log/${made?.id}/${line?.id}/need`)
    await reopen(location.hash)
    expect(by('link', 'Kept: open it in the log').getAttribute('href')).toBe(`#/log/${made?.id}`)
  })

  it('says what every answer says: a screening estimate', async () => {
    const place = await open('#/check/need')
    expect(place.textContent).toContain('not approved data')
  })

  it('names a check that does not exist and gives ways on', async () => {
    await open('#/check/torque')
    expect(by('heading', 'No such check')).toBeDefined()
    expect(allBy('link', /^(Ask|Check|Log|Book):/u)).toHaveLength(4)
  })

  it('works on the line under way without a query: nothing is copied on the way from check to check', async () => {
    await open('#/check/need')
    await type(by('textbox', 'Measured level'), '80')
    await type(by('textbox', 'Allowed level'), '50')
    expect((await vi.waitFor(() => by('link', /^Window/))).getAttribute('href')).toBe('#/check/window')
    await open('#/check/window')
    expect(textOf('Attenuation needed')).toBe('36 dB')
    const note = document.getElementById('note-neededDb')
    expect(note?.textContent).toBe('from Need')
    expect(note?.querySelector('a')?.getAttribute('href')).toBe('#/check/need')
    expect(Object.keys(scratch.value.facts).sort()).toEqual(['limitDb', 'measuredDb'])
    await type(by('textbox', 'Attenuation needed'), '20')
    await tap(by('button', 'Take 36 dB from Need'))
    expect(textOf('Attenuation needed')).toBe('36 dB')
  })

  it('opens a query on a fresh line, and gives the one before back', async () => {
    await open('#/check/need')
    await type(by('textbox', 'Measured level'), '77')
    const before = scratch.value
    await open('#/check/need?limitDb=50')
    expect(textOf('Measured level')).toBe('')
    expect(Object.keys(scratch.value.facts)).toEqual(['limitDb'])
    expect(scratch.value.gate).toBe('unknown')
    await open('#/check/window')
    expect(allBy('button', 'Go back to it')).toHaveLength(1)
    await open('#/check/need')
    await tap(by('button', 'Go back to it'))
    expect(allBy('button', 'Go back to it')).toHaveLength(0)
    expect(scratch.value).toMatchObject({ id: before.id, facts: before.facts })
    await reopen(location.hash)
    expect(textOf('Measured level')).toBe('77')
  })

  it('goes on with the very same line after a reload, with what was typed in other checks', async () => {
    await open('#/check/power?workingRmsV=115')
    await type(by('textbox', 'Supply frequency'), '400')
    window.dispatchEvent(new Event('focusout'))
    const { hash } = location
    const id = lineOfEntry()
    expect(id).toBe(scratch.value.id)
    await open('#/check/need')
    await type(by('textbox', 'Measured level'), '71')
    history.replaceState({ line: id }, '', hash)
    await reopen(hash)
    expect(scratch.value.id).toBe(id)
    expect(scratch.value.facts.measuredDb?.text).toBe('71')
    await open(hash)
    expect(scratch.value.id).not.toBe(id)
    expect(scratch.value.facts.measuredDb).toBeUndefined()
  })

  it('keeps what is typed even where the address may not be rewritten any more', async () => {
    await open('#/check/need')
    const rewrite = vi.spyOn(history, 'replaceState').mockImplementation(() => {
      throw new DOMException('too often', 'SecurityError')
    })
    await type(by('textbox', 'Measured level'), '63')
    window.dispatchEvent(new Event('focusout'))
    expect(rewrite).toHaveBeenCalled()
    rewrite.mockRestore()
    expect(scratch.value.facts.measuredDb?.text).toBe('63')
    window.dispatchEvent(new Event('focusout'))
    expect(location.hash).toContain('measuredDb=63')
  })

  it('of a kept line saves every key in the complaint, and leaves the line under way alone', async () => {
    const line = { ...newLine('J3-14'), facts: { limitDb: { text: '50', origin: { by: 'user' } as const } } }
    const { id } = createFromCheck({ title: 'Intercom buzz', check: 'need', line })
    await open(`#/log/${id}/${line.id}/need`)
    await type(by('textbox', 'Measured level'), '6')
    await type(by('textbox', 'Measured level'), '61')
    const kept = complaints.value?.find((complaint) => complaint.id === id)
    expect(kept?.lines[0]?.facts.measuredDb).toEqual({ text: '61', origin: { by: 'user' } })
    expect(scratch.value.facts).toEqual({})
    expect((await vi.waitFor(() => by('link', /^Window/))).getAttribute('href')).toBe(`#/log/${id}/${line.id}/window`)
    await open(`#/log/${id}/${line.id}/window`)
    // 61 − 50 + 6
    expect(textOf('Attenuation needed')).toBe('17 dB')
    expect(complaints.value?.find((complaint) => complaint.id === id)?.checks.map(({ check }) => check)).toEqual([
      'need',
      'window',
    ])
    await open(`#/log/${id}/no-such-line/window`)
    expect(by('heading', 'No such line in this complaint')).toBeDefined()
  })

  it('of a kept line says when older rules judged it last, once, and is judged by those of today', async () => {
    const line = newLine('J3-14')
    const { id } = createFromCheck({ title: 'Kept last year', check: 'need', line })
    const saved = () => complaints.value?.find((complaint) => complaint.id === id)?.checks
    await open(`#/log/${id}/${line.id}/need`)
    expect(document.body.textContent).not.toContain('of the rules')
    await open(`#/log/${id}`)
    // as a version kept it that noted no edition
    await act(async () => change(id, { checks: [{ check: 'need', lineId: line.id }] }))
    await open(`#/log/${id}/${line.id}/need`)
    expect(document.body.textContent).toContain('last judged by edition 1 of the rules')
    expect(saved()).toEqual([{ check: 'need', lineId: line.id, rules: RULES_EDITION }])
    await open(`#/log/${id}`)
    await open(`#/log/${id}/${line.id}/need`)
    expect(document.body.textContent).not.toContain('of the rules')
  })

  it('tells the words of the trade in its helps by a tap, of a kept line too', async () => {
    await open('#/check/window')
    await until('a.term')
    const line = newLine('contact 19')
    const { id } = createFromCheck({ title: 'Hum', check: 'window', line })
    await open(`#/log/${id}/${line.id}/window`)
    await until('a.term')
  })

  it('has its pages of the book behind its evidence, fetched for those who look there', async () => {
    // a phone
    vi.stubGlobal('matchMedia', () => ({ matches: false, addEventListener: () => undefined }))
    await open('#/check/need?measuredDb=71.3&limitDb=46.2&marginDb=8')
    vi.unstubAllGlobals()
    await settle(20)
    expect(allBy('summary', 'In the book')).toHaveLength(0)
    const evidence = document.querySelector('details.evidence') as HTMLDetailsElement
    evidence.open = true
    evidence.dispatchEvent(new Event('toggle'))
    await until('details.evidence > details')
    expect(by('summary', 'In the book')).toBeTruthy()
  })

  it('of tones leads to the sounds to compare with', async () => {
    await open('#/check/tone')
    expect(by('link', 'Listen to the noises and compare').getAttribute('href')).toBe('#/notes/sounds')
  })

  it('takes over what another window typed while it is untouched, and keeps both where it is being typed in', async () => {
    const line = { ...newLine('J3-14'), facts: { limitDb: { text: '50', origin: { by: 'user' } as const } } }
    const { id } = createFromCheck({ title: 'Two windows', check: 'need', line })
    await open(`#/log/${id}/${line.id}/need`)
    const elsewhere = (text: string, base: string) =>
      act(async () => writeLineFact(id, line.id, 'limitDb', { text, origin: { by: 'user' } }, base))
    await elsewhere('51', '50')
    expect(textOf('Allowed level')).toBe('51')
    await type(by('textbox', 'Allowed level'), '52')
    await elsewhere('53', '51')
    expect(textOf('Allowed level')).toBe('52')
    expect(document.querySelector('.rivals')?.textContent).toContain('53')
    const stored = () => complaints.value?.find((complaint) => complaint.id === id)?.lines[0]
    await tap(by('button', 'Keep the allowed level in the field'))
    expect(stored()?.facts.limitDb?.text).toBe('52')
    expect(stored()?.rivals).toBeUndefined()
    expect(textOf('Allowed level')).toBe('52')
    await type(by('textbox', 'Allowed level'), '54')
    await elsewhere('55', '52')
    await tap(by('button', 'Take this one'))
    expect(textOf('Allowed level')).toBe('55')
    expect(stored()?.rivals).toBeUndefined()
  })

  it('writes over a value it took over as if nothing had been there', async () => {
    const facts = {
      measuredDb: { text: '80', origin: { by: 'user' } },
      limitDb: { text: '50', origin: { by: 'user' } },
      neededDb: { text: '12', origin: { by: 'answer', node: 'level' } },
    }
    const line = { ...newLine('J3-14'), facts: facts as Line['facts'] }
    const { id } = createFromCheck({ title: 'Taken over', check: 'window', line })
    await open(`#/log/${id}/${line.id}/window`)
    expect(textOf('Attenuation needed')).toBe('36 dB')
    await type(by('textbox', 'Attenuation needed'), '20')
    await type(by('textbox', 'Attenuation needed'), '20.5')
    const stored = complaints.value?.find((complaint) => complaint.id === id)?.lines[0]
    expect(stored?.facts.neededDb?.text).toBe('20.5')
    expect(stored?.rivals).toBeUndefined()
  })
})
