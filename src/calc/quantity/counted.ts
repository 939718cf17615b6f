/** A count with the word for what is counted, which takes an s beside any number but one. */
export const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`
