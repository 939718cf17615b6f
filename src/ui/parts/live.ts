import { createContext } from 'preact'

/**
 * Whether the answer around belongs to the page's own fields as they are, so that its figures may carry the ids and
 * numbers that addresses promise. Figures ask for it themselves: an answer grown old is dimmed without being drawn again.
 */
export const IsLive = createContext(false)
