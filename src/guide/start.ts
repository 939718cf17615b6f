/** The first question. Apart from the tree, so that the start screen need not load it. Permanent. */
export const START_NODE = 'gate-danger'
