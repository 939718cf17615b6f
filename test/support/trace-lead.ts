/** A 115 V lead, 105 dBµV at 150 kHz without a filter: what a published line and its relaxation leave of it, by hand. */
export const LEAD = {
  traceHz: '150 kHz',
  traceDb: '105',
  traceUnit: 'dbuv',
  limit: 'ce102-base',
  nominalV: '115',
  bandwidthHz: '10 kHz',
  detector: 'peak',
}
