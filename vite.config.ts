import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin, type UserConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { POLICY } from './src/cli/policy.mjs';

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

/** jsPDF's optional parts that draw HTML: never used, so never shipped. */
const UNUSED = ['html2canvas', 'canvg', 'dompurify'];
const leaveOutUnused = (): Plugin => ({
  name: 'leave-out-unused',
  enforce: 'pre',
  resolveId: (id) => (UNUSED.includes(id) ? `\0unused:${id}` : undefined),
  load: (id) => (id.startsWith('\0unused:') ? 'export default undefined;' : undefined),
});

/** The one decoder of the PDF reader that it fetches by name: scans in JPEG 2000. */
const pdfDecoder = (): Plugin => ({
  name: 'pdf-decoder',
  apply: 'build',
  generateBundle() {
    const name = 'openjpeg_nowasm_fallback.js';
    const source = readFileSync(path(`node_modules/pdfjs-dist/wasm/${name}`));
    this.emitFile({ type: 'asset', fileName: `pdf/${name}`, source });
  },
});

/** Puts the policy into the built page, so that it holds on any static host. */
const policyInPage = (): Plugin => ({
  name: 'policy-in-page',
  apply: 'build',
  transformIndexHtml: {
    order: 'post',
    handler: () => [
      {
        tag: 'meta',
        attrs: { 'http-equiv': 'Content-Security-Policy', content: POLICY },
        injectTo: 'head-prepend',
      },
    ],
  },
});

const app: UserConfig = {
  root: path('src/app'),
  base: './',
  publicDir: path('src/app/public'),
  plugins: [
    leaveOutUnused(),
    react(),
    policyInPage(),
    pdfDecoder(),
    VitePWA({
      // Where the worker is registered from is the app's own code; nothing is put inline.
      injectRegister: false,
      registerType: 'prompt',
      manifest: {
        name: 'Lampwright',
        short_name: 'Lampwright',
        description: 'Plans the lighting of a film set as one to-scale drawing.',
        start_url: './',
        scope: './',
        display: 'standalone',
        background_color: '#f4f2ee',
        theme_color: '#f4f2ee',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' }],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,ttf,svg,png,json,webmanifest}'],
        maximumFileSizeToCacheInBytes: 20_000_000,
        cleanupOutdatedCaches: true,
        clientsClaim: true,
        sourcemap: false,
      },
    }),
  ],
  worker: { format: 'es' },
  build: {
    outDir: path('dist/app'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 4000,
  },
};

const cli: UserConfig = {
  build: {
    outDir: path('dist/cli'),
    emptyOutDir: true,
    target: 'node20',
    ssr: path('src/cli/main.ts'),
    assetsInlineLimit: 0,
    minify: false,
    rolldownOptions: { output: { entryFileNames: 'main.js' } },
  },
};

export default defineConfig(({ mode }) => (mode === 'cli' ? cli : app));
