import { describe, expect, it } from 'vitest'
import { recordOf } from '../../src/store/complaint.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { restoreRecord } from '../../src/store/restore.ts'

const withAddress = (address: unknown) =>
  restoreRecord({ ...recordOf(newComplaint()), checks: [{ check: 'need', address }] })

describe('the address of a kept check', () => {
  it('is one of a check of this app, with or without a query', () => {
    for (const address of ['#/check/need', '#/check/need?measuredDb=61', '#/check/window?x=<b>'])
      expect(withAddress(address).checks).toEqual([{ check: 'need', address }])
  })

  it('is set aside where it is anything else, and never becomes a link', () => {
    for (const address of [
      'javascript:alert(1)',
      'https://elsewhere.example/#/check/need',
      '//elsewhere.example',
      '#/log/x',
      '#/check/nothing',
      '#/check/need/../../x',
      ' #/check/need',
      '',
      7,
    ]) {
      const { checks, kept } = withAddress(address)
      expect(checks, String(address)).toEqual([])
      expect(kept).toEqual([{ at: 'checks.0', value: { check: 'need', address } }])
    }
  })
})
