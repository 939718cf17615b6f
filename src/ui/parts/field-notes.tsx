import type { ComponentChildren } from 'preact'
import { type Field, isUsual } from '../../calc/line/fields.ts'
import type { CheckId, Fact } from '../../calc/types.ts'
import { titleOf } from '../../state/title-of.ts'
import { Text } from './book/terms.tsx'
import { assumedText } from './figure.ts'
import { LineCardLink } from './line-card-link.tsx'
import { NoiseBands } from './noise-bands.tsx'
import { originWords } from './origin.ts'
import { Rivals } from './rival.tsx'

export type FieldProps = {
  readonly field: Field
  /** `base`: the text the field showed before this key */
  readonly onType: (text: string, base?: string) => void
  /** takes what another source says; undefined: whatever comes when nothing is typed */
  readonly onTake?: (other: Fact | undefined) => void
  /** takes one of several texts typed in different windows; `left`: the others */
  readonly onTakeText?: (text: string, left: readonly string[]) => void
  /** where another check of the same Line is */
  readonly addressOf?: (check: CheckId) => string
  /** its text is still on the way to one that can be read: it is not refused yet */
  readonly isUnsaid?: boolean
  /** the field is left */
  readonly onLeave?: () => void
}

/** What stands under a field: why its text was refused, where it comes from, what else is said of it, and its help. */
export function FieldNotes(given: FieldProps & { readonly shown?: string }) {
  const { field } = given
  return (
    <>
      <div class="field-note" id={`note-${field.key}`}>
        <Note {...given} />
        {field.unsuited && <p>{unsuitedWords(field, field.unsuited)}</p>}
      </div>
      <Offers {...given} />
      {field.rivals && given.onTakeText && (
        <Rivals
          what={field.input.label.toLowerCase()}
          shown={given.shown ?? field.text}
          stored={field.text}
          rivals={field.rivals}
          onTake={given.onTakeText}
        />
      )}
      <details class="help">
        <summary>
          <span class="unseen">About {field.input.label}</span>
          <span aria-hidden="true">?</span>
        </summary>
        <p>
          <Text of={field.input.help} />
        </p>
        {field.input.fact === 'lineKind' && <LineCardLink kind={field.text.trim()} />}
        {field.input.fact === 'noiseHz' && <NoiseBands value={field.value} />}
        {field.input.whenEmpty.do === 'ask' && <p>{field.input.whenEmpty.how}</p>}
      </details>
    </>
  )
}

function Note({ field, addressOf, isUnsaid }: FieldProps): ComponentChildren {
  if (isUnsaid) return null
  if (field.issue) return <p class="issue">{field.issue.message}</p>
  if (field.state === 'pending') return <p>Working out the calculation…</p>
  if (field.state === 'value') return <OriginNote field={field} addressOf={addressOf} />
  if (field.state === 'assumed' && field.assumed) {
    const { why, favourable } = field.assumed
    return (
      <p>
        assumed {assumedText(field)}: {why}
        {favourable ? ' (favourable)' : ''}
      </p>
    )
  }
  const rule = field.input.whenEmpty
  if (field.state === 'missing' && rule.do === 'ask') return <p>Not known yet. {rule.how}</p>
  return null
}

type OriginGiven = { readonly field: Field; readonly addressOf: FieldProps['addressOf'] | undefined }

/** Where the text comes from; what was typed needs no word, unless somebody else says otherwise. */
function OriginNote({ field, addressOf }: OriginGiven) {
  const { origin } = field
  if (origin === undefined) return <p>{isUsual(field) ? 'usual value' : 'preset'}</p>
  if (origin.by === 'user') return field.others ? <p>typed</p> : null
  if (origin.by !== 'check' || addressOf === undefined) return <p>{originWords(origin)}</p>
  return (
    <p class="origin">
      from{' '}
      <a class="link" href={addressOf(origin.check)}>
        {titleOf(origin.check)}
      </a>
    </p>
  )
}

function unsuitedWords({ input }: Field, fact: Fact): string {
  const held = fact.text.split(';').map((each) => each.trim())
  const takes = input.type.is === 'choice' ? 'this check has no such choice' : 'this check takes one'
  return `The Line holds ${held.join('; ')}; ${takes}.`
}

/** Texts to go on with: what other sources say, the usual value of an emptied field, a first guess for a missing one. */
function Offers({ field, onType, onTake }: FieldProps) {
  const rule = field.input.whenEmpty
  const guess = field.state === 'missing' && rule.do === 'ask' ? rule.offer : undefined
  const isEmptied = field.text.trim() === '' && field.origin?.by === 'user'
  const usual = isEmptied && field.others === undefined ? field.input.defaultText : undefined
  const others = onTake === undefined ? [] : (field.others ?? [])
  if (guess === undefined && usual === undefined && others.length === 0) return null
  return (
    <div class="offer">
      {others.map((other) => (
        <button key={`${other.origin.by}${other.text}`} type="button" class="button" onClick={() => onTake?.(other)}>
          {takeWords(field, other)}
        </button>
      ))}
      {usual !== undefined && onTake && (
        <button type="button" class="button" onClick={() => onTake(undefined)}>
          Take the usual {optionWords(field, usual)}
        </button>
      )}
      {guess && (
        <>
          <button type="button" class="button" onClick={() => onType(guess.text)}>
            Use {guess.text}
          </button>
          <span class="muted small">{guess.why}</span>
        </>
      )}
    </div>
  )
}

function takeWords(field: Field, other: Fact): string {
  const text = optionWords(field, other.text)
  return other.origin.by === 'user' ? `Take ${text} back` : `Take ${text} ${originWords(other.origin)}`
}

function optionWords({ input }: Field, text: string): string {
  if (input.type.is === 'flag') return text.trim() === 'true' ? 'yes' : 'no'
  const option = input.type.is === 'choice' && input.type.options.find(({ value }) => value === text.trim())
  return option ? option.label : text
}
