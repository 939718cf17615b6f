/** Files that are no backup, or one that somebody has put into a single line: read no further than needed. */
import { expect, it } from 'vitest'
import { MOST_CHARACTERS, writeFile } from '../../../src/store/exchange/file.ts'
import { type Reading, readBlob } from '../../../src/store/exchange/read-blob.ts'
import { newLine } from '../../../src/store/line.ts'
import { newComplaint } from '../../../src/store/new-complaint.ts'

const MEBIBYTE = 1024 * 1024

const READING: Reading = {
  run: async (steps) => {
    for (;;) {
      const step = steps.next()
      if (step.done) return step.value
    }
  },
  onProgress: () => undefined,
  goOn: () => undefined,
}

/** A file that begins with this and goes on without an end of a line, and the bytes that were asked of it. */
function endless(begin: string, sizeBytes: number) {
  const head = new TextEncoder().encode(begin)
  const asked = { bytes: 0 }
  const slice = (from: number, to: number) => ({
    arrayBuffer: async () => {
      asked.bytes += to - from
      const block = new Uint8Array(to - from).fill(120)
      if (from < head.length) block.set(head.subarray(from, to))
      return block.buffer
    },
  })
  return { file: { size: sizeBytes, slice } as unknown as Blob, asked }
}

it('refuses a file of one endless line as soon as it is longer than any backup', async () => {
  const { file, asked } = endless('', 300 * MEBIBYTE)
  expect(await readBlob(file, READING)).toEqual({
    ok: false,
    message: 'The file is larger than 64 MB without its photos: no backup of complaints comes near it.',
  })
  expect(asked.bytes).toBeLessThanOrEqual(MOST_CHARACTERS + MEBIBYTE)
})

it('refuses a photo without an end by its line', async () => {
  const text = writeFile([{ complaint: newComplaint({ lines: [newLine('bus A')] }), connectors: [] }])
  const begin = `${text.replace(/\n\}\n$/, ',\n')} "attached": [\n`
  const { file, asked } = endless(begin, 300 * MEBIBYTE)
  expect(await readBlob(file, READING)).toMatchObject({
    ok: false,
    message: expect.stringMatching(
      new RegExp(`^Line ${begin.split('\n').length}: this is no whole photo or measured file`),
    ),
  })
  expect(asked.bytes).toBeLessThanOrEqual(MOST_CHARACTERS + 2 * MEBIBYTE)
})
