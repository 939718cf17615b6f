/** The address of the worker that does the job of a file. */
declare module '*?job' {
  const address: string
  export default address
}
