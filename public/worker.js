// The worker the browser registers. It never changes and only runs sw.js, so that an sw.js that is empty or cut off is an
// error: the browser then refuses the update and keeps the copy that works. On its own, an empty file would be a valid
// worker that serves nothing. The browser looks for a new sw.js whenever it looks for a new worker.
const address = new URL('sw.js', self.location.href).href
const policy = self.trustedTypes?.createPolicy('stillpin', { createScriptURL: () => address })
importScripts(policy ? policy.createScriptURL('') : address)
if (self.stillpinIsWhole !== true) throw new Error('sw.js did not arrive whole.')
