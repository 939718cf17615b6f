/** Finds what the engine tests run beside Chromium: Firefox, WebKit with its driver and a display, and nginx as a host. */
import { existsSync } from 'node:fs'
import { onPath } from './chromium.mjs'

/** Debian packages that bring each of them. @type {Readonly<Record<string, readonly string[]>>} */
export const ENGINE_PACKAGES = {
  chromium: ['chromium'],
  firefox: ['firefox-esr'],
  webkit: ['webkit2gtk-driver', 'xvfb', 'xauth'],
  nginx: ['nginx-light', 'libnginx-mod-http-brotli-static'],
}

/** Path of a Firefox, or undefined. FIREFOX_PATH wins. @returns {string | undefined} */
export function findFirefox() {
  const named = process.env['FIREFOX_PATH']
  if (named !== undefined && named !== '') return existsSync(named) ? named : undefined
  return onPath('firefox-esr') ?? onPath('firefox')
}

/** WebKit's driver, the browser it drives and a display for it, or undefined. @returns {{ driver: string, browser: string, display: string } | undefined} */
export function findWebkit() {
  const driver = onPath('WebKitWebDriver')
  const display = onPath('Xvfb')
  const browser = ['4.1', '4.0', '6.0']
    .flatMap((edition) => [
      `/usr/lib/x86_64-linux-gnu/webkit2gtk-${edition}/MiniBrowser`,
      `/usr/lib/aarch64-linux-gnu/webkit2gtk-${edition}/MiniBrowser`,
      `/usr/libexec/webkit2gtk-${edition}/MiniBrowser`,
    ])
    .find((path) => existsSync(path))
  return driver === undefined || display === undefined || browser === undefined
    ? undefined
    : { driver, browser, display }
}

/** Where Debian lays the part of nginx that serves what was packed with brotli beforehand. */
const BROTLI_STATIC = 'modules/ngx_http_brotli_static_module.so'

/** nginx and the module its settings ask for, or undefined. NGINX_PATH wins. @returns {{ program: string, brotli: string } | undefined} */
export function findNginx() {
  const named = process.env['NGINX_PATH']
  // Debian keeps it out of the path of ordinary users
  const places = named ? [named] : [onPath('nginx') ?? '/usr/sbin/nginx', '/usr/local/sbin/nginx']
  const program = places.find((path) => existsSync(path))
  const brotli = ['/usr/lib/nginx', '/usr/lib64/nginx']
    .map((folder) => `${folder}/${BROTLI_STATIC}`)
    .find((path) => existsSync(path))
  return program === undefined || brotli === undefined ? undefined : { program, brotli }
}
