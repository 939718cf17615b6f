/** The `built` of a file, worked out when the app is built. */
declare module '*/book-contents.ts?built' {
  const contents: import('../guide/book/contents.ts').Contents
  export default contents
}

declare module '*/search-index.ts?built' {
  const built: import('./search-index.ts').BuiltIndex
  export default built
}

declare module '*/check-titles.ts?built' {
  const titles: typeof import('./check-titles.ts').built
  export default titles
}

declare module '*/drawing-heights.ts?built' {
  const heights: typeof import('./drawing-heights.ts').built
  export default heights
}

declare module '*/check-reads.ts?built' {
  const reads: typeof import('./check-reads.ts').built
  export default reads
}

declare module '*/lines/lines.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/sounds/sounds.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/tests/tests.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/notes/notes.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/drawings/drawings.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/tables/tables.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/cases/cases.ts?built' {
  const pages: readonly import('../guide/book/types.ts').BookPage[]
  export default pages
}

declare module '*/built-guide.ts?built' {
  const bundled: import('../store/guide-store.ts').BundledGuide
  export default bundled
}
