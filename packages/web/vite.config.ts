import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { outsideChecks } from './build/outside-checks.ts';

const CONDITIONS = ['@slabwright/source', 'module', 'browser', 'development|production'];
const SHEET = '#f2f0eb';

/** Our own packages run nothing when they are loaded that anybody else relies on, so what is not used may go. */
const ours = /\/packages\/(calendar|core|store|pdf)\/src\//;

export default defineConfig({
  // Relative addresses: the built folder works under any path of any static host.
  base: './',
  root: fileURLToPath(new URL('.', import.meta.url)),
  resolve: { conditions: CONDITIONS },
  plugins: [
    react(),
    outsideChecks(),
    VitePWA({
      registerType: 'prompt',
      includeAssets: ['icon.svg'],
      manifest: {
        name: 'Slabwright',
        short_name: 'Slabwright',
        description: 'Plan, price, run and prove a resin floor.',
        start_url: '.',
        scope: '.',
        display: 'standalone',
        background_color: SHEET,
        theme_color: SHEET,
        icons: [
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,png,wasm,ttf,json,webmanifest}'],
        maximumFileSizeToCacheInBytes: 12 * 1024 * 1024,
        navigateFallback: 'index.html',
        cleanupOutdatedCaches: true,
      },
    }),
  ],
  worker: { format: 'es', plugins: () => [outsideChecks()] },
  build: {
    target: 'es2023',
    modulePreload: { polyfill: false },
    rolldownOptions: { treeshake: { moduleSideEffects: (id: string) => !ours.test(id) } },
  },
});
