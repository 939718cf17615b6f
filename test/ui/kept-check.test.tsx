// @vitest-environment happy-dom
/** What a key in a kept check draws anew: the field and the answer, not the frame around them. */
import 'fake-indexeddb/auto'
import { options } from 'preact'
import { act } from 'preact/test-utils'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { complaints, loadComplaints, rename } from '../../src/state/complaints.ts'
import { createFromCheck } from '../../src/state/new-complaint.ts'
import { newLine } from '../../src/store/line.ts'
import { KeptCheckScreen } from '../../src/ui/screens/kept-check.tsx'
import { Head } from '../../src/ui/shell/head.tsx'
import { isResumed } from '../../src/ui/shell/start.ts'
import { by, output, settle, show, type, until } from './support.ts'

let headsDrawn = 0
const { vnode: noteBefore } = options

beforeEach(async () => {
  options.vnode = (vnode) => {
    noteBefore?.(vnode)
    if (vnode.type === Head) headsDrawn += 1
  }
  isResumed.value = true
  await loadComplaints()
})
afterEach(() => {
  show(null)
  if (noteBefore === undefined) delete options.vnode
  else options.vnode = noteBefore
})

describe('the frame of a kept check', () => {
  it('is not drawn anew by a key, but by a new title of its complaint', async () => {
    const facts = { limitDb: { text: '50', origin: { by: 'user' } as const } }
    const line = { ...newLine('J3-14'), facts }
    const { id } = createFromCheck({ title: 'Hum', check: 'need', line })
    const place = show(<KeptCheckScreen complaintId={id} lineId={line.id} checkId="need" />)
    await until('form')
    await settle()
    const before = headsDrawn
    for (const text of ['7', '71', '71.3']) await type(by('textbox', 'Measured level'), text)
    // 71.3 − 50 + 6
    expect(Number(output('neededDb')?.si)).toBeCloseTo(27.3, 10)
    expect(complaints.value?.find((one) => one.id === id)?.lines[0]?.facts.measuredDb?.text).toBe('71.3')
    expect(headsDrawn).toBe(before)
    await act(async () => rename(id, 'Hum on the left'))
    expect(place.querySelector('a.up')?.textContent).toBe('Hum on the left')
    expect(headsDrawn).toBe(before + 1)
  })
})
