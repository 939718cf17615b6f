/**
 * Installs, builds and serves the production build with its service worker on localhost.
 *   node scripts/serve.mjs [--port 4173] [--no-build]
 */
import { parseArgs } from 'node:util'
import { install, runTool, TOOLS } from './install.mjs'
import { DIST, startServer } from './static-server.mjs'

const { values } = parseArgs({
  options: { port: { type: 'string', default: '4173' }, 'no-build': { type: 'boolean', default: false } },
})
const port = Number(values.port)
if (!Number.isInteger(port) || port < 0 || port > 65_535) {
  console.error(`--port takes a number from 0 to 65535; got ${values.port}.`)
  process.exit(1)
}

install()
if (!values['no-build'] && !runTool(TOOLS.vite, ['build'])) process.exit(1)

/** @param {number} wanted */
async function start(wanted) {
  try {
    return await startServer({ root: DIST, port: wanted })
  } catch (error) {
    const isTaken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE'
    if (!isTaken) throw error
    console.log(`Port ${wanted} is in use; taking a free one.`)
    return await startServer({ root: DIST })
  }
}

const { address } = await start(port)
console.log(`\nStillpin is at ${address}\nStop it with Ctrl+C.`)
