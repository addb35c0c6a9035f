import react from '@vitejs/plugin-react';
import { defaultClientConditions, defineConfig } from 'vite';

const api = process.env['STOKEHOLD_API'] ?? 'http://localhost:4310';

/** The libs are bundled from their sources; in development the API answers from its own port. */
export default defineConfig({
  plugins: [react()],
  resolve: { conditions: ['source', ...defaultClientConditions] },
  build: { target: 'es2022', outDir: 'dist', emptyOutDir: true, modulePreload: { polyfill: false } },
  server: { proxy: { '/api': api, '/live': { target: api, ws: true } } },
});
