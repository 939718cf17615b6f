/**
 * Packs what a host serves once and as small as it gets, before anybody asks for it. What is packed on the way, in the time of a
 * request, comes nearly a third larger (nginx's own gzip); a phone on a slow network waits for every kilobyte of a first answer.
 */
import { brotliCompressSync, gzipSync } from 'node:zlib'

/** What a packed copy is called beside its file, and what it is called on the wire, the smaller first. */
export const PACKINGS = /** @type {const} */ ([
  { ending: '.br', encoding: 'br', pack: brotliCompressSync },
  { ending: '.gz', encoding: 'gzip', pack: (/** @type {Buffer} */ bytes) => gzipSync(bytes, { level: 9 }) },
])

/**
 * Whether a file is packed beforehand: scripts and styles under a name that holds their hash. Under a lasting name a packed copy
 * could stand beside a newer file for a moment, and be served in its place.
 * @param {string} path below the root of the site, with slashes
 */
export const isPackedBefore = (path) => /^assets\/.+\.(js|css)$/.test(path)
