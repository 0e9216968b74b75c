import { defineConfig } from 'vitest/config';

const conditions = ['pullbook-source', 'node'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: ['pullbook-source'] } },
  test: {
    include: [
      'packages/*/src/**/*.test.ts',
      'apps/*/src/**/*.test.ts',
      'apps/start/**/*.test.mjs',
      'apps/web/{app,client,components,offline,practice,queries}/**/*.test.ts',
      'tests/outside/**/*.test.ts',
      'tests/bench/**/*.test.ts',
    ],
    // Every core: left alone, a machine of two would run one file at a time.
    maxWorkers: '100%',
    // Files of one worker share what they import, the server foremost: half of the time would go into loading it again.
    isolate: false,
    // Against hanging only: a busy machine is slow, and no test measures time.
    testTimeout: 90_000,
    hookTimeout: 90_000,
  },
});
