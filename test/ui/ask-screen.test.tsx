// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import { isEvidence, replay } from '../../src/guide/engine.ts'
import { complaints, loadComplaints } from '../../src/state/complaints.ts'
import { keptDesk, scratchDesk } from '../../src/state/desk.ts'
import { guide, loadGuide } from '../../src/state/guide-content.ts'
import { route, startRouter } from '../../src/state/router.ts'
import { restartTriage, scratch, triage } from '../../src/state/session.ts'
import { Ask } from '../../src/ui/screens/ask.tsx'
import { AskStart } from '../../src/ui/screens/ask-start.tsx'
import { isResumed } from '../../src/ui/shell/start.ts'
import { by, settle, show, tap, until } from './support.ts'

function Here() {
  const here = route.value
  if (here.place !== 'ask') return null
  return here.id === undefined ? <AskStart /> : <Ask nodeId={here.id} />
}

async function open(hash: string): Promise<HTMLElement> {
  location.hash = hash
  window.dispatchEvent(new Event('hashchange'))
  const place = show(<Here />)
  await settle()
  return place
}

/** Gives the answer with this id, as a tap on its row. */
async function give(optionId: string): Promise<void> {
  const row = await until(`button.answer-row[value="${optionId}"]`)
  if (row instanceof HTMLElement) await tap(row)
  window.dispatchEvent(new Event('hashchange'))
  await settle()
}

/** Answers by item, until the way ends; what is not here is not known. */
const ANSWERS: Readonly<Record<string, string>> = {
  'gate-danger': 'none',
  'gate-lines': 'none',
  wrong: 'reading',
  when: 'transmit',
  extent: 'several',
  'antenna-port': 'no',
  'other-crews': 'elsewhere',
  bond: 'good',
  cable: 'whole',
  'shield-ends': 'good',
  ptt: 'gone-cable',
  kind: 'arinc-429-high',
  frequency: 'vhf',
  box: 'no',
}

/** Answers whatever is asked until an outcome stands. */
async function giveAll(answers: Readonly<Record<string, string>> = ANSWERS): Promise<void> {
  for (let step = 0; step < 30; step++) {
    const content = guide.value
    if (content === undefined) throw new Error('no guide')
    const { current } = replay(content, triage.value.answers)
    if (!isEvidence(current)) return
    await give(answers[current.id] ?? 'dont-know')
  }
  throw new Error('it never ended')
}

describe('triage on screen', () => {
  beforeEach(async () => {
    startRouter()
    isResumed.value = true
    await loadComplaints()
    await loadGuide()
    // the outcome is a part of its own; with it at hand the screens below follow each other at once
    await import('../../src/ui/screens/outcome.tsx')
    restartTriage()
  })

  it('starts, and comes back to the question where it was left', async () => {
    await open('#/ask')
    await tap(by('link', 'Start'))
    window.dispatchEvent(new Event('hashchange'))
    await settle()
    await give('none')
    const question = document.querySelector('h1')?.textContent
    await open('#/ask')
    await until('.resume a')
    await tap(by('link', 'Go on where you were'))
    window.dispatchEvent(new Event('hashchange'))
    await settle()
    expect(document.querySelector('h1')?.textContent).toBe(question)
  })

  it('shows one question with "don’t know" as the last answer, why it is asked and how to find out', async () => {
    const place = await open('#/ask/gate-danger')
    expect(document.querySelectorAll('h1')).toHaveLength(1)
    const rows = [...place.querySelectorAll('.answer-row')]
    expect(rows.at(-1)?.textContent).toContain("Don't know")
    expect([...place.querySelectorAll('summary')].map((fold) => fold.textContent)).toEqual(
      expect.arrayContaining(['Why ask?', 'How to find out']),
    )
  })

  it('stops at a line that never gets a trial part, with the reason and no advice to fit anything', async () => {
    const place = await open('#/ask/gate-danger')
    await give('none')
    await give('pyrotechnic')
    await until('.panes.outcome')
    expect(by('heading', /^Stop/u)).toBeDefined()
    expect(triage.value.line.gate).toBe('barred')
    expect(place.querySelector('.line-window')).toBeNull()
  })

  it('leads to an answer with reason, steps, window, checks and the screening statement, and keeps it with one tap', async () => {
    const place = await open('#/ask/gate-danger')
    await giveAll()
    await until('.panes.outcome')
    expect(triage.value.line).toMatchObject({ gate: 'clear', facts: { lineKind: { text: 'arinc-429-high' } } })
    expect(by('region', 'Do now').querySelectorAll('li').length).toBeGreaterThan(1)
    expect((await until('.line-window svg[role=img]')).getAttribute('aria-label')).toContain('Window')
    expect(place.textContent).toContain('not approved data')
    const toWindow = () => by('region', 'Checks').querySelector<HTMLElement>('a[href$="/window"]')
    expect(toWindow()?.getAttribute('href')).toBe('#/check/window')
    const outcome = location.hash
    toWindow()?.click()
    expect(scratch.value).toMatchObject({ id: triage.value.line.id, facts: triage.value.line.facts })
    scratchDesk.write('noiseHz', { text: '9M', origin: { by: 'user' } })
    expect(triage.value.line.facts.noiseHz?.text).toBe('9M')
    await open(outcome)
    await until('.panes.outcome')
    await tap(by('button', 'Keep in the log'))
    const [kept] = complaints.value ?? []
    expect(kept?.answers).toEqual(triage.value.answers)
    expect(triage.value.complaintId).toBe(kept?.id)
    expect(toWindow()?.getAttribute('href')).toBe(`#/log/${kept?.id}/${triage.value.line.id}/window`)
    keptDesk(kept?.id ?? '', triage.value.line.id).write('noiseHz', { text: '8M', origin: { by: 'user' } })
    expect([triage.value.line, scratchDesk.line.value].map(({ facts }) => facts.noiseHz?.text)).toEqual(['8M', '8M'])
  })

  it('lets an early answer be changed from the trail and keeps the later ones that still apply', async () => {
    await open('#/ask/gate-danger')
    await giveAll({ ...ANSWERS, wrong: 'plan', 'plan-direction': 'stand', mode: 'common', need: 'twenty' })
    await until('.panes.outcome')
    const chip = await until('.answered a[href="#/ask/box"]')
    if (chip instanceof HTMLElement) await tap(chip)
    window.dispatchEvent(new Event('hashchange'))
    await settle()
    expect((await until('[aria-pressed=true]')).getAttribute('value')).toBe('no')
    await give('yes')
    await until('.panes.outcome')
    expect(triage.value.answers).toMatchObject({ kind: 'arinc-429-high', box: 'yes' })
    expect(by('heading', /^A filter .* receptacle of the box/u)).toBeDefined()
  })

  it('starts the result with one sentence, and asks what it still misses by a link of one tap that leads back', async () => {
    await open('#/ask/gate-danger')
    await giveAll()
    await until('.panes.outcome')
    const end = location.hash
    const sentence = by('region', 'Result').querySelector(':scope > p')?.textContent
    expect(sentence).toMatch(/^Our own transmitter .*; an in-line adapter on the cable side[^.]*\.$/u)
    await tap(by('link', 'What reaches these contacts beside noise?'))
    window.dispatchEvent(new Event('hashchange'))
    await settle()
    expect(location.hash).toBe('#/ask/surge-threat')
    expect(document.querySelector('.notice')).toBeNull()
    await give('none')
    await until('.panes.outcome')
    expect(location.hash).toBe(end)
    expect(triage.value.line.facts.surgeThreat?.text).toBe('none')
    expect(document.querySelector('[aria-label="Still to answer"]')).toBeNull()
  })

  it('says once what a result is that decides no part: its title, then why', async () => {
    await open('#/ask/bond-first')
    await until('.panes.outcome')
    const title = by('heading', /^Repair the bond first/u).textContent ?? ''
    expect(by('region', 'Result').textContent).not.toContain(title)
    expect(by('region', 'Result').querySelector(':scope > p')?.textContent).toMatch(/^Shunt parts share the bond/u)
  })

  it('shows an outcome opened by address without the gate, but advises no part', async () => {
    const place = await open('#/ask/filter-victim-box')
    await until('.panes.outcome')
    expect(place.textContent).toContain('not advised until the safety questions are answered')
    expect(by('region', 'Do now').textContent).toContain('safety questions first')
  })
})
