import { useEffect, useMemo } from 'preact/hooks'
import { checkById } from '../../calc/registry.ts'
import { isEvidence, nodeById, replay } from '../../guide/engine.ts'
import { translateEvents } from '../../guide/retired.ts'
import type { Guide } from '../../guide/types.ts'
import { SHEET_CAUTIONS } from '../../reference/safety.ts'
import { adoptChecks } from '../../state/adopt.ts'
import { type Complaint, complaints, openComplaint, opened } from '../../state/complaints.ts'
import { connectorsOf } from '../../state/connectors.ts'
import { guide, loadGuide } from '../../state/guide-content.ts'
import { goTo, hashOf } from '../../state/router.ts'
import { resumeComplaint } from '../../state/session.ts'
import { lazy } from '../lazy.tsx'
import { FoldedCautions } from '../parts/cautions.tsx'
import { Closed } from '../parts/closed.tsx'
import { useFormer } from '../parts/former.ts'
import { Icon } from '../parts/icon.tsx'
import { OpenTests } from '../parts/open-tests.tsx'
import { PrintHead } from '../parts/print-head.tsx'
import { Screening } from '../parts/screening.tsx'
import { WhenNear } from '../parts/when-near.tsx'
import { Head } from '../shell/head.tsx'
import { Nowhere } from '../shell/nowhere.tsx'
import { offerSheet } from '../shell/offered-sheet.ts'
import { ComplaintActions, NOT_SHARED, sharedHash } from './complaint-actions.tsx'
import { Connectors } from './connector/connectors.tsx'
import { Handover } from './handover.tsx'
import { KeptLine } from './kept-line.tsx'
import { DeleteLine, LineName } from './line-name.tsx'
import { dayAndTime } from './moment.ts'
import { TitleAndNote } from './title-and-note.tsx'

const FillInTable = lazy(async () => (await import('../parts/fill-in.tsx')).FillInTable)
const CloseOut = lazy(async () => (await import('./close-out.tsx')).CloseOut)
const PartsAside = lazy(async () => (await import('./parts-aside.tsx')).PartsAside, null)
const Photos = lazy(async () => (await import('../parts/photos.tsx')).Photos)

/** One complaint of the log: everything known about it, and ways to go on. */
export function ComplaintScreen({ id }: { readonly id: string }) {
  useEffect(() => {
    openComplaint(id)
    loadGuide().catch(() => undefined)
  }, [id])
  const complaint = opened.value?.id === id ? opened.value : complaints.value?.find((each) => each.id === id)
  if (complaints.value === undefined)
    return (
      <p class="loading" role="status">
        Reading the log…
      </p>
    )
  if (!complaint) return <Nowhere path={`#/log/${id}`} what="complaint on this device" />
  return <Open key={id} complaint={complaint} />
}

function Open({ complaint }: { readonly complaint: Complaint }) {
  const { id } = complaint
  const content = guide.value
  const still = useStill(complaint)
  useEffect(() => adoptChecks(still), [still])
  useComplaintSheet(id)
  return (
    <>
      <Head title={complaint.title || 'Untitled complaint'}>
        <a class="up" href="#/log">
          <Icon name="back" />
          All complaints
        </a>
        <p class="muted small">
          begun <Moment at={complaint.createdAt} />, changed <Moment at={complaint.updatedAt} />
          {complaint.isDemo ? ', demo (invented)' : ''}
        </p>
      </Head>
      <PrintHead />
      <div class="panes">
        <div class="pane stack">
          <TitleAndNote complaint={complaint} />
          {useMemo(
            () => (
              <>
                {isOfTriage(still) && <TriageTrail complaint={still} guide={content} />}
                <LooseChecks complaint={still} />
              </>
            ),
            [still, content],
          )}
        </div>
        {useMemo(
          () => (
            <div class="pane stack">
              <Connectors complaintId={id} />
              <LooseLines complaint={still} />
              {isOfTriage(still) && <CloseOut complaint={still} />}
            </div>
          ),
          [still],
        )}
      </div>
      {useMemo(
        () => (
          <>
            <SetAside complaint={still} />
            <ComplaintActions complaint={still} />
          </>
        ),
        [still],
      )}
      <FoldedCautions ids={SHEET_CAUTIONS} />
      <Screening />
    </>
  )
}

const Moment = ({ at }: { readonly at: string }) => <time dateTime={at}>{dayAndTime(at)}</time>

const MOVING: readonly string[] = ['note', 'rivals', 'updatedAt', 'turn']

/**
 * The complaint as it was when anything but its note last changed: what does not show the note is not drawn anew with
 * every key in it.
 */
const useStill = (complaint: Complaint): Complaint => useFormer(complaint, differInNoteAlone)

function differInNoteAlone(former: Complaint, now: Complaint): boolean {
  const [was, is] = [former, now].map((one) => new Map<string, unknown>(Object.entries(one)))
  const keys = [...(was?.keys() ?? []), ...(is?.keys() ?? [])]
  return keys.every((key) => MOVING.includes(key) || was?.get(key) === is?.get(key))
}

/** The lines no contact of a connector carries: those that do are opened there, one by one. */
function LooseLines({ complaint: { id, lines, checks } }: { readonly complaint: Complaint }) {
  const connectors = connectorsOf(id).value
  if (connectors === undefined) return null
  const carried = new Set(connectors.flatMap(({ contacts }) => contacts.map(({ lineId }) => lineId)))
  return (
    <>
      {lines.map((line, index) => {
        if (carried.has(line.id)) return null
        const title = line.name || (lines.length > 1 ? `line ${index + 1}` : '')
        return (
          <WhenNear key={line.id} heading={title || 'Line'} isAtOnce={index < AT_ONCE}>
            <KeptLine complaintId={id} line={line} title={title} checks={checks} />
            <details class="fold">
              <summary>Rename or delete {line.name || 'this line'}</summary>
              <LineName complaintId={id} line={line} />
              <DeleteLine complaintId={id} line={line} />
            </details>
          </WhenNear>
        )
      })}
    </>
  )
}

/** Lines that are drawn wherever they stand: a complaint seldom has more. */
const AT_ONCE = 4

/** The sheet is laid out from what is known when it is printed. */
function useComplaintSheet(id: string): void {
  useEffect(
    () =>
      offerSheet(
        import('../paper/complaint-sheet.tsx').then(({ layComplaintSheet }) => () => {
          const complaint = complaints.peek()?.find((each) => each.id === id)
          if (complaint === undefined) return () => undefined
          const hash = sharedHash(complaint)
          const address = hash === NOT_SHARED ? undefined : new URL(hash, document.baseURI).href
          const connectors = connectorsOf(id).peek() ?? []
          return layComplaintSheet({ complaint, guide: guide.peek(), address, connectors })
        }),
      ),
    [id],
  )
}

/** Seldom there, so fetched when it is. */
function SetAside({ complaint }: { readonly complaint: Complaint }) {
  const connectors = connectorsOf(complaint.id).value ?? []
  const records = [complaint, ...complaint.lines, ...connectors]
  return records.some(({ kept }) => kept.length > 0) ? (
    <PartsAside complaint={complaint} connectors={connectors} />
  ) : null
}

/** A new design has nothing to ask about, unless somebody did. */
const isOfTriage = ({ purpose, answers }: Complaint): boolean => purpose !== 'design' || Object.keys(answers).length > 0

function TriageTrail({
  complaint,
  guide: content,
}: {
  readonly complaint: Complaint
  readonly guide: Guide | undefined
}) {
  if (!content) return null
  const position = replay(content, complaint.answers, complaint.events)
  const goOn = () => {
    resumeComplaint(complaint)
    goTo(hashOf('ask', position.current.id))
  }
  const { trail, current } = position
  return (
    <>
      <section aria-label="Triage">
        <h2>Triage</h2>
        {trail.length === 0 && <p class="muted">No question answered yet.</p>}
        <dl class="facts">
          {trail.map((step) => (
            <div key={step.node.id}>
              <dt>{step.node.text}</dt>
              <dd>{step.label}</dd>
            </div>
          ))}
          {!isEvidence(current) && (
            <div>
              <dt>Result</dt>
              <dd>
                <strong>{current.headline}</strong>
              </dd>
            </div>
          )}
        </dl>
        <Closed position={position} events={complaint.events ?? []} />
        {complaint.guideVersion > 0 && complaint.guideVersion !== content.version && (
          <p class="muted small">Answered with an older guide; its answers mean what they meant.</p>
        )}
        <OpenTests
          tests={position.setAside.length > 0 ? position.setAside : isEvidence(current) ? [] : position.openTests}
          title="Open tests"
          onOpen={() => resumeComplaint(complaint)}
        />
        <button type="button" class="button" onClick={goOn}>
          {trail.length === 0 ? 'Start the triage' : isEvidence(current) ? 'Go on with the triage' : 'Open the result'}
        </button>
      </section>
      <FillInTable
        id="events"
        complaintId={complaint.id}
        {...(position.answers['when'] !== 'flight' && { whenFilled: true as const })}
      />
      <FillInTable id="breakers" complaintId={complaint.id} whenFilled />
      <Photos owners={ownersOf(complaint)} titleOf={(id) => titleIn(content, id)} />
      <Handover
        aircraft={complaint.aircraft ?? ''}
        position={position}
        events={translateEvents(complaint.events ?? [])}
        tables={complaint.tables}
        photos={<Photos owners={ownersOf(complaint)} titleOf={(id) => titleIn(content, id)} isPlain />}
      />
    </>
  )
}

const ownersOf = ({ id, lines }: Complaint): readonly string[] => [id, ...lines.map((line) => line.id)]

/** The text of an item; of one this guide does not have, its id. */
function titleIn(content: Guide, id: string): string {
  const node = nodeById(content, id)
  return node !== undefined && isEvidence(node) ? node.text : id
}

/** Checks of this complaint that no line holds: of a version that has more of them than this one. */
function LooseChecks({ complaint: { checks, lines } }: { readonly complaint: Complaint }) {
  const loose = checks.flatMap(({ check, lineId, address }) =>
    address === undefined || lines.some(({ id }) => id === lineId) ? [] : [{ check, address }],
  )
  if (loose.length === 0) return null
  return (
    <section aria-label="Other checks">
      <h2>Other checks</h2>
      <ul class="rows">
        {loose.map(({ check, address }) => (
          <li key={address}>
            <a href={address}>
              <strong>{checkById(check)?.title ?? check}</strong>
              <Icon name="go" />
            </a>
          </li>
        ))}
      </ul>
    </section>
  )
}
