import type { TestProject } from 'vitest/node';
import { startProduct } from './product.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the demo workshop that the browser tests share is served. */
    origin: string;
  }
}

/**
 * One demo workshop for the tests that bring cars of their own: filling one takes longer than most of them.
 * BROWSER_TEST_ORIGIN names one that runs already, for work on a test.
 */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const running = process.env['BROWSER_TEST_ORIGIN'];
  if (running !== undefined) {
    project.provide('origin', running);
    return async () => undefined;
  }
  const product = await startProduct('demo');
  project.provide('origin', product.origin);
  return product.stop;
}
