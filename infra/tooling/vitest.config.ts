import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { contractAsData } from '../../apps/board/contract-as-data.js';

const root = fileURLToPath(new URL('../../', import.meta.url));
/** Libraries are read from their sources, so that a test never meets a stale build. */
const fromSource = { conditions: ['source', 'node'] };

const decorators = { decorator: { legacy: true, emitDecoratorMetadata: true } };
/** Times to give up: far above what a test takes, so that a busy machine fails none. How fast a thing is, the benches say. */
const patience = { testTimeout: 60_000, hookTimeout: 60_000, expect: { poll: { timeout: 20_000 } } };

/** One project a kind of test; `npm run check` runs those that need no database and no browser. */
const project = (name: string, include: string[], more: object = {}) => ({
  root,
  plugins: [contractAsData()],
  oxc: decorators,
  resolve: fromSource,
  ssr: { resolve: fromSource },
  test: { name, include, exclude: ['**/node_modules/**', '**/dist/**'], environment: 'node' as const, ...patience, ...more },
});

export default defineConfig({
  root,
  test: {
    projects: [
      project('libs', ['libs/**/*.test.ts']),
      project('board', ['apps/board/src/**/*.test.{ts,tsx}']),
      project('published', ['tests/published/**/*.test.ts']),
      project('house', ['tests/house/**/*.test.ts']),
      project('api', ['apps/api/src/**/*.test.ts'], { globalSetup: [`${root}tests/api-database.ts`] }),
      // Needs an MQTT broker: MQTT_URL, or one on 127.0.0.1:1883.
      project('broker', ['tests/broker/**/*.test.ts'], { globalSetup: [`${root}tests/api-database.ts`], fileParallelism: false }),
      // Needs Redis: REDIS_URL, or one on 127.0.0.1:6379.
      project('machines', ['tests/machines/**/*.test.ts'], { globalSetup: [`${root}tests/api-database.ts`], fileParallelism: false, testTimeout: 120_000 }),
      project('faults', ['tests/faults/**/*.test.ts'], {
        globalSetup: [`${root}tests/faults/table.ts`],
        testTimeout: 120_000,
        hookTimeout: 120_000,
        fileParallelism: false,
      }),
      project('e2e', ['tests/e2e/**/*.test.ts'], {
        testTimeout: 120_000,
        hookTimeout: 120_000,
        fileParallelism: false,
      }),
    ],
  },
});
