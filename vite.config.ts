import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { policyInPage, sizeGate, webManifest, withIntegrity } from './scripts/build-plugins.mjs'
import { builtData } from './scripts/built-data.mjs'
import { licences } from './scripts/licences.mjs'
import { onlyCopies, packedCopies } from './scripts/packed-copies.mjs'
import { versionDefine } from './scripts/version.mjs'
import { workerJobs } from './scripts/worker-jobs.mjs'
import { GUIDE } from './src/guide/guide.ts'

const outDir = process.env['STILLPIN_OUT'] ?? 'dist'

/** What the first screen stands on. */
const FRAME =
  /\/node_modules\/(preact|@preact)\/|\/src\/(store\/browser-storage|reference\/screening|ui\/(parts\/(icon|screening)|shell\/search-wanted|screens\/search-box))|vite\/preload-helper/
/** What every start reads back, and nothing that only some of them need. */
const STORED =
  /\/(src\/store\/(?!tidy|erase-|restore-|guide-store|recents|demo|photos|traces|connector|line-steps|union|beside|split-lines|first-version|new-complaint|exchange|browser-storage)|src\/state\/(session|complaints|log|save-queue|journal|other-windows|resume|theme-store|guide-content)\.ts|node_modules\/idb\/)/

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
    // A browser that does not know the hint fetches a module when it is asked for: no script of ours is needed for that.
    modulePreload: { polyfill: false },
    // The store and what reads it back come in one piece, after the first screen: cut up, they pack worse. What the
    // first screen itself needs of it, and the loader of parts, stay out of that piece.
    rolldownOptions: {
      output: {
        // Each script lists the files it may ask for, and a hash does not pack: seven letters tell two builds apart as well,
        // since the offline copy compares whole files by a hash of its own.
        chunkFileNames: 'assets/[name]-[hash:7].js',
        assetFileNames: 'assets/[name]-[hash:7][extname]',
        codeSplitting: {
          groups: [
            { name: 'first', test: FRAME, priority: 1 },
            { name: 'store', test: STORED },
          ],
        },
      },
    },
  },
  plugins: [
    policyInPage(),
    webManifest(),
    workerJobs(),
    builtData(),
    licences(),
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
        globPatterns: ['**/*.{js,css,html,svg,png,woff2,txt,webmanifest,json,z}'],
        // fetched by the browser's own hand, never from the copy
        globIgnores: ['sw.js', 'worker.js'],
        manifestTransforms: [onlyCopies(outDir), withIntegrity(outDir)],
      },
    }),
    sizeGate(),
    packedCopies(),
  ],
})
