/** The invented example, fetched when somebody asks for it. */
import { demoComplaint } from '../store/demo.ts'
import { add, type Complaint, complaints } from './complaints.ts'

/** Puts the invented example into the Log, once. */
export function addDemo(): Complaint {
  return complaints.value?.find((complaint) => complaint.isDemo) ?? add(demoComplaint())
}
