// @vitest-environment happy-dom
import { describe, expect, it, vi } from 'vitest'
import { share, sharedText } from '../../src/state/share.ts'

const shared = { title: 'Window', text: '3.3 nF\nScreening estimate.', url: 'https://host.test/#/check/window?a=1' }

describe('sharing', () => {
  it('uses the share sheet where there is one', async () => {
    const send = vi.fn(async () => undefined)
    expect(await share(shared, { share: send })).toBe('shared')
    expect(send).toHaveBeenCalledWith(shared)
  })

  it('says nothing when the user closes the sheet', async () => {
    const copy = vi.fn(async () => undefined)
    const ways = { share: () => Promise.reject(new DOMException('closed', 'AbortError')), copy }
    expect(await share(shared, ways)).toBe('dismissed')
    expect(copy).not.toHaveBeenCalled()
  })

  it('copies where there is no sheet or the sheet fails', async () => {
    const copy = vi.fn(async () => undefined)
    expect(await share(shared, { copy })).toBe('copied')
    expect(await share(shared, { share: () => Promise.reject(new TypeError('no')), copy })).toBe('copied')
    expect(copy).toHaveBeenCalledWith(sharedText(shared))
  })

  it('shows the text where nothing else is allowed', async () => {
    expect(await share(shared, { copy: () => Promise.reject(new DOMException('no', 'NotAllowedError')) })).toBe('shown')
    expect(await share(shared, {})).toBe('shown')
  })

  it('hands on title, words and address, one under the other', () => {
    expect(sharedText(shared)).toBe('Window\n3.3 nF\nScreening estimate.\nhttps://host.test/#/check/window?a=1')
  })
})
