// @vitest-environment happy-dom
import { describe, expect, it, vi } from 'vitest'
import { canShareFiles, type FileWays, fileName, saveFile, shareFile } from '../../src/state/files.ts'

const file = { name: 'J1.csv', type: 'text/csv', content: 'contact\r\n1\r\n' }
const waysWith = (ways: Omit<Partial<FileWays>, 'save'>) => ({ ...ways, save: vi.fn<FileWays['save']>() })

describe('a file that goes out', () => {
  it('goes to the share sheet where that takes files', async () => {
    const share = vi.fn<(data: ShareData) => Promise<void>>(async () => undefined)
    const ways = waysWith({ share, canShare: () => true })
    expect(await shareFile(file, 'J1', ways)).toBe('shared')
    const sent = share.mock.calls[0]?.[0]
    expect(sent?.title).toBe('J1')
    expect(sent?.files?.[0]?.name).toBe('J1.csv')
    expect(await sent?.files?.[0]?.text()).toBe(file.content)
    expect(ways.save).not.toHaveBeenCalled()
  })

  it('is saved where the sheet takes none, is not there, or fails; not where the user closed it', async () => {
    const refusing = waysWith({ share: vi.fn(), canShare: () => false })
    expect(await shareFile(file, '', refusing)).toBe('saved')
    expect(refusing.share).not.toHaveBeenCalled()
    expect(await shareFile(file, '', waysWith({}))).toBe('saved')
    const failing = waysWith({
      canShare: () => true,
      share: () => Promise.reject(new DOMException('', 'NotAllowedError')),
    })
    expect(await shareFile(file, '', failing)).toBe('saved')
    expect(failing.save).toHaveBeenCalledOnce()
    const closed = waysWith({ canShare: () => true, share: () => Promise.reject(new DOMException('', 'AbortError')) })
    expect(await shareFile(file, '', closed)).toBe('dismissed')
    expect(closed.save).not.toHaveBeenCalled()
  })

  it('takes a browser that throws at the question for one that cannot', () => {
    const throwing = waysWith({
      canShare: () => {
        throw new TypeError('no files')
      },
    })
    expect(canShareFiles(throwing, 'text/csv')).toBe(false)
  })

  it('is saved with its content', async () => {
    const ways = waysWith({})
    saveFile(file, ways)
    expect(await ways.save.mock.calls[0]?.[0].text()).toBe(file.content)
  })

  it('has a name every file system takes', () => {
    expect(fileName(['J1 / Fühler: “A”', 'supplier', '2026-11-26'], 'csv')).toBe('J1-Fuhler-A-supplier-2026-11-26.csv')
    expect(fileName(['…'], 'svg')).toBe('connector.svg')
    expect(fileName(['x'.repeat(300)], 'svg').length).toBeLessThan(70)
  })
})
