// @vitest-environment happy-dom
import { signal } from '@preact/signals'
import { render } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import { trialCheck } from '../../src/calc/checks/trial/check.ts'
import { withFact } from '../../src/calc/line/with-fact.ts'
import type { Line, Trial } from '../../src/calc/types.ts'
import { createCheck } from '../../src/state/check.ts'
import type { Desk } from '../../src/state/desk.ts'
import { TrialRecorder } from '../../src/ui/parts/trial-recorder.tsx'

const KNOWN = {
  lineKind: 'discrete-28v',
  signalOhm: '10k',
  noiseHz: '10M',
  neededDb: '20',
  noiseSourceOhm: '50',
  noiseLoadOhm: '50',
}

function open(texts: Record<string, string>, gate: Line['gate'] = 'clear') {
  const facts = Object.fromEntries(
    Object.entries(texts).map(([key, text]) => [key, { text, origin: { by: 'user' } as const }]),
  )
  const line = signal<Line>({ id: 'x', name: 'J1-4', gate, trials: [], facts })
  const desk: Desk = {
    line,
    write: (fact, next) => {
      line.value = withFact(line.peek(), fact, next)
    },
    takeText: () => undefined,
    addressOf: (check) => `#/check/${check}`,
    enter: () => undefined,
    keepTrials: (change: (trials: readonly Trial[]) => readonly Trial[]) => {
      line.value = { ...line.peek(), trials: change(line.peek().trials) }
    },
  }
  const model = createCheck(trialCheck, desk, () => undefined)
  const host = document.createElement('div')
  document.body.append(host)
  act(() => render(<TrialRecorder model={model} desk={desk} />, host))
  const press = (name: RegExp) =>
    act(() => {
      const found = [...host.querySelectorAll('button')].find((button) => name.test(button.textContent ?? ''))
      if (found === undefined) throw new Error(`no button ${name}: ${host.textContent}`)
      found.click()
    })
  const text = (fact: 'trialSteps' | 'trialNoise' | 'trialSignal' | 'trialTimes' | 'trialRepeats') =>
    line.peek().facts[fact]?.text
  return { host, press, text, line, model }
}

afterEach(() => {
  document.body.replaceChildren()
})

describe('noting a trial', () => {
  it('begins with the values the window offers, and writes each tap to the columns, with its time', () => {
    const { press, text } = open(KNOWN)
    press(/^Begin/u)
    expect(text('trialSteps')).toMatch(/^bare; empty; .+F; .+F; .+F; empty; bare$/u)
    press(/^same$/u)
    press(/^Next step$/u)
    press(/^gone$/u)
    press(/^good$/u)
    press(/^agreed$/u)
    expect(text('trialNoise')).toBe('; same; gone')
    expect(text('trialSignal')).toBe('; ; good')
    expect(text('trialRepeats')).toBe('; ; agreed')
    expect(text('trialTimes')).toMatch(/^; \d\d:\d\d; \d\d:\d\d$/u)
  })

  it('adds a value at hand, and refuses one that the signal does not stand, or that is none', () => {
    const { host, press, text } = open({ ...KNOWN, trialSteps: 'bare; empty; 1n; empty; bare' })
    const add = (value: string) => {
      const input = host.querySelector<HTMLInputElement>('#trial-add')
      if (input === null) throw new Error('no field')
      act(() => {
        input.value = value
        input.dispatchEvent(new Event('input', { bubbles: true }))
      })
      press(/^Add$/u)
      return host.querySelector('[role="alert"]')?.textContent?.replaceAll('\u00a0', ' ') ?? ''
    }
    expect(add('2.2n')).toBe('')
    expect(text('trialSteps')).toBe('bare; empty; 1n; 2.2n; empty; bare')
    expect(add('1 uF')).toMatch(/^The signal stands .+: a larger one is not tried\.$/u)
    expect(add('soon')).toMatch(/not a number/u)
    expect(text('trialSteps')).toBe('bare; empty; 1n; 2.2n; empty; bare')
  })

  it('takes a choice back at a second tap', () => {
    const { press, text } = open({ ...KNOWN, trialSteps: 'bare; empty; 1n; empty; bare' })
    press(/^same$/u)
    press(/^✓ same$/u)
    expect(text('trialNoise') ?? '').toBe('')
  })

  it('offers no value before the safety questions are answered', () => {
    const { host } = open(KNOWN, 'unknown')
    expect(host.textContent).toContain('the safety questions')
    expect([...host.querySelectorAll('button')].some(({ textContent }) => textContent?.startsWith('Begin'))).toBe(false)
  })

  it('refuses a barred line in words, with nothing to press', () => {
    for (const { host } of [open(KNOWN, 'barred'), open({ lineKind: 'pyrotechnic' })]) {
      expect(host.textContent).toContain('No trial on this line.')
      expect(host.querySelectorAll('button')).toHaveLength(0)
    }
  })

  it('puts a trial away only once its adapter is written out, and then it still counts', () => {
    const steps = { ...KNOWN, trialSteps: 'bare; empty; 1n; empty; bare', trialNoise: '; same; gone; same; same' }
    const waiting = open(steps)
    expect(
      [...waiting.host.querySelectorAll('button')].find(({ textContent }) => /Put it away/u.test(textContent ?? ''))
        ?.disabled,
    ).toBe(true)
    const { press, line, model } = open({ ...steps, trialRemoved: 'A. M., 14:35' })
    press(/^Put it away/u)
    expect(line.peek().facts.trialSteps).toBeUndefined()
    expect(line.peek().trials).toMatchObject([{ steps: 'bare; empty; 1n; empty; bare', removed: 'A. M., 14:35' }])
    expect(model.fields.peek().find(({ key }) => key === 'noise')).toMatchObject({
      text: '; same; gone; same; same',
      origin: { by: 'trial' },
    })
  })
})
