import { inject } from 'vitest';

/** Where the demo workshop is served that no other test file uses at this moment. */
export function sharedOrigin(): string {
  const origins = inject('origins');
  const row = Number(process.env['VITEST_POOL_ID']) - 1;
  const origin = origins[row % origins.length];
  if (origin === undefined) throw new Error(`no demo workshop for row ${row} of ${origins.length}`);
  return origin;
}
