/** The web app manifest. Addresses are relative to it, so that any base path works. */

/** @type {Partial<import('vite-plugin-pwa').ManifestOptions>} */
export const MANIFEST = {
  id: 'stillpin',
  name: 'Stillpin',
  short_name: 'Stillpin',
  description: 'Offline pocket guide and quick-check calculator for interference and transients on aircraft wiring.',
  lang: 'en',
  start_url: './',
  scope: './',
  display: 'standalone',
  background_color: '#f4f1ea',
  theme_color: '#f4f1ea',
  categories: ['utilities', 'productivity'],
  icons: [
    { src: 'icons/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    { src: 'icons/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
    { src: 'icons/maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  // A file of complaints: opened with the app where the system offers it, or shared to it. The worker takes what is shared.
  file_handlers: [{ action: './', accept: { 'application/json': ['.json'] } }],
  share_target: {
    action: './bring-in',
    method: 'POST',
    enctype: 'multipart/form-data',
    params: {
      text: 'text',
      files: [{ name: 'file', accept: ['application/json', '.json', 'text/plain', '.txt'] }],
    },
  },
  shortcuts: [
    { name: 'Ask', description: 'Start from a complaint', url: './#/ask' },
    { name: 'Check', description: 'Quick checks', url: './#/check' },
    { name: 'Log', description: 'Saved complaints', url: './#/log' },
  ],
}
