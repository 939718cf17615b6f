/** True when an address that names a file other than a page was answered with a page. */
export function isPageInPlaceOfFile(address: string, contentType: string | null): boolean {
  const path = new URL(address).pathname
  const last = path.slice(path.lastIndexOf('/') + 1)
  const namesFile = last.includes('.') && !last.endsWith('.html')
  return namesFile && (contentType ?? '').includes('text/html')
}
