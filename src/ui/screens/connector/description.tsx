import { type Contradiction, contradictions } from '../../../calc/connector/contradictions.ts'
import type { ConnectorText } from '../../../calc/connector/types.ts'
import { changeConnector, type KeptConnector, writeConnectorText } from '../../../state/connectors.ts'
import { ChoiceRow, ConnectorTextField } from './texts.tsx'

const HALVES = [
  { value: 'receptacle', label: 'box receptacle' },
  { value: 'plug', label: 'plug' },
  { value: 'adapter', label: 'in-line adapter, both halves' },
]

const GENDERS = [
  { value: 'pins', label: 'pins' },
  { value: 'sockets', label: 'sockets' },
]

const SHAPES = [
  { value: 'rectangular', label: 'rectangular' },
  { value: 'ring', label: 'round' },
]

const MATING = [
  { value: 'true', label: 'stays as it is' },
  { value: 'false', label: 'changes too' },
]

const UNSAID = { value: '', label: 'not stated' }

/** What the connector is, in the user's own words; only what contradicts itself is spoken of. */
export function Description({ connector }: { readonly connector: KeptConnector }) {
  const against = contradictions(connector)
  const field = (name: ConnectorText, label: string, help?: string) => (
    <ConnectorTextField
      connector={connector}
      field={name}
      label={label}
      {...(help !== undefined && { help })}
      against={sentenceOf(against, name)}
    />
  )
  const choice = (name: ConnectorText, label: string, options: typeof HALVES) => (
    <ChoiceRow
      name={name}
      label={label}
      options={[...options, UNSAID]}
      chosen={connector.texts[name] ?? ''}
      onChoose={(value) => writeConnectorText(connector.complaintId, connector.id, name, value)}
      against={sentenceOf(against, name)}
    />
  )
  return (
    <>
      {field('equipment', 'Equipment', 'The box it belongs to, as you call it.')}
      {choice('half', 'Half', HALVES)}
      <ChoiceRow
        name="shape"
        label="Face"
        options={SHAPES}
        chosen={connector.shape}
        onChoose={(value) =>
          changeConnector(connector.complaintId, connector.id, { shape: value === 'ring' ? 'ring' : 'rectangular' })
        }
        against={sentenceOf(against, 'shape')}
      />
      {field('shell', 'Shell')}
      {field('arrangement', 'Insert arrangement')}
      {choice('gender', connector.texts.half === 'adapter' ? 'Contacts towards the box' : 'Contacts', GENDERS)}
      {field('keying', 'Keying')}
      {choice('matingUnchanged', 'Mating half', MATING)}
      <ConnectorTextField connector={connector} field="remark" label="Remark" rows={2} />
    </>
  )
}

const sentenceOf = (against: readonly Contradiction[], field: Contradiction['field']): string | undefined =>
  against.find((one) => one.field === field)?.sentence
