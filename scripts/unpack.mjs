/**
 * Reads what `packed-tables.mjs` wrote: text of 91 signs, two of which carry 13 bits, to bytes (deflate, RFC 1951), to
 * data. Runs in the page and in workers at once, where the browser's own decompression could only be waited for.
 */

/** The printable signs of ASCII that need no escape in any kind of quotes: all but ' ` \ and $. */
export const SIGNS = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i))
  .filter((sign) => !"'`\\$".includes(sign))
  .join('')

/**
 * @param {string} text
 * @param {number} length how many bytes
 */
export function bytesOf(text, length) {
  const bytes = new Uint8Array(length)
  const values = new Uint8Array(128)
  for (let i = 0; i < SIGNS.length; i++) values[SIGNS.charCodeAt(i)] = i
  let held = 0
  let bits = 0
  let at = 0
  for (let i = 0; at < length; i += 2) {
    held |= ((values[text.charCodeAt(i)] ?? 0) * 91 + (values[text.charCodeAt(i + 1)] ?? 0)) << bits
    for (bits += 13; bits >= 8 && at < length; bits -= 8) {
      bytes[at++] = held & 255
      held >>>= 8
    }
  }
  return bytes
}

/** Where lengths and distances of RFC 1951 (3.2.5) begin, and how many bits say the rest: the base, 32 times, and the bits. */
const LENGTHS = spans(28, 4, 3).concat(258 << 5)
const DISTANCES = spans(30, 2, 1)
const DAMAGED = 'The tables of this app are damaged.'
const ORDER = [16, 17, 18, 0, 8, 7, 9, 6, 10, 5, 11, 4, 12, 3, 13, 2, 14, 1, 15]

/**
 * @param {number} count
 * @param {number} step after how many the bits grow by one
 * @param {number} base
 */
function spans(count, step, base) {
  const found = []
  for (let i = 0, begin = base; i < count; i++) {
    const bits = Math.max(0, Math.floor(i / step) - 1)
    found.push((begin << 5) | bits)
    begin += 1 << bits
  }
  return found
}

/** Words up to this length stand in a table under the next bits; longer ones are seldom, and looked up by length. */
const SHORT = 9

/**
 * A code of RFC 1951 (3.2.2): the value under a word, the first bit lowest, 16 times, and the length of the word.
 * @param {readonly number[]} lengths
 */
function tableOf(lengths) {
  const short = new Uint16Array(1 << SHORT)
  /** @type {Map<number, number>} */
  const long = new Map()
  let code = 0
  for (let bits = 1; bits < 16; bits++, code <<= 1)
    for (let value = lengths.indexOf(bits); value >= 0; value = lengths.indexOf(bits, value + 1), code++) {
      let word = 0
      for (let i = 0; i < bits; i++) word |= ((code >> i) & 1) << (bits - 1 - i)
      if (bits > SHORT) long.set((bits << 15) | word, (value << 4) | bits)
      else for (let at = word; at < short.length; at += 1 << bits) short[at] = (value << 4) | bits
    }
  return { short, long }
}

/** @typedef {ReturnType<typeof tableOf>} Table */

/**
 * Undoes deflate.
 * @param {Uint8Array} packed
 * @param {number} length how many bytes come out
 */
export function inflate(packed, length) {
  const out = new Uint8Array(length)
  let at = 0
  let place = 0
  let held = 0
  let bits = 0
  const fill = (/** @type {number} */ wanted) => {
    for (; bits < wanted; bits += 8) held |= (packed[place++] ?? 0) << bits
    if (place > packed.length + 4) throw new Error(DAMAGED)
  }
  const take = (/** @type {number} */ count) => {
    fill(count)
    const value = held & ((1 << count) - 1)
    held >>>= count
    bits -= count
    return value
  }
  const word = (/** @type {Table} */ { short, long }) => {
    fill(15)
    let found = short[held & ((1 << SHORT) - 1)] ?? 0
    for (let count = SHORT + 1; found === 0; count++) {
      if (count > 15) throw new Error(DAMAGED)
      found = long.get((count << 15) | (held & ((1 << count) - 1))) ?? 0
    }
    held >>>= found & 15
    bits -= found & 15
    return found >> 4
  }
  const ownCode = () => {
    const ofCount = take(5) + 257
    const total = ofCount + take(5) + 1
    const known = take(4) + 4
    const orders = new Array(19).fill(0)
    for (const order of ORDER.slice(0, known)) orders[order] = take(3)
    const meta = tableOf(orders)
    /** @type {number[]} */
    const lengths = []
    while (lengths.length < total) {
      const next = word(meta)
      const times = next < 16 ? 1 : next === 16 ? take(2) + 3 : next === 17 ? take(3) + 3 : take(7) + 11
      const length = next < 16 ? next : next === 16 ? (lengths.at(-1) ?? 0) : 0
      for (let i = 0; i < times; i++) lengths.push(length)
    }
    return { of: tableOf(lengths.slice(0, ofCount)), from: tableOf(lengths.slice(ofCount)) }
  }
  for (let isLast = false; !isLast; ) {
    isLast = take(1) === 1
    const kind = take(2)
    if (kind === 0) {
      take(bits & 7)
      const end = at + take(16)
      take(16)
      while (at < end) out[at++] = take(8)
      continue
    }
    const { of, from } = kind === 2 ? ownCode() : FIXED
    for (let next = word(of); next !== 256; next = word(of)) {
      if (next < 256) {
        out[at++] = next
        continue
      }
      const run = LENGTHS[next - 257] ?? 0
      const end = at + (run >> 5) + take(run & 31)
      const back = DISTANCES[word(from)] ?? 0
      const far = (back >> 5) + take(back & 31)
      // What overlaps itself repeats: copied in pieces as long as what there is.
      while (at < end) {
        const count = Math.min(far, end - at)
        out.copyWithin(at, at - far, at - far + count)
        at += count
      }
    }
  }
  return out
}

const FIXED = {
  of: tableOf(Array.from({ length: 288 }, (_, i) => (i < 144 ? 8 : i < 256 ? 9 : i < 280 ? 7 : 8))),
  from: tableOf(new Array(30).fill(5)),
}

/**
 * @param {string} text
 * @param {number} packedBytes
 * @param {number} wholeBytes
 * @returns {unknown}
 */
export const unpack = (text, packedBytes, wholeBytes) =>
  JSON.parse(new TextDecoder().decode(inflate(bytesOf(text, packedBytes), wholeBytes)))
