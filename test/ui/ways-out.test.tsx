// @vitest-environment happy-dom
import 'fake-indexeddb/auto'
import { act } from 'preact/test-utils'
import { describe, expect, it, vi } from 'vitest'
import { add, loadComplaints } from '../../src/state/complaints.ts'
import { newComplaint } from '../../src/store/new-complaint.ts'
import { reportTrouble, StoreError } from '../../src/store/trouble.ts'
import { ComplaintScreen } from '../../src/ui/screens/complaint.tsx'
import { Log } from '../../src/ui/screens/log.tsx'
import { isAboutOpen } from '../../src/ui/shell/head.tsx'
import { Notices } from '../../src/ui/shell/notices.tsx'
import { allBy, by, eventually, show, tap } from './support.ts'

describe('ways out of a storage that cannot be used as it is', () => {
  it.each(['newer', 'missing'] as const)(
    '%s: reload, save what can be read, erase; the Log calls nothing empty',
    async (is) => {
      await loadComplaints()
      show(
        <>
          <Log />
          <Notices />
        </>,
      )
      expect(document.body.textContent).toContain('Nothing kept yet')
      await act(async () => reportTrouble(new StoreError(is)))
      await eventually('the way out', () => allBy('button', 'Save what can be read')[0])
      expect(document.body.textContent).not.toContain('Nothing kept yet')
      expect(allBy('button', 'Reload')).toHaveLength(1)
      await tap(by('button', 'Save what can be read'))
      await eventually(
        'the answer',
        () => /No complaint can be read/u.test(document.body.textContent ?? '') || undefined,
      )
      await tap(by('button', 'Erase, in About'))
      expect(isAboutOpen.value).toBe(true)
      isAboutOpen.value = false
      await act(async () => reportTrouble(undefined))
      expect(allBy('button', 'Save what can be read')).toHaveLength(0)
    },
  )

  it('tells in a complaint what this version does not understand, and only there', async () => {
    await loadComplaints()
    const kept = [{ at: 'facts.fluxWb', value: { text: '3 mWb' } }]
    const odd = add({ ...newComplaint({ title: 'Odd' }), kept })
    const plain = add(newComplaint({ title: 'Plain' }))
    show(<ComplaintScreen id={odd.id} />)
    const told = await eventually('the notice', () => allBy('region', 'Not understood by this version')[0])
    expect(told.textContent).toMatch(/1 part .*is not understood.*Nothing of that is lost.*facts\.fluxWb.*3 mWb/u)
    show(<ComplaintScreen id={plain.id} />)
    await vi.waitFor(() => expect(document.querySelector('h1')?.textContent).toBe('Plain'))
    expect(allBy('region', 'Not understood by this version')).toHaveLength(0)
  })
})
