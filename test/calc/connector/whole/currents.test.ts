import { describe, expect, it } from 'vitest'
import { chargesOf } from '../../../../src/calc/connector/whole/charges.ts'
import { chassisCurrents, netOf } from '../../../../src/calc/connector/whole/currents.ts'
import { navyFindings } from '../../../../src/calc/connector/whole/navy.ts'
import { powerFindings } from '../../../../src/calc/connector/whole/power-findings.ts'
import { phaseOf, suppliedContacts } from '../../../../src/calc/connector/whole/supplied.ts'
import { connectorOf, contactOf } from '../../../support/decided-contact.ts'
import { random } from '../../../support/seeded.ts'

const AC = { lineKind: 'power-115-vac-400', workingRmsV: '115', supplyHz: '400' }
const exactly = { leastFrac: 1, mostFrac: 1 }

const phases = (farads: readonly number[], more = exactly) => {
  const decided = farads.map((capacitanceF, i) => contactOf(`${i + 1}`, AC, { capacitanceF, ...more }))
  const texts = Object.fromEntries(decided.map(({ id }, i) => [id, { phase: 'ABC'[i % 3] as string }]))
  return { decided, connector: connectorOf(decided, {}, texts) }
}
const suppliedOf = ({ connector, decided }: ReturnType<typeof phases>) => suppliedContacts(connector, decided).supplied

describe('currents into the chassis', () => {
  // 100 nF at 115 V 400 Hz: 28.9 mA, and 20 nF at 118 V 800 Hz: 11.9 mA (MIL-STD-461 worked figures of the power check)
  it('of one contact are those of one line', () => {
    const [one] = [chassisCurrents(suppliedOf(phases([100e-9])))]
    expect(one?.totalA).toBeCloseTo(28.9e-3, 4)
    const wild = contactOf('1', { lineKind: 'power-115-vac-variable' }, { capacitanceF: 20e-9, ...exactly })
    const { supplied } = suppliedContacts(connectorOf([wild]), [wild])
    expect(chassisCurrents(supplied).netA).toBeCloseTo(11.9e-3, 4)
  })

  it('of three balanced phases cancel, and one phase lost leaves the current of one', () => {
    const found = chassisCurrents(suppliedOf(phases([100e-9, 100e-9, 100e-9])))
    expect(found.netA).toBeLessThan(1e-12)
    expect(found.phaseLostA).toBeCloseTo(found.byPhaseA.A, 12)
    expect(found.totalA).toBeCloseTo(3 * found.byPhaseA.A, 12)
  })

  it('over the tolerances are the most of any place, phasors drawn one by one', () => {
    const rand = random(7)
    for (let round = 0; round < 40; round++) {
      const given = phases(
        Array.from({ length: 1 + Math.floor(5 * rand()) }, () => 10e-9 * (0.2 + rand())),
        { leastFrac: 0.5, mostFrac: 1.2 },
      )
      const supplied = suppliedOf(given)
      const found = chassisCurrents(supplied)
      let most = 0
      for (let k = 0; k < 200; k++) {
        let [re, im] = [0, 0]
        supplied.forEach((one, i) => {
          const farads = one.leastF + (one.mostF - one.leastF) * (k % 3 === 0 ? Math.round(rand()) : rand())
          const amps = 2 * Math.PI * 400 * 115 * farads
          re += amps * Math.cos((2 * Math.PI * (i % 3)) / 3)
          im += amps * Math.sin((2 * Math.PI * (i % 3)) / 3)
        })
        most = Math.max(most, Math.hypot(re, im))
      }
      expect(found.netA).toBeGreaterThanOrEqual(most * (1 - 1e-12))
      expect(found.netA).toBeLessThan(most * 1.5)
    }
  })

  it('of a contact without a phase add in full', () => {
    const { decided } = phases([100e-9, 100e-9, 100e-9])
    const found = chassisCurrents(suppliedContacts(connectorOf(decided), decided).supplied)
    expect(found.netA).toBeCloseTo(found.totalA, 12)
    expect(found.phaseLostA).toBeUndefined()
  })

  it('are not made little by a typed supply that is none of its kind: 115 V AC as DC, or at 11.5 V, is open', () => {
    const found = (typed: Readonly<Record<string, string>>, lineKind = AC.lineKind) => {
      const decided = [contactOf('1', { ...AC, lineKind, ...typed }, { capacitanceF: 1e-6, ...exactly })]
      const connector = { ...connectorOf(decided), texts: { chassisLimitA: '30 mA' } }
      return powerFindings(connector, suppliedContacts(connector, decided)).map(({ id }) => id)
    }
    for (const typed of [{ supplyHz: '0' }, { workingRmsV: '11.5' }, { supplyHz: '60' }])
      expect(found(typed)).toContain('supply-unread')
    expect(found({})).toContain('chassis-current')
    expect(found({})).not.toContain('supply-unread')
    // a 14 V bus is entered as one of 28 V
    expect(found({ workingRmsV: '14', supplyHz: '0' }, 'power-28-vdc')).not.toContain('supply-unread')
  })

  it('are judged against what the box may put there, with a phase lost', () => {
    const given = phases([100e-9, 100e-9, 100e-9])
    const judged = (chassisLimitA: string) => {
      const connector = { ...given.connector, texts: { chassisLimitA } }
      return powerFindings(connector, suppliedContacts(connector, given.decided)).find(
        ({ id }) => id === 'chassis-current',
      )?.verdict
    }
    expect(judged('28 mA')).toBe('fails')
    expect(judged('30 mA')).toBe('ok')
    const refused = powerFindings(
      { ...given.connector, texts: { chassisLimitA: 'ten' } },
      suppliedContacts(given.connector, given.decided),
    )
    expect(refused[0]).toMatchObject({ verdict: 'unknown' })
  })

  it('are inside a limit only where every contact is counted', () => {
    const given = phases([100e-9, 100e-9, 100e-9])
    const decided = [...given.decided, contactOf('4', { ...AC, supplyHz: 'mains' }, { capacitanceF: 1e-6 })]
    const judged = (chassisLimitA: string) =>
      powerFindings({ ...given.connector, texts: { chassisLimitA } }, suppliedContacts(given.connector, decided)).find(
        ({ id }) => id === 'chassis-current',
      )
    expect(judged('30 mA')?.verdict).toBe('unknown')
    expect(judged('30 mA')?.sentence).toContain('contacts left out not counted')
    expect(judged('28 mA')?.verdict).toBe('fails')
  })

  // 2π · 400 Hz · 100 nF · 115 V = 28.9 mA, whatever the kind of line is called
  it('count volts that were entered on a line of any kind, and are no yes beside a line of which nothing is said', () => {
    const of = (...decided: ReturnType<typeof contactOf>[]) => {
      const connector = connectorOf(decided, { texts: { chassisLimitA: '28 mA', navyRule: 'true', loadW: '2k' } })
      const power = suppliedContacts(connector, decided)
      const judged = (said: readonly { id: string; verdict?: string }[], id: string) =>
        said.find((one) => one.id === id)?.verdict
      return [
        judged(powerFindings(connector, power), 'chassis-current'),
        judged(navyFindings(connector, power), 'navy-rule'),
      ]
    }
    const small = contactOf('1', AC, { capacitanceF: 1e-9 })
    const typed = { lineKind: 'not-listed', workingRmsV: '115', supplyHz: '400 Hz' }
    expect(of(small)).toEqual(['ok', 'ok'])
    expect(of(contactOf('2', typed, { capacitanceF: 100e-9 }))).toEqual(['fails', 'fails'])
    for (const mute of [{}, { lineKind: 'not-listed' }])
      expect(of(small, contactOf('2', mute, { capacitanceF: 1e-9 }))).toEqual(['unknown', 'unknown'])
    expect(of(small, contactOf('2', {}))).toEqual(['ok', 'ok'])
    expect(of(small, contactOf('2', { lineKind: 'can' }, { capacitanceF: 1e-9 }))).toEqual(['ok', 'ok'])
  })

  it('read a phase as people write it', () => {
    expect(['A', 'phase b', ' c ', 'N', 'neutral', 'x', ''].map(phaseOf)).toEqual([
      'A',
      'B',
      'C',
      'neutral',
      'neutral',
      undefined,
      undefined,
    ])
    expect(netOf(1, 1, 0)).toBeCloseTo(1, 12)
  })
})

describe('the Navy rule of the box', () => {
  const ruled = (given: ReturnType<typeof phases>, loadW = '') => {
    const connector = { ...given.connector, texts: { navyRule: 'true', loadW } }
    return navyFindings(connector, suppliedContacts(connector, given.decided))
  }

  it('is 20 nF for each 400 Hz line, contacts of one phase together', () => {
    expect(ruled(phases([20e-9, 20e-9, 20e-9]))[0]?.verdict).toBe('ok')
    expect(ruled(phases([21e-9, 20e-9, 20e-9]))[0]).toMatchObject({ verdict: 'fails', contacts: ['1'] })
    expect(ruled(phases([11e-9, 1e-9, 1e-9, 11e-9]))[0]).toMatchObject({ verdict: 'fails', contacts: ['1', '4'] })
    expect(ruled(phases([18e-9], { leastFrac: 0.8, mostFrac: 1.2 }))[0]?.verdict).toBe('fails')
  })

  // 2 kW: 0.15 µF; below 0.5 kW 0.03 µF
  it('on DC goes by the load of the box', () => {
    const dc = (farads: number, count = 1) => {
      const decided = Array.from({ length: count }, (_, i) =>
        contactOf(`${i + 1}`, { lineKind: 'power-28-vdc' }, { capacitanceF: farads, ...exactly }),
      )
      return { decided, connector: connectorOf(decided) }
    }
    expect(ruled(dc(150e-9), '2 kW')[0]?.verdict).toBe('ok')
    expect(ruled(dc(151e-9), '2 kW')[0]?.verdict).toBe('fails')
    expect(ruled(dc(30e-9), '400 W')[0]?.verdict).toBe('ok')
    expect(ruled(dc(31e-9), '400 W')[0]?.verdict).toBe('fails')
    expect(ruled(dc(30e-9))[0]?.verdict).toBe('unknown')
    expect(ruled(dc(20e-9, 2), '400 W')[0]?.verdict).toBe('marginal')
  })

  it('is no yes while a contact without a phase may be on the fullest one, nor by a phase written on DC', () => {
    const decided = [15e-9, 15e-9].map((capacitanceF, i) => contactOf(`${i + 1}`, AC, { capacitanceF, ...exactly }))
    expect(ruled({ decided, connector: connectorOf(decided, {}, { 1: { phase: 'A' } }) })[0]).toMatchObject({
      verdict: 'marginal',
      contacts: ['2', '1'],
    })
    expect(
      ruled({ decided, connector: connectorOf(decided, {}, { 1: { phase: 'A' }, 2: { phase: 'B' } }) })[0]?.verdict,
    ).toBe('ok')
    const dc = ['1', '2'].map((id) => contactOf(id, { lineKind: 'power-28-vdc' }, { capacitanceF: 20e-9, ...exactly }))
    const named = connectorOf(dc, {}, { 1: { phase: 'A' }, 2: { phase: 'B' } })
    expect(ruled({ decided: dc, connector: named }, '400 W')[0]?.verdict).toBe('marginal')
  })

  // 10 nF stand beside 4 · 10 nF in series with its resistor: 50 nF to chassis, over 20 nF
  it('counts the capacitor of a damper', () => {
    const damped = { ...AC, dampF: '40n', dampOhm: '10', toleranceFrac: '0' }
    const decided = [contactOf('1', damped, { capacitanceF: 10e-9, ...exactly })]
    expect(ruled({ decided, connector: connectorOf(decided, {}, { 1: { phase: 'A' } }) })[0]?.verdict).toBe('fails')
  })

  it('says nothing where it was not chosen', () => {
    const given = phases([1e-6])
    expect(navyFindings(given.connector, suppliedContacts(given.connector, given.decided))).toEqual([])
  })
})

describe('what is charged', () => {
  it('adds the peaks of every contact through its own wiring, and what all hold', () => {
    const wired = (id: string, ohm: string) =>
      contactOf(
        id,
        { lineKind: 'power-28-vdc', workingRmsV: '28', supplyHz: '0', wiringOhm: ohm },
        { capacitanceF: 1e-6, ...exactly },
      )
    const decided = [wired('1', '1'), wired('2', '4')]
    const found = chargesOf(suppliedContacts(connectorOf(decided), decided).supplied)
    expect(found.inrushA).toBeCloseTo(28 + 7, 9)
    expect(found.storedJ).toBeCloseTo(2 * 0.5 * 1e-6 * 28 ** 2, 12)
    expect(found.chargeC).toBeCloseTo(56e-6, 12)
  })

  // 28 V, 1 Ω, 1 µH: ζ = R/2·√(C/L); 1.2 µF 0.548, overshoot e^(−π·0.548/0.837) = 12.8 %; 0.2 µF 0.224, 48.6 %
  it('rings highest with the least capacitor, and to twice the volts where no inductance is entered', () => {
    const wired = (more: Readonly<Record<string, string>>) => {
      const decided = [
        contactOf(
          '1',
          { lineKind: 'power-28-vdc', workingRmsV: '28', supplyHz: '0', wiringOhm: '1', ...more },
          { capacitanceF: 1e-6, leastFrac: 0.2, mostFrac: 1.2 },
        ),
      ]
      return chargesOf(suppliedContacts(connectorOf(decided), decided).supplied).inrushV ?? 0
    }
    expect(wired({ wiringH: '1u' })).toBeCloseTo(28 * 1.4864, 1)
    expect(wired({})).toBe(56)
    expect(wired({ wiringH: '0' })).toBe(28)
  })

  it('says whose wiring is missing', () => {
    const decided = [contactOf('7', { lineKind: 'power-28-vdc' }, { capacitanceF: 1e-6 })]
    const power = suppliedContacts(connectorOf(decided), decided)
    const inrush = powerFindings(connectorOf(decided), power).find(({ id }) => id === 'inrush')
    expect(inrush).toMatchObject({ verdict: 'unknown' })
    expect(inrush?.sentence).toContain('contact 7')
  })
})
