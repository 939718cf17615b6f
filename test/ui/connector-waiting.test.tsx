// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { beforeEach, describe, expect, it } from 'vitest'
import { complaints, loadComplaints } from '../../src/state/complaints.ts'
import { addConnector, connectorsOf } from '../../src/state/connectors.ts'
import { newConnector } from '../../src/state/new-connector.ts'
import { scheduleRun } from '../../src/state/schedule.ts'
import { Decide } from '../../src/ui/screens/connector/decide.tsx'
import { Trade } from '../../src/ui/screens/connector/trade.tsx'
import { Whole } from '../../src/ui/screens/connector/whole.tsx'
import { contactOf, DISCRETE, lineOf } from '../calc/connector/some-connector.ts'
import { made } from './connector-support.tsx'
import { allBy, by, eventually, show } from './support.ts'

beforeEach(() => loadComplaints())

async function both() {
  const { id } = made()
  await eventually('the connectors', () => connectorsOf(id).value)
  const own = { ...newConnector([]), contacts: [contactOf('1', 'a'), contactOf('2', 'b')] }
  addConnector(id, own, [lineOf('a', DISCRETE), lineOf('b', { ...DISCRETE, neededDb: '26' })])
  return eventually('the connector', () => {
    const complaint = complaints.value?.find((one) => one.id === id)
    const connector = connectorsOf(id).value?.find((one) => one.id === own.id)
    return complaint && connector && { complaint, connector }
  })
}

const press = (name: string) => act(() => by('button', name).click())
const text = () => document.body.textContent ?? ''

it('has the ways to contacts on every screen that needs some', async () => {
  const { complaint, connector } = await both()
  const empty = { complaint, connector: { ...connector, contacts: [] } }
  for (const screen of [<Decide {...empty} />, <Whole {...empty} />, <Trade {...empty} />]) {
    show(screen)
    expect(by('link', 'Paste a table').getAttribute('href')).toMatch(/\/paste$/)
    expect(by('link', 'Make the contacts').getAttribute('href')).toMatch(/connector\/[^/]+$/)
  }
})

describe('work on a connector that was stopped', () => {
  it('goes on from the screen that decides, whose proposals are no clean yes until it is done', async () => {
    const given = await both()
    show(<Decide {...given} />)
    const take = () => allBy('button', /clean yes$/)[0]
    await eventually('the proposals', () => (take()?.hasAttribute('disabled') === false ? document.body : undefined))
    act(() => scheduleRun(given.connector.id).stop())
    expect(take()?.hasAttribute('disabled')).toBe(true)
    expect(text()).toContain('Stopped: this is what stood before.')
    press('Work it out')
    await eventually('them again', () => (take()?.hasAttribute('disabled') === false ? document.body : undefined))
  })

  it('goes on where it was stopped at once', async () => {
    const given = await both()
    show(<Decide {...given} />)
    press('Stop')
    expect(text()).toContain('Stopped: ')
    press('Work it out')
    await eventually('the proposals', () => allBy('button', /clean yes$/)[0])
  })

  it('is under way as soon as it is taken up again for the whole connector', async () => {
    show(<Whole {...(await both())} />)
    press('Stop')
    expect(text()).toContain('Stopped: nothing is said')
    press('Work it out')
    expect(text()).not.toContain('Stopped')
    await eventually('the verdict', () => document.querySelector('[data-output=whole-verdict]') ?? undefined)
  })
})
