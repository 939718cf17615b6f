/** Resolves in a turn of its own: what was done before and what comes next make no one long turn. */
export const nextTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve))
