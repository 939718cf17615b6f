// @vitest-environment happy-dom
/** From a kind of line that was chosen to its card: on the page of a check and on that of a contact. */
import 'fake-indexeddb/auto'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { pages } from '../../src/guide/book/lines/lines.ts'
import { LINE_KINDS } from '../../src/reference/line-kinds.ts'
import { loadComplaints } from '../../src/state/complaints.ts'
import { changeConnector } from '../../src/state/connectors.ts'
import { restartScratch } from '../../src/state/session.ts'
import { newLine } from '../../src/store/line.ts'
import { LineCardLink } from '../../src/ui/parts/line-card-link.tsx'
import { CheckScreen } from '../../src/ui/screens/check.tsx'
import { isResumed } from '../../src/ui/shell/start.ts'
import { withConnector } from './connector-support.tsx'
import { allBy, eventually, show } from './support.ts'

const cards = (): readonly (string | null)[] => allBy('link', /^Line card/).map((link) => link.getAttribute('href'))

/** Shows a check as a link does, in an entry of the history that is new. */
function open(check: string, kind: string): void {
  show(null)
  history.pushState(null, '', `#/check/${check}?lineKind=${kind}`)
  show(<CheckScreen id={check} query={[{ key: 'lineKind', text: kind }]} />)
}

beforeEach(async () => {
  isResumed.value = true
  await loadComplaints()
})
afterEach(() => {
  show(null)
  restartScratch()
})

describe('the link to a line card', () => {
  it.each(['loading', 'window', 'surge'])(
    'stands beside the kind in %s, and not where none is chosen',
    async (check) => {
      open(check, '')
      await eventually('the field', () => document.getElementById('in-lineKind') ?? undefined)
      expect(cards()).toEqual([])
      open(check, 'can')
      await eventually('the card', () => (cards().length > 0 ? true : undefined))
      expect(cards()).toEqual(['#/notes/line-can'])
    },
  )

  it('stands with the line of a contact', async () => {
    const {
      open: openConnector,
      connector,
      complaint,
    } = await withConnector({ contacts: [{ id: '7', type: 'line', texts: {} }] })
    const line = {
      ...newLine('fuel'),
      facts: { lineKind: { text: 'fuel-quantity', origin: { by: 'user' } } },
    } as const
    changeConnector(complaint.id, connector.id, { contacts: [{ id: '7', type: 'line', texts: {}, lineId: line.id }] }, [
      line,
    ])
    await openConnector('contact', '7')
    const link = await eventually(
      'the card',
      () => document.querySelector('section[aria-label="Its line"] a[href^="#/notes/"]') ?? undefined,
    )
    expect(link.getAttribute('href')).toBe('#/notes/line-fuel-quantity')
  })

  it('leads to a page that exists, whatever the kind', () => {
    const ids = new Set(pages().map(({ id }) => `#/notes/${id}`))
    for (const { id } of LINE_KINDS) {
      show(<LineCardLink kind={id} />)
      expect(ids.has(cards()[0] ?? '')).toBe(true)
    }
  })
})
