/** The cautions that fit a surge answer. */
import type { SafetyId } from '../../reference/safety.ts'
import type { SurgeSetup } from './setup.ts'

/** Ids of safety texts: stored charge where there is a capacitor, power off where the pulse can hurt. */
export function cautionsOf(setup: SurgeSetup): readonly SafetyId[] {
  const lethal = setup.pulse.openCircuitV >= 60
  return [
    'permanent-approved',
    'lightning-hirf-fuel',
    'hipot',
    'after-strike',
    ...(setup.filter.topology === 'none' ? [] : (['stored-charge'] as const)),
    ...(lethal ? (['power-off'] as const) : []),
    'ok-bounds',
    'screening',
  ]
}
