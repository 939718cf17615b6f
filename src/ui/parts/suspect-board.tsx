import type { Guide, Position } from '../../guide/types.ts'
import { hashOf } from '../../state/router.ts'

type Standing = Position['standings'][number]

const SAY_WORDS = { 'rules-out': 'ruled out by', against: 'against it', for: 'for it', proves: 'proven by' } as const
const PART_WORDS = { source: 'Sources', path: 'Ways in', victim: 'The victim itself' } as const

/** How many causes still fit; unfolded, every suspect with the answers that keep it in or out, each a link to change it. */
export function SuspectBoard({ guide, position }: { readonly guide: Guide; readonly position: Position }) {
  const { standings, fits } = position
  return (
    <details class="fold board">
      <summary>{fits === 1 ? 'One cause still fits' : `${fits} causes still fit`}</summary>
      {(['source', 'path', 'victim'] as const).map((part) => (
        <section key={part} aria-label={PART_WORDS[part]}>
          <h3>{PART_WORDS[part]}</h3>
          <ul class="suspects">
            {standings
              .filter(({ suspect }) => suspect.part === part)
              .map((standing) => (
                <Suspect key={standing.suspect.id} guide={guide} standing={standing} />
              ))}
          </ul>
        </section>
      ))}
    </details>
  )
}

function stateWord({ is, fits, tried }: Standing): string {
  if (tried === 'less') return 'part of it'
  if (is === 'proven') return 'proven'
  if (is === 'out') return 'out'
  return fits ? 'fits' : 'set back'
}

function Suspect({ guide, standing }: { readonly guide: Guide; readonly standing: Standing }) {
  const { suspect, because } = standing
  const word = stateWord(standing)
  return (
    <li class={word === 'out' || word === 'set back' ? 'is-out' : ''}>
      <strong>{suspect.name}</strong> <span class="standing">{word}</span>
      <span class="row-note">{suspect.oneLine}</span>
      {because.length > 0 && (
        <span class="row-note">
          {because.map(({ evidence, option, say }, index) => (
            <span key={evidence}>
              {index > 0 && '; '}
              {SAY_WORDS[say]} <Cause guide={guide} evidence={evidence} option={option} />
            </span>
          ))}
        </span>
      )}
    </li>
  )
}

function Cause(given: { readonly guide: Guide; readonly evidence: string; readonly option: string }) {
  const item = given.guide.evidence.find(({ id }) => id === given.evidence)
  const label = item?.options.find(({ id }) => id === given.option)?.label ?? 'what the repair did'
  return (
    <a class="link" href={hashOf('ask', given.evidence)}>
      “{label}”
    </a>
  )
}
