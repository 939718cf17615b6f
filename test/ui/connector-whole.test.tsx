// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import type { Contact } from '../../src/calc/connector/types.ts'
import type { Line } from '../../src/calc/types.ts'
import { loadComplaints } from '../../src/state/complaints.ts'
import { addConnector, connectorsOf } from '../../src/state/connectors.ts'
import { newConnector } from '../../src/state/new-connector.ts'
import { ConnectorScreen } from '../../src/ui/screens/connector/connector.tsx'
// fetched before the first test, so that none waits for the reading of the files
import '../../src/ui/screens/connector/whole.tsx'
import { lineOf, type Texts } from '../support/decided-contact.ts'
import { made } from './connector-support.tsx'
import { allBy, by, eventually, settle, show, tap, type } from './support.ts'

beforeEach(() => loadComplaints())

const noise: Texts = { noiseHz: '30M', neededDb: '20', noiseSourceOhm: '50', noiseLoadOhm: '50', toleranceFrac: '10 %' }
const surge: Texts = {
  standoffV: '48',
  ratedPulseW: '5000',
  circuitWithstandV: '150',
  capacitorWithstandV: '300',
  supplyCategory: 'do160-a',
}
const lines: readonly Line[] = [
  lineOf('power', { lineKind: 'power-28-vdc', ...noise, ...surge }),
  lineOf('lamp', { lineKind: 'discrete-28v', ...noise, ...surge }),
  lineOf('net', { lineKind: 'ethernet-100base-tx', ...noise }),
]
const contact = (id: string, lineId: string, more: Contact['texts'] = {}): Contact => ({
  id,
  type: 'line',
  lineId,
  texts: more,
})
const contacts: readonly Contact[] = [
  contact('1', 'power', { chosenTopology: 'C', chosenF: '10n' }),
  contact('2', 'lamp', { chosenTopology: 'C', chosenF: '10n' }),
  { ...contact('6', 'net', { chosenTopology: 'none' }), leg: 'a' },
]

async function opened() {
  const complaint = made()
  await eventually('the connectors', () => connectorsOf(complaint.id).value)
  const connector = { ...newConnector([]), contacts }
  addConnector(complaint.id, connector, lines)
  show(<ConnectorScreen complaintId={complaint.id} steps={[connector.id, 'whole']} />)
  await settle()
  await eventually('the findings', () => document.querySelector('.findings .finding') ?? undefined)
}

const findings = () => [...document.querySelectorAll<HTMLElement>('section[aria-label=Findings] .finding')]

describe('the connector as a whole', () => {
  it('is a list of sentences with marks, the worst first, each with its workings', async () => {
    await opened()
    await eventually('the end', () => (document.querySelector('progress') === null ? document.body : undefined))
    const classes = findings().map((one) => one.className.split(' ')[1])
    expect(classes).toContain('told')
    const ranks = classes.map((one) => ['fails', 'unknown', 'marginal', 'ok', 'told'].indexOf(one ?? ''))
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b))
    const bond = findings().find((one) => one.textContent?.includes('shared bond'))
    expect(bond?.querySelector('details')?.textContent).toContain('Taken for granted')
    expect(document.querySelector('[data-output=whole-verdict]')?.getAttribute('data-verdict')).toBe(classes[0])
    expect(document.body.textContent).not.toMatch(/NaN|undefined|Infinity/u)
  })

  it('takes the bond where it asks for it, and says so with it', async () => {
    await opened()
    expect(document.body.textContent).toContain('not all of it is entered')
    await type(by('textbox', 'Bond resistance'), '1m')
    await type(by('textbox', 'Bond inductance'), '0.2n')
    await eventually('the bond entered', () =>
      /bond of 1.mΩ and 200.pH,/u.test(document.body.textContent ?? '') ? document.body : undefined,
    )
    expect(document.body.textContent).not.toContain('not all of it is entered')
  })

  it('is struck when asked, after saying what it waits for', async () => {
    await opened()
    const strike = await eventually('the button', () =>
      allBy('button', 'Strike all contacts').find((one) => !one.hasAttribute('disabled')),
    )
    await tap(strike)
    expect(by('region', 'Struck together').textContent).toContain('Choose the waveform')
    const select = document.querySelector<HTMLSelectElement>('#strike-waveform')
    if (select === null) throw new Error('no waveform to choose')
    select.value = 'wf4'
    select.dispatchEvent(new Event('change', { bubbles: true }))
    await settle()
    await type(by('textbox', 'Pin level'), '2')
    const ready = await eventually('the button again', () =>
      allBy('button', 'Strike all contacts').find((one) => !one.hasAttribute('disabled')),
    )
    await tap(ready)
    const said = await eventually(
      'what it says',
      () => document.querySelector('section[aria-label="Struck together"] .finding') ?? undefined,
    )
    expect(said.closest('section')?.textContent).toContain('harsher than any test')
    expect(said.closest('section')?.textContent).toContain('the plate jumps')
  }, 60_000)

  it('finds how many suppressors of which class it takes, when asked', async () => {
    await opened()
    const select = document.querySelector<HTMLSelectElement>('#strike-waveform')
    if (select === null) throw new Error('no waveform to choose')
    select.value = 'wf4'
    select.dispatchEvent(new Event('change', { bubbles: true }))
    await settle()
    await type(by('textbox', 'Pin level'), '2')
    const find = await eventually('the button', () =>
      allBy('button', 'Find the power classes').find((one) => !one.hasAttribute('disabled')),
    )
    await tap(find)
    const said = await eventually(
      'the classes',
      () => document.querySelector('section[aria-label="Suppressor classes"] .finding') ?? undefined,
    )
    expect(said.textContent).toMatch(/\d × \d+.V stand-off, \w+, (\d.*(W|kW) \(10\/1000 µs\)|power class open)/u)
  }, 60_000)

  it('shares one suppressor between contacts that are named, and refuses one that is not there', async () => {
    await opened()
    await type(by('textbox', 'Contacts that share one'), '1 99')
    await tap(allBy('button', 'Add')[0] as HTMLElement)
    expect(document.body.textContent).toContain('There is no contact 99 on this connector.')
    await type(by('textbox', 'Contacts that share one'), '1 2')
    await tap(allBy('button', 'Add')[0] as HTMLElement)
    await eventually('the group', () => findings().find((one) => one.textContent?.includes('share one suppressor')))
    await tap(by('button', 'Take away 1, 2'))
    await eventually('it gone', () =>
      findings().some((one) => one.textContent?.includes('share one suppressor')) ? undefined : document.body,
    )
  })
})
