import { defineConfig } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { policyInPage, sizeGate, webManifest, withIntegrity } from './scripts/build-plugins.mjs'
import { builtData } from './scripts/built-data.mjs'
import { earlyParts } from './scripts/early-parts.mjs'
import { licences } from './scripts/licences.mjs'
import { onlyCopies, packedCopies } from './scripts/packed-copies.mjs'
import { versionDefine } from './scripts/version.mjs'
import { workerJobs } from './scripts/worker-jobs.mjs'
import { GUIDE } from './src/guide/guide.ts'

const outDir = process.env['STILLPIN_OUT'] ?? 'dist'

/**
 * Parts that are fetched together, the narrower ones first: a phone waits about as long for each request as for 30 kB,
 * so that what a place always needs comes in few pieces. What names none of them is cut by who asks for it.
 */
const PARTS = [
  // what the first screen stands on
  [
    'first',
    /\/node_modules\/(preact|@preact)\/|\/src\/(store\/browser-storage|reference\/screening|ui\/(parts\/(icon|screening)|shell\/search-wanted|screens\/search-box))|vite\/preload-helper|\/src\/(guide\/start\.|ui\/screens\/start-link|state\/(router|theme|version)\.ts|offline\/updates|ui\/(lazy|shell\/(head|notices|offline-ready|nav|bar|start|install-event)\.))/,
  ],
  // what every start reads back, and nothing that only some of them need
  [
    'store',
    /\/(src\/store\/(?!tidy|erase-|restore-|guide-store|recents|demo|photos|traces|connector|line-steps|long-|open-|union|beside|split-lines|first-version|new-complaint|exchange|browser-storage)|src\/state\/(session|complaints|log|save-queue|journal|other-windows|resume|theme-store|guide-content)\.ts|src\/ui\/(screens\/(going-on|moment)|shell\/(work-notices|offered-sheet)|parts\/(former|row-link))\.|node_modules\/idb\/)/,
  ],
  // what is listened to from then on
  ['listen', /\/src\/(ui\/shell\/(paper|listen|files|keys)|state\/(offered-file|keys))\./],
  // starts a worker, beside the parts of the screen that waits for its answer
  ['jobs', /\/src\/state\/(early-worker|work|stopped)\./],
  // numbers and units, read and printed
  [
    'quantity',
    /\/src\/(calc\/(quantity\/(?!literals)|verdict\.|line\/with-fact\.)|reference\/standing\.|worker\/(slice|serve)\.)/,
  ],
  // the guide asks for them too
  ['kinds', /\/src\/reference\/line-kinds/],
  // what the guide's rules compute with too
  [
    'network',
    /\/src\/(calc\/(network\/(chain|circuit|clamp|trial-region|shape)|resonance\/resonances|tone\/explanations|line\/missing|trace\/order)\.|guide\/(figures|print)\.|reference\/(waveforms[./]|field-figures|instruments|radio-bands|constructions|limit-lines|preferred-values))/,
  ],
  [
    'ceiling',
    /\/src\/(calc\/((explain|loading)\/ceiling|power\/(supply|navy-rule))\.|reference\/(suppressors|bus-surges|dielectric-bias)\.)/,
  ],
  [
    'desk',
    /\/src\/(state\/(desk|new-complaint|fresh-line|recents|undo|check-titles)\.|store\/(new-complaint|recents)|ui\/(parts\/option-|screens\/line-before))/,
  ],
  // what the worker of a surge computes with beside its own: it carries no check that provides facts
  [
    'evaluate',
    /^\/.*\/src\/(calc\/(strip-axis|ladder|line\/evaluate|loading\/(judge|box|budget)|explain\/(ladder|sentence|loading)|checks\/(signal|noise|spread)-inputs|bounds\/(room|worst-case))\.|worker\/answer\.ts$)/,
  ],
  // what the checks that provide facts of a line compute with, and the words all share; a worker's entry, named with a zero in
  // front, is no part of it
  ['figures', /^\/.*\/src\/calc\/(providers\.|explain\/(elements|whole|taken|navy-rule)\.|line\/(?!line-figures))/],
  // their words: a page carries those of its own check
  ['window', /^\/.*\/src\/(calc\/checks\/window\/check\.|worker\/window\.ts$)/],
  ['words', /^\/.*\/src\/(calc\/checks\/(need|loop|trial|trace)\/check\.|worker\/provider\.ts$)/],
  ['surge', /^\/.*\/src\/calc\/checks\/surge\/check\./],
  // every other check
  ['checks', /^\/.*\/src\/(calc\/plain-checks\.|worker\/check\.ts$)/],
  ['registry', /\/src\/calc\/(registry\.|line\/line-figures)/],
  ['contacts', /\/src\/calc\/connector\/(sent|contact-row|face)\./],
  // pieces of screens
  [
    'parts',
    /\/src\/(calc\/connector\/table-text|reference\/safety|state\/share\.|ui\/(shell\/nowhere|parts\/(book\/(terms|sound-links)|cautions|unchanged-views|figure\.|copy-button|scroll-x|print-head|typed|rival|width)))/,
  ],
  // what an answer's pictures and the book's share
  ['sources', /\/src\/(reference\/sources|ui\/parts\/(working|axis|spread)\.)/],
  ['guide', /\/src\/(state\/built-guide\.ts\?built|guide\/shape\.ts|store\/guide-store\.ts)$/],
  ['engine', /\/src\/guide\/engine\.ts$/],
  ['traces', /\/src\/(store\/traces|state\/stored-traces)\.ts$/],
  ['connectors', /\/src\/(state\/connectors?[-.]|store\/(connector|line-steps|union))/],
  ['check', /\/src\/ui\/screens\/(check|kept-check)\.tsx$/],
  ['book', /\/src\/ui\/screens\/book\/book\.tsx$/],
  // what explains an answer; the guide's rules draw a strip too, and must not come along for it
  ['detail', /\/src\/ui\/parts\/(answer-detail|bound-list|row-slices|findings|picture\.|strip[.-])/],
  ['rules', /\/src\/(guide\/(rules|fill-ins)|reference\/noise-inputs|state\/fill-in|ui\/parts\/(line-window|fill-in))/],
  ['complaint', /\/src\/ui\/screens\/complaint\.tsx$/],
  ['log', /\/src\/ui\/screens\/(log|backup-line)\.tsx$/],
  ['connector', /\/src\/(ui\/screens\/connector\/connector\.tsx|state\/schedule\.ts)$/],
  ['ask', /\/src\/ui\/screens\/(ask|ask-resume)\.tsx$/],
] as const

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
    rolldownOptions: {
      output: {
        // Each script lists the files it may ask for, and a hash does not pack: seven letters tell two builds apart as well,
        // since the offline copy compares whole files by a hash of its own.
        chunkFileNames: 'assets/[name]-[hash:7].js',
        assetFileNames: 'assets/[name]-[hash:7][extname]',
        codeSplitting: { groups: PARTS.map(([name, test], at) => ({ name, test, priority: PARTS.length - at })) },
      },
    },
  },
  plugins: [
    policyInPage(),
    webManifest(),
    workerJobs(),
    builtData(),
    licences(),
    earlyParts(),
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
