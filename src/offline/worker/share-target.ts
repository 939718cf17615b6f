/** Takes files that another app shares, keeps them, and leads to the place where they come in. */
import { NAME_HEADER, sharedName } from '../shared-name.ts'

/** Where they are posted to, from the scope; named in the manifest too. */
const PLACE = 'bring-in'
const FIELD = 'file'

export const isSharedHere = (url: URL, scope: string): boolean => url.pathname === new URL(PLACE, scope).pathname

const filesOf = (form: FormData): readonly File[] => {
  const files = form.getAll(FIELD).filter((one): one is File => typeof one !== 'string' && one.size > 0)
  const text = form.get('text')
  // some apps share the text of a file
  return files.length > 0 || typeof text !== 'string' || text === '' ? files : [new File([text], 'shared text')]
}

/** Keeps what was posted; the way leads to the Log in any case, which says when not all of it could be kept. */
export async function keepShared(request: Request, scope: string): Promise<Response> {
  let count = 0
  try {
    const files = filesOf(await request.formData())
    const cache = await caches.open(sharedName(scope))
    for (const file of files) {
      const headers = { [NAME_HEADER]: encodeURIComponent(file.name), 'Content-Type': 'application/octet-stream' }
      const key = new URL(`${PLACE}/${Date.now()}-${count}-${crypto.randomUUID()}`, scope)
      await cache.put(key.href, new Response(file, { headers }))
      count++
    }
  } catch {
    // a full device: the app that shares still has the files; what was kept waits beside what is said
    count = 0
  }
  return Response.redirect(`${scope}?shared=${count}#/log`, 303)
}
