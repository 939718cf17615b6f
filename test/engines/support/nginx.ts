/** nginx with the settings that are shipped, in a folder and at a port of its own. */
import { type ChildProcess, spawn } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findNginx } from '../../../scripts/engines.mjs'

export const SHIPPED = join(import.meta.dirname, '../../../deploy/nginx.conf')

export type Host = { readonly address: string; readonly root: string; readonly close: () => Promise<void> }

async function freePort(): Promise<number> {
  const server = createServer()
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const bound = server.address()
  await new Promise((done) => server.close(done))
  if (bound === null || typeof bound === 'string') throw new Error('no port')
  return bound.port
}

async function answers(address: string): Promise<void> {
  for (let turn = 0; turn < 200; turn++) {
    const answer = await fetch(address).catch(() => undefined)
    if (answer !== undefined) return
    await new Promise((done) => setTimeout(done, 25))
  }
  throw new Error('nginx does not answer.')
}

/** Starts nginx over an empty folder. */
export async function startNginx(): Promise<Host> {
  const found = findNginx()
  if (found === undefined) throw new Error('No nginx found, or none with its brotli module.')
  const folder = mkdtempSync(join(tmpdir(), 'stillpin-nginx-'))
  const root = join(folder, 'site')
  mkdirSync(root)
  const port = await freePort()
  const server = readFileSync(SHIPPED, 'utf8')
    .replace('listen 8080;', `listen 127.0.0.1:${port};`)
    .replace('root /var/www/stillpin;', `root ${root};`)
  const places = ['client_body', 'proxy', 'fastcgi', 'uwsgi', 'scgi'].map(
    (name) => `${name}_temp_path ${folder}/${name};`,
  )
  const user = process.getuid?.() === 0 ? 'user root;' : ''
  writeFileSync(
    join(folder, 'nginx.conf'),
    `load_module ${found.brotli}; ${user} daemon off; pid ${folder}/pid; error_log ${folder}/error.log;
    events {} http { access_log off; ${places.join(' ')} ${server} }`,
  )
  const running: ChildProcess = spawn(found.program, ['-p', folder, '-c', join(folder, 'nginx.conf')], {
    stdio: 'ignore',
  })
  const address = `http://localhost:${port}/`
  await answers(address.replace('localhost', '127.0.0.1'))
  const close = async () => {
    const ended = new Promise((done) => running.once('exit', done))
    running.kill('SIGTERM')
    await ended
    rmSync(folder, { recursive: true, force: true })
  }
  return { address: address.replace('localhost', '127.0.0.1'), root, close }
}
