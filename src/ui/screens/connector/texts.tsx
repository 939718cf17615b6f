import type { ContactText } from '../../../calc/connector/types.ts'
import {
  type ConnectorField,
  type KeptConnector,
  takeConnectorText,
  writeConnectorText,
  writeContactText,
} from '../../../state/connectors.ts'
import { connectorText } from '../../../store/connector-edits.ts'
import { KeptText } from '../../parts/kept-text.tsx'

type Shown = {
  readonly connector: KeptConnector
  readonly label: string
  readonly help?: string
  readonly against?: string | undefined
  readonly rows?: number
}

/** A text of a connector. */
export function ConnectorTextField({ field, ...given }: Shown & { readonly field: ConnectorField }) {
  const { complaintId, id } = given.connector
  return (
    <PlacedText
      {...given}
      place={{ field }}
      onType={(text, base) => writeConnectorText(complaintId, id, field, text, base)}
    />
  )
}

/** A text of one contact. */
export function ContactTextField(given: Shown & { readonly contact: string; readonly field: ContactText }) {
  const { contact, field, ...rest } = given
  const { complaintId, id } = given.connector
  return (
    <PlacedText
      {...rest}
      place={{ contact, field }}
      onType={(text, base) => writeContactText(complaintId, id, contact, field, text, base)}
    />
  )
}

type Placed = Shown & {
  readonly place: Parameters<typeof takeConnectorText>[2]
  readonly onType: (text: string, base: string) => void
}

function PlacedText({ connector, place, label, against, onType, ...rest }: Placed) {
  const { complaintId, id, rivals = [] } = connector
  return (
    <KeptText
      key={`${id} ${place.contact ?? ''} ${place.field}`}
      {...rest}
      {...(against !== undefined && { against })}
      id={`connector-${place.field}`}
      label={label}
      what={label.toLowerCase()}
      stored={connectorText(connector, place)}
      rivals={rivals.filter((one) => one.field === place.field && one.contact === place.contact)}
      onType={onType}
      onTake={(text, left) => takeConnectorText(complaintId, id, place, text, left)}
    />
  )
}

type Option = { readonly value: string; readonly label: string }

type ChoiceGiven = {
  readonly name: string
  readonly label: string
  readonly options: readonly Option[]
  readonly chosen: string
  readonly onChoose: (value: string) => void
  readonly against?: string | undefined
}

/** One of a few words, as a row of buttons. */
export function ChoiceRow({ name, label, options, chosen, onChoose, against }: ChoiceGiven) {
  return (
    <fieldset class="field choice" {...(against !== undefined && { 'aria-describedby': `${name}-against` })}>
      <legend>{label}</legend>
      <div class="choices">
        {options.map(({ value, label: word }) => (
          <label key={value} class="choice-button">
            <input type="radio" name={name} value={value} checked={chosen === value} onChange={() => onChoose(value)} />
            <span>{word}</span>
          </label>
        ))}
      </div>
      {against !== undefined && (
        <p id={`${name}-against`} class="against small" role="status">
          {against}
        </p>
      )}
    </fieldset>
  )
}
