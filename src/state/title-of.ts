/** The name of a check by its id, without the check. */
import titles from './check-titles.ts?built'

export const titleOf = (id: string): string => titles.find((check) => check.id === id)?.title ?? id
