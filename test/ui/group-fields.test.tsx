// @vitest-environment happy-dom
import { act } from 'preact/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import type { Fact, Line } from '../../src/calc/types.ts'
import { createCheck } from '../../src/state/check.ts'
import { scratchDesk } from '../../src/state/desk.ts'
import { expressionReading } from '../../src/state/expression.ts'
import { restartScratch } from '../../src/state/session.ts'
import { focusField } from '../../src/ui/parts/refusals.tsx'
import { wantedField } from '../../src/ui/parts/wanted-field.ts'
import { Fields } from '../../src/ui/screens/check-fields.tsx'
import { fakeCheck } from './fake-check.ts'
import { eventually, settle, show } from './support.ts'

const typed = (text: string): Fact => ({ text, origin: { by: 'user' } })

async function fieldsWith(facts: Line['facts']): Promise<HTMLElement> {
  restartScratch()
  for (const [fact, said] of Object.entries(facts)) scratchDesk.write(fact as keyof Line['facts'], said, undefined)
  const model = createCheck(fakeCheck, scratchDesk, expressionReading)
  const place = show(<Fields model={model} desk={scratchDesk} />)
  await settle()
  return place
}

const tolerance = (place: HTMLElement) => place.querySelector<HTMLInputElement>('.group [name="toleranceFrac"]')

describe('fields that are folded together', () => {
  afterEach(() => {
    show(null)
    restartScratch()
  })

  it('are drawn when the fold is opened, and stay from then on', async () => {
    const place = await fieldsWith({})
    expect(place.querySelector('[name="capacitanceF"]')).not.toBeNull()
    expect(tolerance(place)).toBeNull()
    const fold = place.querySelector<HTMLDetailsElement>('details.group')
    for (const isOpen of [true, false]) {
      await act(async () => {
        if (fold) fold.open = isOpen
        fold?.dispatchEvent(new Event('toggle'))
      })
      expect(tolerance(place)).not.toBeNull()
    }
  })

  it('stand open from the start where one of them is refused', async () => {
    const place = await fieldsWith({ toleranceFrac: typed('150') })
    expect(place.querySelector('details.group')?.hasAttribute('open')).toBe(true)
    expect(tolerance(place)?.value).toBe('150')
  })

  it('open for who is led to one of them, and hold the cursor there', async () => {
    const place = await fieldsWith({})
    await act(async () => focusField('toleranceFrac'))
    await eventually('the field', () => tolerance(place))
    await eventually('the cursor in it', () => (document.activeElement === tolerance(place) ? true : undefined))
    expect(place.querySelector('details.group')?.hasAttribute('open')).toBe(true)
    // led there once: the same fold of another screen stays shut, also where the field never came
    show(null)
    await act(async () => focusField('toleranceFrac'))
    await eventually('that it is given up', () => (wantedField.peek() === undefined ? true : undefined))
    const again = await fieldsWith({})
    expect(tolerance(again)).toBeNull()
  })
})
