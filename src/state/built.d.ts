/** The `built` of a file, worked out when the app was built. */
declare module '*/book-contents.ts?built' {
  const contents: import('../guide/book/contents.ts').Contents
  export default contents
}
