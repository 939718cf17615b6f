/** The invented example, fetched when somebody asks for it: a complaint, and a whole connector beside it. */
import { demoComplaint } from '../store/demo.ts'
import { demoConnector } from '../store/demo-connector.ts'
import { add, type Complaint, complaints } from './complaints.ts'
import { addConnector } from './connectors.ts'

/** Puts the invented example into the Log, once. */
export function addDemo(): Complaint {
  const present = complaints.value?.find((complaint) => complaint.isDemo)
  if (present !== undefined) return present
  const made = add(demoComplaint())
  const { connector, lines } = demoConnector()
  addConnector(made.id, connector, lines, true)
  return made
}
