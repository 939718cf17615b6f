/** The first question. Apart from the tree, so that the start screen need not load it. Permanent. */
export const START_NODE = 'gate-danger'

/** The safety questions: answered at the aircraft, never by a file or an address. Permanent. */
export const SAFETY_QUESTIONS: readonly string[] = [START_NODE, 'gate-lines']
