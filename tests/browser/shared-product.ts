import fs from 'node:fs';
import type { TestProject } from 'vitest/node';
import { startProduct } from './product.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where demo workshops are served, one for each test file that runs at the same time. */
    origins: readonly string[];
    /** Data folder of a demo workshop as it was filled, to start products on copies of; none beside one that ran already. */
    demoBook: string | undefined;
  }
}

/**
 * One demo workshop for each row of test files that run one after the other. It is filled once and copied: filling
 * takes longer than most of the tests. BROWSER_TEST_ORIGIN names one that runs already, for work on a test.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const running = process.env['BROWSER_TEST_ORIGIN'];
  if (running !== undefined) {
    project.provide('origins', [running]);
    return async () => undefined;
  }
  const filled = await startProduct('demo');
  await filled.stop(true);
  project.provide('demoBook', filled.dataDir);
  const rows = Array.from({ length: project.config.maxWorkers });
  const products = await Promise.all(rows.map(() => startProduct('demo', filled.dataDir)));
  project.provide(
    'origins',
    products.map(({ origin }) => origin),
  );
  return async () => {
    await Promise.all(products.map(({ stop }) => stop()));
    fs.rmSync(filled.dataDir, { recursive: true, force: true });
  };
}
