import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { policyInPage, sizeGate } from './scripts/build-plugins.mjs'
import { MANIFEST } from './scripts/manifest.mjs'
import { versionDefine } from './scripts/version.mjs'
import { GUIDE } from './src/guide/guide.ts'

export default defineConfig({
  // Relative addresses: the same build runs at the root of a host or in any folder of it.
  base: './',
  define: versionDefine(`${GUIDE.edition}, version ${GUIDE.version}`),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: { target: 'es2022', assetsInlineLimit: 0, outDir: process.env['STILLPIN_OUT'] ?? 'dist', emptyOutDir: true },
  plugins: [
    policyInPage(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src/offline/worker',
      filename: 'sw.ts',
      injectRegister: false,
      includeManifestIcons: false,
      manifest: MANIFEST,
      injectManifest: {
        rollupFormat: 'iife',
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,txt}'],
      },
    }),
    sizeGate(),
  ],
})
