import { expect, it } from 'vitest'
import { isPageInPlaceOfFile } from '../../src/offline/worker/guard.ts'

const HTML = 'text/html; charset=utf-8'

it.each([
  ['https://h.example/app/assets/index-4f.js', HTML, true],
  ['https://h.example/app/icons/icon-192.png?x=1', 'text/html', true],
  ['https://h.example/app/manifest.webmanifest', HTML, true],
  ['https://h.example/app/index.html', HTML, false],
  ['https://h.example/app/', HTML, false],
  ['https://h.example/app/assets/index-4f.js', 'text/javascript', false],
  ['https://h.example/app/assets/index-4f.js', null, false],
])('sees a page that stands in for a file: %s as %s is %s', (address, type, isWrong) => {
  expect(isPageInPlaceOfFile(address, type)).toBe(isWrong)
})
