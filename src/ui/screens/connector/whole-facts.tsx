import { type KeptConnector, writeConnectorText } from '../../../state/connectors.ts'
import { ChoiceRow, ConnectorTextField } from './texts.tsx'

const NAVY = [
  { value: 'true', label: 'applies' },
  { value: 'false', label: 'does not apply' },
]

/** What is asked about the whole connector: its bond, and what may flow into the chassis. */
export function WholeFacts({ connector }: { readonly connector: KeptConnector }) {
  return (
    <section aria-label="Bond and limits">
      <h2>Bond and limits</h2>
      <ConnectorTextField
        connector={connector}
        field="bondOhm"
        label="Bond resistance"
        help="From the filters’ plate to the reference of the circuits, the box case: 1m. A class-R style bond is 2.5m."
      />
      <ConnectorTextField
        connector={connector}
        field="bondH"
        label="Bond inductance"
        help="Metal all round: 0.1n to 0.5n. A strap of 100 mm: 56n."
      />
      <details class="fold">
        <summary>Chassis current and the Navy rule</summary>
        <ConnectorTextField
          connector={connector}
          field="chassisLimitA"
          label="Chassis current allowed"
          help="Of the whole box, rms: 5m."
        />
        <ChoiceRow
          name="navyRule"
          label="Navy line-to-ground rule"
          options={NAVY}
          chosen={connector.texts.navyRule ?? 'false'}
          onChoose={(value) => writeConnectorText(connector.complaintId, connector.id, 'navyRule', value)}
        />
        <ConnectorTextField
          connector={connector}
          field="loadW"
          label="Load of the box"
          help="For that rule on DC: 600 W."
        />
      </details>
    </section>
  )
}
