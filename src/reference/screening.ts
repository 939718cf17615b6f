/** What every answer and every sheet says. Apart from the other cautions: the start page says it too and needs no other. */
export const SCREENING = {
  title: 'A screening estimate',
  text: 'These figures are a screening estimate, not approved data. The maintenance manual, the approved data of the type, local codes and the certifying staff decide.',
} as const
