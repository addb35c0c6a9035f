import react from '@vitejs/plugin-react';
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defaultClientConditions, defineConfig, type Plugin } from 'vite';
import { contractAsData } from './contract-as-data.js';

const api = process.env['STOKEHOLD_API'] ?? 'http://localhost:4310';
const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const dist = here('dist');

/** Old browsers' fonts are not worth their room: a browser with a service worker reads woff2. */
const isKept = (file: string) => !/\.(woff|map)$/.test(file) && file !== 'service-worker.js';
/** A file below assets/ carries a hash in its name; of all others the hash tells the version. */
const revisionOf = (file: string) => (file.startsWith('assets/') ? null : createHash('sha256').update(readFileSync(join(dist, file))).digest('hex').slice(0, 16));

/** When all screens are built: the service worker, with the list of every file that it keeps on the device. */
function serviceWorker(): Plugin {
  return {
    name: 'service-worker',
    apply: 'build',
    async closeBundle() {
      const files = readdirSync(dist, { recursive: true, withFileTypes: true })
        .filter((entry) => entry.isFile())
        .map((entry) => join(entry.parentPath, entry.name).slice(dist.length + 1).replaceAll('\\', '/'))
        .filter(isKept)
        .sort();
      const listed = files.map((file) => ({ url: `/${file}`, revision: revisionOf(file) }));
      await build({
        configFile: false,
        logLevel: 'warn',
        publicDir: false,
        define: { OFFLINE_FILES: JSON.stringify(listed), 'process.env.NODE_ENV': '"production"' },
        build: {
          target: 'es2022',
          outDir: dist,
          emptyOutDir: false,
          lib: { entry: here('src/offline/service-worker.ts'), formats: ['iife'], name: 'worker', fileName: () => 'service-worker.js' },
        },
      });
    },
  };
}

/** The typeface is asked for with the page, not when the first word in it is drawn: no screen is drawn twice. */
function typefaceAhead(): Plugin {
  return {
    name: 'typeface-ahead',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (_html, { bundle = {} }) =>
        Object.keys(bundle)
          .filter((file) => file.endsWith('.woff2'))
          .map((file) => ({ tag: 'link', attrs: { rel: 'preload', as: 'font', type: 'font/woff2', crossorigin: true, href: `/${file}` }, injectTo: 'head-prepend' as const })),
    },
  };
}

/** The libs are bundled from their sources; in development the API answers from its own port. */
export default defineConfig({
  plugins: [react(), contractAsData(), typefaceAhead(), serviceWorker()],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  build: {
    target: 'es2022', outDir: 'dist', emptyOutDir: true, modulePreload: { polyfill: false },
    // With these a PDF takes in web pages and pictures; our papers are text, so no device need keep them.
    rolldownOptions: { external: ['canvg', 'dompurify', 'html2canvas'] },
  },
  server: { proxy: { '/api': api, '/live': { target: api, ws: true } } },
});
