// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { complaints, loadComplaints } from '../../src/state/complaints.ts'
import { readHash } from '../../src/state/router.ts'
import { CheckScreen } from '../../src/ui/screens/check.tsx'
import { allBy, by, output, settle, show, tap, type } from './support.ts'

async function open(hash: string): Promise<HTMLElement> {
  location.hash = hash
  const route = readHash(hash)
  if (route.place === 'nowhere' || route.id === undefined) throw new Error(`no check in ${hash}`)
  const place = show(<CheckScreen id={route.id} query={route.query} />)
  await settle()
  return place
}

describe('a check on screen', () => {
  beforeEach(async () => {
    await loadComplaints()
  })
  afterEach(() => {
    location.hash = ''
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

  it('names the usual values it took beside the answer, until they are typed over', async () => {
    const place = await open('#/check/need?measuredDb=71.3&limitDb=50.1')
    expect(place.textContent).toContain('usual values, change them if yours differ: Margin 6')
    await type(by('textbox', 'Margin'), '7.5')
    expect(place.textContent).not.toContain('usual values')
  })

  it('reports keys of the address it does not know', async () => {
    const place = await open('#/check/need?measuredDb=60&extra=7')
    expect(place.querySelector('.notice')?.textContent).toContain('extra=7')
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

  it('becomes a complaint with one tap, with its address and the typed facts', async () => {
    await open('#/check/need?measuredDb=60&limitDb=50')
    await tap(by('button', 'Keep in the log'))
    const [made] = complaints.value ?? []
    expect(made?.checks).toEqual([{ check: 'need', address: '#/check/need?measuredDb=60&limitDb=50&marginDb=6' }])
    expect(made?.lines[0]?.facts.measuredDb?.text).toBe('60')
    expect(by('link', 'Kept: open it in the log').getAttribute('href')).toBe(`#/log/${made?.id}`)
  })

  it('says what every answer says: a screening estimate', async () => {
    const place = await open('#/check/need')
    expect(place.textContent).toContain('not approved data')
  })

  it('names a check that does not exist and gives ways on', async () => {
    await open('#/check/torque')
    expect(by('heading', 'No such check')).toBeDefined()
    expect(allBy('link', /^(Ask|Check|Log|Notes):/u)).toHaveLength(4)
  })
})
