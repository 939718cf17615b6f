/** Investigations on a phone, by touch, with every tap counted: filter, choke, bond, suppressor, and no filter at all. */
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import {
  answerAll,
  answerButton,
  CLEAR,
  heading,
  outcomeOf,
  type Step,
  shown,
  stepsOf,
  titleOf,
} from './support/screen.ts'
import { CLEAN, openSite, PHONE, type Site, type Visit } from './support/site.ts'

let site: Site
let visit: Visit
let page: Page

beforeAll(async () => {
  site = await openSite()
})
afterAll(() => site.close())
beforeEach(async () => {
  visit = await site.visit({ viewport: PHONE, hasTouch: true, isMobile: true })
  page = visit.page
  await page.goto(visit.at('#/ask/gate-danger'))
  await heading(page).waitFor()
})
afterEach(async () => {
  expect(await site.leave()).toEqual(CLEAN)
})

const region = (name: string) => page.getByRole('region', { name, exact: true })

const BY_CABLE = {
  ...CLEAR,
  wrong: 'reading',
  when: 'transmit',
  extent: 'several',
  'antenna-port': 'no',
  'other-crews': 'elsewhere',
  bond: 'good',
  cable: 'whole',
  'shield-ends': 'good',
  ptt: 'gone-cable',
  kind: 'synchro',
  frequency: 'vhf',
  box: 'no',
}

const WALKS: readonly {
  readonly name: string
  readonly answers: Readonly<Record<string, string>>
  readonly end: string
}[] = [
  { name: 'a filter against our own transmitter', answers: BY_CABLE, end: 'filter-own-tx' },
  {
    name: 'a filter for a new box',
    answers: { ...CLEAR, ...BY_CABLE, wrong: 'plan', 'plan-direction': 'stand', mode: 'common', need: 'twenty' },
    end: 'filter-victim-inline',
  },
  { name: 'a choke on a fast pair', answers: { ...BY_CABLE, kind: 'ethernet-100base-tx' }, end: 'choke-cable' },
  {
    name: 'a bond',
    answers: {
      ...CLEAR,
      wrong: 'noise',
      volume: 'gone',
      squelch: 'all',
      when: 'moved',
      extent: 'one-box',
      'strap-trial': 'gone',
    },
    end: 'bond-first',
  },
  {
    name: 'a suppressor',
    answers: {
      ...CLEAR,
      wrong: 'broken',
      when: 'switching',
      damage: 'switching',
      'switch-edge': 'plug',
      'supply-scope': 'above',
    },
    end: 'suppressor-switching',
  },
  {
    name: 'not a filter: a bus',
    answers: {
      ...CLEAR,
      wrong: 'data',
      when: 'always',
      changed: 'nothing',
      'swapped-before': 'stayed',
      'bus-ohms': 'wrong',
    },
    end: 'bus-repair',
  },
]

/** Ends that decide more than their title says: place, topology, part. */
const DECIDE_MORE: ReadonlySet<string> = new Set(['filter-own-tx', 'filter-victim-inline', 'suppressor-switching'])

/** Taps to the first decision or test card of each walk, the median of which is held. */
const tapsToCard: number[] = []

describe.each(WALKS)('$name', ({ answers, end }) => {
  it(`is reached by touch and ends at ${end}, with its decision first and a reason for each answer`, async () => {
    const steps = stepsOf(answers)
    let taps = 0
    let first: number | undefined
    for (const step of steps) {
      await shown(page, step[0])
      if (first === undefined && (await region('Test card').count()) > 0) first = taps
      await answerAll(page, [step], 'tap')
      taps += 1
    }
    tapsToCard.push(first ?? taps)
    await shown(page, end)
    const result = (await region('Result').textContent()) ?? ''
    const outcome = outcomeOf(end)
    expect(result).toContain(outcome.reason)
    // what the title says already is not said again; where more is decided, that comes first of all
    expect(result).not.toContain(`${outcome.headline}.`)
    expect(result.startsWith(outcome.headline)).toBe(DECIDE_MORE.has(end))
    expect(await region('Do now').getByRole('listitem').count()).toBeGreaterThan(0)
    if (answers['wrong'] !== 'plan')
      expect(await region('Because of these answers').getByRole('link').count()).toBeGreaterThan(0)
  })
})

it('takes at most ten taps to a decision or a card, in the median', () => {
  const sorted = [...tapsToCard].sort((a, b) => a - b)
  expect(sorted).toHaveLength(WALKS.length)
  expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(10)
})

describe('a test that cannot be done now', () => {
  it('is pinned on the complaint, and one tap the next day opens its card', async () => {
    const steps = stepsOf({ ...CLEAR, wrong: 'reset', when: 'touch' })
    for (const step of steps) {
      await shown(page, step[0])
      if (step[0] === 'touch-stick') break
      await answerAll(page, [step], 'tap')
    }
    await shown(page, 'touch-stick')
    await page.getByRole('button', { name: /^Cannot be done now/ }).tap()
    await page.goto(visit.at('#/ask/measure-open'))
    await page.getByRole('button', { name: 'Keep in the log', exact: true }).tap()
    await page.getByRole('link', { name: /^Kept/ }).tap()
    await page.getByRole('textbox', { name: 'Title' }).waitFor()

    await page.close()
    page = await visit.context.newPage()
    await page.goto(visit.at('#/log'))
    await page.getByRole('link', { name: new RegExp(titleOf('measure-open')) }).tap()
    await region('Open tests')
      .getByRole('link', { name: new RegExp(titleOf('touch-stick').replace(/[?]/g, '\\?')) })
      .tap()
    await shown(page, 'touch-stick')
    await region('Test card').waitFor()
    await page.getByRole('textbox', { name: /Reading/ }).fill('0.4')
    await answerButton(page, 'touch-stick', 'shell').tap()
    await shown(page, 'kind')
    const facts: readonly Step[] = [
      ['kind', 'can'],
      ['surge-level', 'level-3'],
      ['surge-contacts', 'one'],
    ]
    await answerAll(page, facts, 'tap')
    await shown(page, 'suppressor-static')
    await page.getByText('Decided: one suppressor at the one exposed contact, ahead of the filter').waitFor()
  })
})

describe('the hand-over', () => {
  it('says what was seen, tried, excluded and opened, with the reading', async () => {
    await answerAll(
      page,
      [
        ['gate-danger', 'none'],
        ['gate-lines', 'none'],
        ['wrong', 'receiver'],
      ],
      'tap',
    )
    await page.goto(visit.at('#/ask/cable'))
    await answerButton(page, 'cable', 'none').tap()
    await page.goto(visit.at('#/ask/bond'))
    await page.getByRole('textbox', { name: /Reading/ }).fill('7.1')
    await page.getByRole('radio', { name: /agreed/ }).check()
    await answerButton(page, 'bond', 'poor').tap()
    await page.goto(visit.at('#/ask/measure-open'))
    await page.getByRole('button', { name: 'Keep in the log', exact: true }).tap()
    await page.getByRole('link', { name: /^Kept/ }).tap()
    const handover = page.locator('details', { hasText: 'Hand-over for the next shift' })
    await handover.locator('summary').tap()
    expect(await handover.getByRole('heading').allTextContents()).toEqual([
      'Seen',
      'Tried',
      'Excluded',
      'Open',
      'To be put back and counted',
    ])
    expect(await handover.textContent()).toMatch(
      /Seen.*What exactly goes wrong.*Tried.*Box bond.*7\.1; three times, agreed.*Excluded.*Bus dip.*To be put back.*after: .*Clamp ferrite/s,
    )
  })
})

describe('a repair', () => {
  it('is noted as the cure only when on, off, on agreed, and goes to the close-out, which stays open until all is put back', async () => {
    const answers = { ...CLEAR, wrong: 'noise', volume: 'gone', squelch: 'all', when: 'moved', extent: 'one-box' }
    await answerAll(page, stepsOf({ ...answers, 'strap-trial': 'gone' }), 'tap')
    await shown(page, 'bond-first')
    await page.getByRole('button', { name: 'Keep in the log', exact: true }).tap()
    const after = region('After the repair')
    await after.getByRole('button', { name: /^Gone/ }).tap()
    const close = after.getByRole('button', { name: 'Note cause and cure' })
    await after.getByText(/Once is no proof/).waitFor()
    expect(await close.count()).toBe(0)
    await after.getByRole('radio', { name: /differed/ }).check()
    await after.getByText(/that proves nothing/).waitFor()
    expect(await close.count()).toBe(0)
    await after.getByRole('radio', { name: /agreed/ }).check()
    await after.getByRole('textbox', { name: 'What was done?' }).fill('new strap, 40 mm wide')
    await after.getByRole('textbox', { name: 'How was it proven?' }).fill('three times off and on')
    await close.tap()
    await region('Cause and cure').waitFor()
    await page.getByRole('link', { name: /^Kept/ }).tap()
    await region('Cause and cure').getByText('new strap, 40 mm wide').waitFor()
    expect(await region('Cause and cure').textContent()).toMatch(
      /Bond open or poor.*new strap.*three times off and on/s,
    )
    const closeOut = region('Close-out')
    expect(await closeOut.locator('[data-status]').getAttribute('data-status')).toBe('open')
    await closeOut.getByText('Before, after, cause and cure').tap()
    expect(await closeOut.getByRole('textbox', { name: 'Cure', exact: true }).inputValue()).toBe(
      'new strap, 40 mm wide',
    )
    await closeOut
      .getByText(/On, off, on agreed/)
      .first()
      .waitFor()
    expect(await closeOut.getByRole('button', { name: 'Close as cured' }).isDisabled()).toBe(true)
  })

  it('whose trial differed proves nothing: its answer stays, marked, and the test stays open', async () => {
    await answerAll(
      page,
      [...stepsOf({}).slice(0, 2)].map(([id]) => [id, 'none'] as const),
      'tap',
    )
    await answerAll(page, [['wrong', 'reading']], 'tap')
    await page.goto(visit.at('#/ask/strap-trial'))
    await page.getByRole('radio', { name: /differed/ }).check()
    await answerButton(page, 'strap-trial', 'gone').tap()
    await page.goto(visit.at('#/ask/measure-open'))
    const trail = page.locator('details.trail')
    if (!(await trail.evaluate((fold) => fold instanceof HTMLDetailsElement && fold.open)))
      await trail.locator('summary').tap()
    await trail.getByText(/repeated, it differed: counts as not known/).waitFor()
  })
})

describe('the board', () => {
  it('counts who still fits, and each suspect leads back to the answer that keeps it out', async () => {
    await answerAll(
      page,
      [
        ['gate-danger', 'none'],
        ['gate-lines', 'none'],
        ['wrong', 'noise'],
        ['volume', 'still'],
      ],
      'tap',
    )
    const board = page.locator('details', { hasText: /causes still fit/ })
    await board.locator('summary').tap()
    await board
      .getByRole('link', { name: /Still heard/ })
      .first()
      .tap()
    await shown(page, 'volume')
    expect(await answerButton(page, 'volume', 'still').getAttribute('aria-pressed')).toBe('true')
    await page.getByRole('link', { name: 'Back', exact: true }).tap()
    await shown(page, 'wrong')
  })

  it('takes an exact frequency wherever a band can be tapped', async () => {
    await page.goto(visit.at('#/ask/frequency'))
    await page.getByRole('textbox', { name: /Exact frequency/ }).fill('12 V')
    await page.getByRole('button', { name: 'Use this frequency' }).tap()
    await page.getByRole('alert').waitFor()
    await page.getByRole('textbox', { name: /Exact frequency/ }).fill('121.5 MHz')
    await page.getByRole('button', { name: 'Use this frequency' }).tap()
    await page.goto(visit.at('#/check/window'))
    await page.goto(visit.at('#/ask/filter-victim-inline'))
    await page
      .getByText(/121\.5\s*MHz/)
      .first()
      .waitFor()
  })
})
