import { defineConfig } from 'vitest/config';

const conditions = ['pullbook-source', 'node'];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions, externalConditions: ['pullbook-source'] } },
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.ts', 'tests/outside/**/*.test.ts'],
    testTimeout: 20_000,
  },
});
