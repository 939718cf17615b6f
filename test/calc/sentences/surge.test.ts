/**
 * Stories of the surge check and the sentence each is answered with. Waveform 4, level 3: 300 V behind 5 Ω (DO-160G
 * table 22-2), all of it at a load that takes no current.
 */
import { expect, it, test } from 'vitest'
import { surgeCheck } from '../../../src/calc/checks/surge/check.ts'
import { run } from '../../support/run-check.ts'
import { answered } from '../../support/sentence.ts'

const pulse = { waveform: 'wf4', level: '3' }
const box = { ...pulse, withstandV: '80' }
const part = { standoffV: '33', ratedPulseW: '1500', suppressorLeadH: '0', busMaxV: '32', busMinV: '0' }

test.each([
  [box, 'fails', 'The circuit survives: no. The load peaks at 300 V, the circuit withstands 80 V.', undefined],
  [
    // a dead line, said to be one: of an unnamed line what it holds comes on top and is asked for
    { ...pulse, withstandV: '400', busMaxV: '0', busMinV: '0' },
    'ok',
    'The circuit survives: yes. The load peaks at 300 V, the circuit withstands 400 V.',
    undefined,
  ],
  [
    { ...box, ...part, ambientC: '25' },
    'ok',
    /^Circuit and suppressor survive: yes\. The load peaks at 6\d(\.\d)? V, the circuit withstands 80 V; the suppressor uses 5\d(\.\d)? % of its rating\.$/u,
    undefined,
  ],
  [
    { ...box, ...part, ratedPulseW: '1000', ambientC: '85' },
    'fails',
    /^The suppressor survives: no\. The pulse uses 1\d\d % of what its 1 kW 10\/1000 µs rating allows/u,
    undefined,
  ],
  [pulse, 'unknown', 'Not known: needs what the circuit withstands. The load peaks at 300 V.', 'withstandV'],
  [
    { ...box, ...part },
    'unknown',
    /^Not known: needs the temperature of the suppressor\. As assumed it would be “yes” \(Circuit and suppressor survive\): the load peaks at 6\d/u,
    'ambientC',
  ],
  [{}, 'unknown', 'Not known: needs the level or the open-circuit volts.', 'level'],
] as const)('%j is %s', (texts, verdict, sentence, needs) => {
  const said = answered(surgeCheck, texts)
  if (typeof sentence === 'string') expect(said.sentence).toBe(sentence)
  else expect(said.sentence).toMatch(sentence)
  expect(said).toMatchObject({ verdict, needs })
})

it('says of everything it judges whether it survives, in the words of every verdict', () => {
  const words = (texts: Record<string, string>) =>
    ['circuitVerdict', 'suppressorVerdict'].map((key) => {
      const cell = run(surgeCheck, texts).outputs[key]?.cell
      return cell?.is === 'word' ? cell.word : cell?.is
    })
  expect(words({ ...box, ...part, ambientC: '25' })).toEqual(['yes', 'yes'])
  expect(words({ ...box, ...part, ratedPulseW: '1000', ambientC: '85' })).toEqual(['yes', 'no'])
  expect(words(pulse)).toEqual(['not known', 'none'])
})
