/** What work that was stopped ends with. */
export const stopped = (): DOMException => new DOMException('The work was stopped.', 'AbortError')
