/** The page of a kind of line in the field book, by the kind's id: apart, so that a link to it does not load the shelf. */
export const lineCardId = (kindId: string): string => `line-${kindId}`
