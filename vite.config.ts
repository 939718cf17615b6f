import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { policyInPage, sizeGate, webManifest, withIntegrity } from './scripts/build-plugins.mjs'
import { versionDefine } from './scripts/version.mjs'
import { GUIDE } from './src/guide/guide.ts'

const outDir = process.env['STILLPIN_OUT'] ?? 'dist'

export default defineConfig({
  // Relative addresses: the same build runs at the root of a host or in any folder of it.
  base: './',
  define: versionDefine(`${GUIDE.edition}, version ${GUIDE.version}`),
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  build: {
    target: 'es2022',
    assetsInlineLimit: 0,
    outDir,
    emptyOutDir: true,
    // What every start needs of the store comes in one piece: cut up for the seldom parts, it packs worse.
    rolldownOptions: {
      output: {
        codeSplitting: {
          groups: [{ name: 'store', test: /\/(src\/store\/(?!tidy|restore-steps|demo)|node_modules\/idb\/)/ }],
        },
      },
    },
  },
  plugins: [
    policyInPage(),
    webManifest(),
    VitePWA({
      strategies: 'injectManifest',
      srcDir: 'src/offline/worker',
      filename: 'sw.ts',
      injectRegister: false,
      includeManifestIcons: false,
      // ours is a file of the build, see webManifest
      manifest: false,
      injectManifest: {
        rollupFormat: 'iife',
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,txt,webmanifest}'],
        // fetched by the browser's own hand, never from the copy
        globIgnores: ['sw.js', 'worker.js'],
        manifestTransforms: [withIntegrity(outDir)],
      },
    }),
    sizeGate(),
  ],
})
